import type { Command } from 'commander';
import { type SheetOptions, sheetOptions, writeSheets } from '../bench-sheet.ts';

interface Options extends SheetOptions {
  readonly number?: string;
}

export function define(command: Command): void {
  sheetOptions(
    command
      .argument('<job...>', 'job files, YAML or JSON')
      .option('--number <number>', 'of the first job, as the shop counts: 41, A-07; the others count on'),
  )
    .addHelpText('after', '\nExample:\n  matwright blanks monday/*.yaml --number 41\n')
    .action((files: readonly string[], options: Options) =>
      writeSheets('blanks', files, options, options.number === undefined ? {} : { number: options.number }),
    );
}
