import { statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import type { Command } from 'commander';
import { solveLoading } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import { readShop } from '../../shop/read-shop.ts';
import { base64 } from '../../writers/svg/base64.ts';
import { findShop, readSource, type SourceFile } from '../input.ts';
import { writeAll } from '../output/output.ts';
import { picturesBeside } from '../output/picture.ts';
import { type CarriedShop, pageWith, servedPage } from '../page-file.ts';
import { note, printJson, warn } from '../say.ts';
import { UsageError } from '../usage.ts';

interface Options {
  readonly shop?: string;
  readonly out: string;
  readonly serve?: boolean;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

const FILE = 'matwright.html';

export function define(command: Command): void {
  command
    .argument('[job...]', 'job files, YAML or JSON, to be in it')
    .option('--out <dir>', 'the folder that it is written into', '.')
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the first job or in a folder above it)")
    .option('--serve', 'serve the page to this machine alone, until Ctrl-C; it reads and saves in the folder of --out')
    .option('--json', 'one JSON document on standard output')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
The file needs nothing beside it: open it with a double click, or put it on a stick. Whoever has it has the jobs that are
in it. A job with mistakes is taken too, since the page can put them right.

--serve says an address with a token in it: whoever has it, on this machine, may read and save the jobs, the shop and the
outputs in that folder and those below it. A file that something else has changed meanwhile is not saved over.

Examples:
  matwright page examples/heron/job.yaml --out dist
  matwright page --serve --out examples/monday
`,
    )
    .action(page);
}

async function page(files: readonly string[], options: Options): Promise<void> {
  if (options.serve === true) return served(files, options);
  const shop = await findShop(files[0] ?? 'job.yaml', options.shop);
  const jobs = [];
  for (const file of files) {
    const { text } = await readSource(file, 'job');
    const solved = await solveLoading(text, { file, ...defined({ shop }) });
    if (options.quiet !== true && options.json !== true) warn(solved.ok ? solved.warnings : solved.problems);
    jobs.push({ name: basename(file), summary: solved.ok ? solved.value.job.title : basename(file), text });
  }
  // The page names the shop's file, not the folders of this machine.
  const carried =
    shop === undefined ? undefined : { file: basename(shop.file), text: shop.text, ...(await markIn(shop)) };
  const html = await pageWith(carried, jobs);
  await writeAll(options.out, [{ name: FILE, bytes: new TextEncoder().encode(html) }]);
  if (options.json === true)
    return printJson({ folder: options.out, files: [FILE], jobs: jobs.map(({ name }) => name) });
  if (options.quiet !== true) note(`${FILE} written to ${options.out}: open it in a browser`);
}

/** One that cannot be read is told by whatever shows it; the page can do without. */
async function markIn({ file, text }: SourceFile): Promise<Pick<CarriedShop, 'mark'>> {
  const read = readShop({ text, file });
  const name = read.ok ? read.value.letterhead?.mark : undefined;
  if (name === undefined) return {};
  const found = await picturesBeside(file, "shop's file")(name);
  return 'bytes' in found ? { mark: { name, base64: base64(found.bytes) } } : {};
}

/** Until the one who started it ends it. */
async function served(files: readonly string[], { out, json, quiet }: Options): Promise<void> {
  if (files.length > 0) throw new UsageError('--serve serves a folder, named by --out; no job is named with it');
  if (statSync(out, { throwIfNoEntry: false })?.isDirectory() !== true)
    throw new UsageError(`${out} is no folder to serve`);
  const { serve } = await import('../serve/server.ts');
  const { address, close } = await serve(out, (base) => servedPage(base, basename(resolve(out))));
  if (json === true) printJson({ folder: out, address });
  else if (quiet === true) note(address);
  else note(`${out} is served to this machine alone: ${address}\nCtrl-C ends it`);
  await new Promise<void>((end) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => end());
  });
  await close();
}
