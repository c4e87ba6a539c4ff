import { dirname, join } from 'node:path';
import type { Command } from 'commander';
import { JIGS } from '../../documents/jigs/jigs.ts';
import { findOutput } from '../../outputs/table.ts';
import { defaultFolder, type SourceFile } from '../input.ts';
import { described, runOutput } from '../output/command.ts';
import type { Given, Shared } from '../output/options.ts';
import { note, printJson } from '../say.ts';
import { UsageError } from '../usage.ts';

/** Jigs are a family: the command names one of them, and lists them. */
export function define(command: Command): void {
  const output = findOutput('jig');
  if (!output.ok) throw new UsageError('there are no jigs');
  const row = output.value;
  described(
    command
      .argument('[kind]', 'which jig; --list names them')
      .argument('[job]', 'the job file, for the jigs that are made for one')
      .option('--list', 'name the jigs, one line each'),
    row,
  ).action(async (kind: string | undefined, job: string | undefined, options: Given & Shared): Promise<void> => {
    if (options.list === true) return list(options.json === true);
    if (kind === undefined) throw new UsageError('which jig? matwright jig --list names them');
    const folder = (shop: SourceFile | undefined) =>
      job === undefined ? join(shop === undefined ? '.' : dirname(shop.file), 'jigs') : defaultFolder(job);
    await runOutput(row, job === undefined ? [] : [job], options, { options: { kind }, folder });
  });
}

function list(json: boolean): void {
  if (json) {
    printJson(JIGS.map(({ kind, summary, needs }) => ({ kind, summary, needs })));
    return;
  }
  const wide = Math.max(...JIGS.map(({ kind }) => kind.length));
  for (const { kind, summary, needs } of JIGS)
    note(`${kind.padEnd(wide)}  ${summary}${needs === 'job' ? ' (JOB)' : ''}`);
}
