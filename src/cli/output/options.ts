import type { Command } from 'commander';
import { OPTIONS, type Option, type OptionName } from '../../outputs/option-table.ts';
import type { OutputOptions } from '../../outputs/options.ts';
import { UsageError } from '../usage.ts';

/** What commander hands over: texts of options, true for switches. */
export type Given = Readonly<Record<string, string | boolean | undefined>>;

/** What every command that writes outputs has besides the options of the outputs. */
export interface Shared {
  readonly shop?: string;
  readonly out?: string;
  /** Take away what an earlier run made and this one did not. */
  readonly prune?: boolean;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** Options of outputs, and those of the command line that all of them have. */
export function outputOptions(
  command: Command,
  names: readonly OptionName[],
  formats: readonly string[],
  usual = formats[0],
): Command {
  for (const name of names) {
    const { value, help }: Option = OPTIONS[name];
    const known = name === 'format' ? `${formats.join(', ')}: ${help} (default: ${usual})` : help;
    command.option(value === undefined ? `--${name}` : `--${name} ${value}`, known);
  }
  return command
    .option('--out <dir>', "where the files go (default: a folder named after the job's file; bench for several jobs)")
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the job or in a folder above it)")
    .option(
      '--prune',
      'take away what an earlier run made there and this one did not, where nobody has changed it since',
    )
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors');
}

/** Other formats are added to those that are named, so these are read first. */
const inOrder = (names: readonly OptionName[]): readonly OptionName[] => [
  ...names.filter((name) => name === 'format'),
  ...names.filter((name) => name !== 'format'),
];

/** What the texts of a command come to. */
export function optionsFrom(names: readonly OptionName[], given: Given): OutputOptions {
  let options: OutputOptions = {};
  for (const name of inOrder(names)) {
    const text = given[name];
    if (text === undefined || text === false) continue;
    const option: Option = OPTIONS[name];
    const read = option.read(String(text), options);
    if ('wrong' in read) throw new UsageError(`--${name} ${String(text)}: ${read.wrong}`);
    options = read;
  }
  return options;
}
