import { dirname, join } from 'node:path';
import type { Command } from 'commander';
import { JIGS } from '../../documents/jigs/jigs.ts';
import { buildJig } from '../../index.ts';
import { defaultFolder, findShop, readSource } from '../input.ts';
import { writeAll } from '../output.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { UsageError } from '../usage.ts';

interface Options {
  readonly list?: boolean;
  readonly shop?: string;
  readonly out?: string;
  readonly paper?: string;
  readonly printer?: string;
  readonly head?: string;
  readonly thickness?: string;
  readonly cut?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

export function define(command: Command): void {
  command
    .argument('[kind]', 'which jig; --list names them')
    .argument('[job]', 'the job file, for the jigs that are made for one')
    .option('--list', 'name the jigs, one line each')
    .option(
      '--out <dir>',
      "where the file goes (default: a folder named after the job's file, or jigs beside shop.yaml)",
    )
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the job or in a folder above it)")
    .option('--paper <paper>', 'letter, a4, a3 …, or a size such as "300 x 450 mm"')
    .option('--printer <name>', 'a printer of the shop, whose measured scale is corrected')
    .option('--head <name>', 'a head of the shop')
    .option('--thickness <list>', 'of the boards to test a head on: "1.4 mm, 3 mm"')
    .option('--cut <formats>', 'also write what there is to cut, full scale: svg, dxf, hpgl, with commas')
    .option('--json', 'one JSON document on standard output')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
Examples:
  matwright jig printer --paper letter --printer office
  matwright jig head --thickness "1.4 mm, 3 mm"
  matwright jig art-corner examples/heron/job.yaml --cut svg,dxf
  matwright jig --list
`,
    )
    .action(jig);
}

async function jig(kind: string | undefined, job: string | undefined, options: Options): Promise<void> {
  if (options.list === true) return list(options);
  if (kind === undefined) throw new UsageError('which jig? matwright jig --list names them');
  const source = job === undefined ? undefined : await readSource(job, 'job');
  const shop = await findShop(job ?? join('.', 'job.yaml'), options.shop);
  const { paper, printer, head, thickness, cut } = options;
  const made = await buildJig(kind, {
    ...(source === undefined ? {} : { job: source }),
    ...(shop === undefined ? {} : { shop }),
    ...(paper === undefined ? {} : { paper }),
    ...(printer === undefined ? {} : { printer }),
    ...(head === undefined ? {} : { head }),
    ...(thickness === undefined ? {} : { thickness }),
    ...(cut === undefined ? {} : { cut: cut.split(',').map((id) => id.trim()) }),
  });
  if (!made.ok) return fail(made.problems, options.json === true);
  const { title, sheets, printer: stamp } = made.value;
  const folder =
    options.out ??
    (job === undefined ? join(shop === undefined ? '.' : dirname(shop.file), 'jigs') : defaultFolder(job));
  await writeAll(folder, made.value.files);
  const files = made.value.files.map((file) => file.name);
  if (options.json === true) return printJson({ folder, files, kind, sheets, warnings: made.warnings });
  if (options.quiet === true) return;
  warn(made.warnings);
  for (const file of files)
    note(`${file}  ${title}${file.endsWith('.pdf') ? `, ${sheets === 1 ? 'one sheet' : `${sheets} sheets`}` : ''}`);
  note(stamp);
  note(`written to ${folder}`);
}

function list({ json }: Options): void {
  if (json === true) {
    printJson(JIGS.map(({ kind, summary, needs }) => ({ kind, summary, needs })));
    return;
  }
  const wide = Math.max(...JIGS.map(({ kind }) => kind.length));
  for (const { kind, summary, needs } of JIGS)
    note(`${kind.padEnd(wide)}  ${summary}${needs === 'job' ? ' (JOB)' : ''}`);
}
