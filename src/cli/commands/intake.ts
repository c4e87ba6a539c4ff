import type { Command } from 'commander';
import { LENGTH_UNITS, type LengthUnit } from '../../units/units.ts';
import { type SheetOptions, sheetOptions, writeSheets } from '../bench-sheet.ts';
import { UsageError } from '../usage.ts';

interface Options extends SheetOptions {
  readonly number?: string;
  readonly units?: string;
}

export function define(command: Command): void {
  sheetOptions(
    command
      .argument('[job]', 'a job file that fills the form in; without one it is empty')
      .option('--number <number>', "the job's number, as the shop counts")
      .option('--units <unit>', 'of an empty form: in, mm or cm (default: in)'),
  )
    .addHelpText(
      'after',
      '\nExamples:\n  matwright intake --paper letter --out forms\n  matwright intake examples/heron/job.yaml --number 41\n',
    )
    .action((file: string | undefined, { number, units, ...options }: Options) =>
      writeSheets('intake', file === undefined ? [] : [file], options, {
        ...(number === undefined ? {} : { number }),
        ...(units === undefined ? {} : { units: unit(units) }),
      }),
    );
}

function unit(text: string): LengthUnit {
  const found = LENGTH_UNITS.find((each) => each === text);
  if (found === undefined) throw new UsageError(`--units ${text}: write in, mm or cm`);
  return found;
}
