import type { Command } from 'commander';
import { build } from '../../index.ts';
import { showSize } from '../../units/print.ts';
import { defaultFolder, findShop, readSource } from '../input.ts';
import { leftOver, writeAll } from '../output.ts';
import { fail, note, printJson, warn } from '../say.ts';

interface Options {
  readonly machine?: string;
  readonly format?: string;
  readonly dialect?: string;
  readonly together?: boolean;
  readonly turn?: boolean;
  readonly coupon?: boolean;
  readonly shop?: string;
  readonly out?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

export function define(command: Command): void {
  command
    .argument('<job>', 'the job file, YAML or JSON')
    .option(
      '--machine <name>',
      'a machine of the shop, or laser, knife or bevel (default: the only machine of the shop)',
    )
    .option('--format <format>', "svg, dxf or hpgl (default: the machine's own)")
    .option('--dialect <dialect>', "of DXF: r12, which most programs take, or r2000 (default: the machine's own)")
    .option('--together', 'all layers on one bed, instead of a file for each')
    .option('--turn', 'lay the boards a quarter turn clockwise from how they hang')
    .option('--coupon', 'a small piece to measure the machine by, instead of the mat')
    .option('--out <dir>', "where the files go (default: a folder named after the job's file, beside it)")
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the job or in a folder above it)")
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
Examples:
  matwright cutfile examples/heron/job.yaml --machine laser --format svg
  matwright cutfile examples/heron/job.yaml --machine laser --coupon
`,
    )
    .action(cutfile);
}

async function cutfile(file: string, options: Options): Promise<void> {
  const source = await readSource(file, 'job');
  const shop = await findShop(file, options.shop);
  const { machine, format, dialect } = options;
  const made = await build(source.text, {
    file,
    ...(shop === undefined ? {} : { shop }),
    documents: ['cutfile'],
    cut: {
      ...(machine === undefined ? {} : { machine }),
      ...(format === undefined ? {} : { format }),
      ...(dialect === undefined ? {} : { dialect }),
      together: options.together === true,
      turn: options.turn === true,
      coupon: options.coupon === true,
    },
  });
  if ('problems' in made) return fail(made.problems, options.json === true);
  const folder = options.out ?? defaultFolder(file);
  const records = made.report.cutfiles ?? [];
  await writeAll(folder, made.files);
  if (options.json === true) {
    printJson({ folder, files: made.files.map(({ name }) => name), cutfiles: records, warnings: made.warnings });
    return;
  }
  if (options.quiet === true) return;
  warn(made.warnings);
  for (const { file: name, summary, up, ...size } of records) {
    note(`${name}  ${summary}`);
    note(`  ${showSize(size, 'mm')} at full scale, ${up === 'back' ? 'BACK' : 'FACE'} of the board up`);
  }
  for (const line of [...(records[0]?.allowances ?? []), ...(records[0]?.cautions ?? [])]) note(`  ${line}`);
  const own = records[0]?.machine ?? '';
  const family = new RegExp(`^cut-${own.replaceAll('.', '\\.')}-\\d+\\.(?:svg|dxf|plt)$`, 'u');
  // A coupon is no part of a job: cuts may lie beside it.
  const left = options.coupon === true ? [] : await leftOver(folder, family, made.files);
  for (const name of left) note(`${name} is from an earlier run and does not belong to what was asked now`);
  note(`written to ${folder}`);
}
