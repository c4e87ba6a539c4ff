import type { Command } from 'commander';
import { build } from '../../index.ts';
import { money } from '../../stock/prices.ts';
import { defaultFolder, findShop, readSource } from '../input.ts';
import { leftOver, writeAll } from '../output.ts';
import { picturesBeside } from '../picture.ts';
import { rendererBytes } from '../renderer.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { UsageError } from '../usage.ts';

interface Options {
  readonly shop?: string;
  readonly out?: string;
  readonly paper?: string;
  readonly date?: string;
  readonly vary?: string;
  readonly dimensions?: boolean;
  readonly svg?: boolean;
  readonly png?: boolean;
  readonly dpi: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

export function define(command: Command): void {
  command
    .argument('<job>', 'the job file, YAML or JSON')
    .option('--paper <paper>', 'letter, a4, a3 … (default: the paper of the job)')
    .option('--date <text>', 'the date, as it is to be printed')
    .option('--dimensions', 'dimension lines beside the piece')
    .option('--vary <place=values>', 'one way beside the other, with commas: mat.layers[1].board=bone-4,slate-4')
    .option('--svg', 'also each sheet as SVG')
    .option('--png', 'also each sheet as PNG')
    .option('--dpi <dpi>', 'pixels to the inch of the PNG', '150')
    .option('--out <dir>', "where the files go (default: a folder named after the job's file, beside it)")
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the job or in a folder above it)")
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
Examples:
  matwright proof examples/heron/job.yaml --date "12 March 2031"
  matwright proof examples/heron/job.yaml --vary 'mat.layers[1].board=slate-4,bone-4' --png
`,
    )
    .action(proof);
}

async function proof(file: string, options: Options): Promise<void> {
  const source = await readSource(file, 'job');
  const shop = await findShop(file, options.shop);
  const { paper, date, vary } = options;
  const dpi = resolution(options.dpi);
  const made = await build(source.text, {
    file,
    documents: ['proof'],
    svg: options.svg === true,
    ...(shop === undefined ? {} : { shop }),
    ...(paper === undefined ? {} : { paper }),
    proof: {
      dimensions: options.dimensions === true,
      pictures: picturesBeside(file),
      ...(date === undefined ? {} : { date }),
      ...(vary === undefined ? {} : { vary }),
      ...(options.png === true ? { png: { renderer: rendererBytes, dpi } } : {}),
    },
  });
  if ('problems' in made) return fail(made.problems, options.json === true);
  const folder = options.out ?? defaultFolder(file);
  const { proof: record, patterns, ...solved } = made.report;
  await writeAll(folder, made.files);
  if (options.json === true) {
    const files = made.files.map(({ name }) => name);
    printJson({ folder, files, proof: record, ...solved, warnings: made.warnings });
    return;
  }
  if (options.quiet === true) return;
  warn(made.warnings);
  const { sheets, scale, variants } = record!;
  note(`proof.pdf  ${sheets === 1 ? 'one sheet' : `${sheets} sheets`}, scale 1 : ${Number(scale.toFixed(2))}`);
  variants.forEach(({ label, prices }, i) => {
    if (label === undefined && prices === undefined) return;
    const name = label === undefined ? '' : `${String.fromCharCode(65 + i)}  ${label}  `;
    note(`  ${name}${prices === undefined ? '' : money(prices.total, prices)}`);
  });
  const left = await leftOver(folder, /^proof(?:-\d+)?\.(?:pdf|svg|png)$/u, made.files);
  for (const name of left) note(`${name} is from an earlier run and does not belong to this proof`);
  note(`written to ${folder}`);
}

function resolution(text: string): number {
  const dpi = Number(text);
  if (Number.isFinite(dpi) && dpi >= 20 && dpi <= 600) return dpi;
  throw new UsageError(`--dpi ${JSON.stringify(text)} is not a number from 20 to 600`);
}
