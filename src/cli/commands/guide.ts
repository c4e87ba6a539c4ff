import { readFile, realpath } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Argument, type Command } from 'commander';
import { GUIDE_PAGES } from '../guide-pages.ts';
import { writeAll } from '../output/output.ts';
import { note, printJson } from '../say.ts';

interface Options {
  readonly out?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

const FILE = 'guide.html';

export function define(command: Command): void {
  command
    .addArgument(new Argument('[page]', 'one of its pages').choices(GUIDE_PAGES.map(({ name }) => name)))
    .option('--out <dir>', 'write a copy into this folder')
    .option('--json', 'one JSON document on standard output')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
It is one file that needs no network: open it in a browser, or print it. Without --out it says where the file lies.

Examples:
  matwright guide faults
  matwright guide
  matwright guide --out .
`,
    )
    .action(guide);
}

/** The file that the build puts beside the program. */
async function builtGuide(): Promise<string> {
  return join(dirname(await realpath(process.argv[1] ?? '.')), FILE);
}

async function guide(page: string | undefined, options: Options): Promise<void> {
  const built = await builtGuide();
  const bytes = await readFile(built).catch(() => undefined);
  if (bytes === undefined) throw new Error('the guide that belongs to the program is missing; install it anew');
  if (options.out !== undefined) await writeAll(options.out, [{ name: FILE, bytes }]);
  const file = options.out === undefined ? built : join(options.out, FILE);
  const address = page === undefined ? file : `${file}#${page}`;
  if (options.json === true) return printJson({ file, address, pages: GUIDE_PAGES });
  if (options.quiet === true) return;
  const wide = Math.max(...GUIDE_PAGES.map(({ name }) => name.length));
  note(`open in a browser: ${address}`);
  if (page === undefined) note(GUIDE_PAGES.map(({ name, title }) => `  ${name.padEnd(wide)}  ${title}`).join('\n'));
}
