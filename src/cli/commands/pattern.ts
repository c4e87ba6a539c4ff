import type { Command } from 'commander';
import { build } from '../../index.ts';
import { defaultFolder, findShop, readSource } from '../input.ts';
import { leftOver, writeAll } from '../output.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { UsageError } from '../usage.ts';

interface Options {
  readonly shop?: string;
  readonly out?: string;
  readonly paper?: string;
  readonly printer?: string;
  readonly extent: string;
  readonly svg?: boolean;
  readonly tiles?: boolean;
  readonly show?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

export function define(command: Command): void {
  command
    .argument('<job>', 'the job file, YAML or JSON')
    .option('--out <dir>', "where the files go (default: a folder named after the job's file, beside it)")
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the job or in a folder above it)")
    .option('--paper <paper>', 'letter, a4, arch-c …, a size such as "300 x 450 mm", roll:36in, or fit')
    .option('--printer <name>', 'a printer of the shop, whose measured scale is corrected')
    .option(
      '--extent <extent>',
      'whole: sheets taped into one; corners: sheets laid on by the corners of the board',
      'whole',
    )
    .option('--svg', 'also write each pattern as one SVG')
    .option('--tiles', 'also write each sheet as one SVG')
    .option('--show <groups>', 'only these parts, flattened, with commas: cut,marks,readings …')
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      '\nExample:\n  matwright pattern examples/heron/job.yaml --paper letter --out heron-pattern\n',
    )
    .action(pattern);
}

async function pattern(file: string, options: Options): Promise<void> {
  const source = await readSource(file, 'job');
  const shop = await findShop(file, options.shop);
  const made = await build(source.text, {
    file,
    ...(shop === undefined ? {} : { shop }),
    documents: ['pattern'],
    extent: extentOf(options.extent),
    ...(options.paper === undefined ? {} : { paper: options.paper }),
    ...(options.printer === undefined ? {} : { printer: options.printer }),
    ...(options.show === undefined ? {} : { show: options.show.split(',').map((name) => name.trim()) }),
    svg: options.svg === true,
    tiles: options.tiles === true,
  });
  if ('problems' in made) return fail(made.problems, options.json === true);
  const folder = options.out ?? defaultFolder(file);
  const { patterns, ...solved } = made.report;
  if (options.json !== true && options.quiet !== true) {
    for (const p of patterns) {
      note(`${p.file}  ${p.name}: ${p.summary}`);
      for (const line of p.advice) note(`  ${line}`);
    }
    if (patterns[0] !== undefined) note(patterns[0].printer);
  }
  await writeAll(folder, made.files);
  const left = await leftOver(folder, /^pattern-(?:\d+|face)(?:-\w+)?\.(?:pdf|svg)$/u, made.files);
  if (options.json === true) {
    const pages = patterns.flatMap((p) => p.pages);
    const board = patterns[0]?.board;
    printJson({
      folder,
      files: made.files.map((f) => f.name),
      board,
      pages,
      patterns,
      ...solved,
      warnings: made.warnings,
    });
    return;
  }
  if (options.quiet === true) return;
  warn(made.warnings);
  for (const name of left) note(`${name} is from an earlier run and does not belong to this job as it is now`);
  note(`written to ${folder}`);
}

function extentOf(text: string): 'whole' | 'corners' {
  if (text === 'whole' || text === 'corners') return text;
  throw new UsageError(`--extent ${JSON.stringify(text)} is neither whole nor corners`);
}
