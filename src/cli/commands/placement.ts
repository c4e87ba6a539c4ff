import type { Command } from 'commander';
import { makePlacement, solveLoading } from '../../index.ts';
import { type SheetOptions, sheetOptions } from '../bench-sheet.ts';
import { defaultFolder, findShop, readSource } from '../input.ts';
import { writeAll } from '../output.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { UsageError } from '../usage.ts';

interface Options extends SheetOptions {
  readonly printer?: string;
  readonly extent?: string;
}

export function define(command: Command): void {
  sheetOptions(
    command
      .argument('<job>', 'the job file, YAML or JSON')
      .option('--extent <extent>', 'whole: sheets to be joined; corners (default: whole where one sheet holds it)')
      .option('--printer <name>', 'a printer of the shop, whose measured scale is corrected'),
  )
    .addHelpText('after', '\nExample:\n  matwright placement examples/heron/job.yaml\n')
    .action(place);
}

async function place(file: string, options: Options): Promise<void> {
  const { paper, printer, extent } = options;
  if (extent !== undefined && extent !== 'whole' && extent !== 'corners')
    throw new UsageError(`--extent ${extent}: write whole or corners`);
  const source = await readSource(file, 'job');
  const shop = await findShop(file, options.shop);
  const solved = await solveLoading(source.text, { file, ...(shop === undefined ? {} : { shop }) });
  if (!solved.ok) return fail(solved.problems, options.json === true);
  const { locate, report } = solved.value;
  const made = await makePlacement(solved.value, {
    ...(paper === undefined ? {} : { paper }),
    ...(printer === undefined ? {} : { printer }),
    ...(extent === undefined ? {} : { extent }),
  });
  if (!made.ok) return fail(locate(made.problems), options.json === true);
  const folder = options.out ?? defaultFolder(file);
  const { files, record } = made.value;
  await writeAll(folder, files);
  const warnings = [...solved.warnings, ...locate(made.warnings)];
  if (options.json === true)
    return printJson({ folder, files: files.map(({ name }) => name), placement: record, ...report, warnings });
  if (options.quiet === true) return;
  warn(warnings);
  note(`placement.pdf  ${record.summary}`);
  note(record.printer);
  note(`written to ${folder}`);
}
