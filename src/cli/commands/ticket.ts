import type { Command } from 'commander';
import { type SheetOptions, sheetOptions, writeSheets } from '../bench-sheet.ts';

interface Options extends SheetOptions {
  readonly number?: string;
}

export function define(command: Command): void {
  sheetOptions(
    command
      .argument('<job...>', 'job files, YAML or JSON; several are sorted by board and guide setting')
      .option(
        '--number <number>',
        'of the first job, as the shop counts: 41, A-07; the others count on (default: what each job says)',
      ),
  )
    .addHelpText(
      'after',
      `
Examples:
  matwright ticket examples/heron/job.yaml --number 41
  matwright ticket monday/*.yaml --number A-07 --out monday/bench
`,
    )
    .action((files: readonly string[], options: Options) =>
      writeSheets('ticket', files, options, options.number === undefined ? {} : { number: options.number }),
    );
}
