import { extname, join } from 'node:path';
import type { Command } from 'commander';
import { findJobs } from '../day/find.ts';
import { readSource } from '../input.ts';
import { writeNew } from '../output/replace.ts';
import { fail, note } from '../say.ts';

interface Flags {
  readonly out: string;
  readonly json?: boolean;
}

export function define(command: Command): void {
  command
    .argument('<job...>', 'jobs that are built alike, or folders of them')
    .option('--out <file>', 'the table, CSV; the template goes beside it', 'jobs.csv')
    .option('--json', 'problems as one JSON document')
    .addHelpText(
      'after',
      `
The first job is the template; a column is written for every place in which another differs.

Example:
  matwright table prints --out prints.csv
  matwright make --table prints.csv --template prints-template.yaml --out show
`,
    )
    .action(table);
}

async function table(given: readonly string[], flags: Flags): Promise<void> {
  const sources = [];
  for (const file of await findJobs(given)) sources.push(await readSource(file, 'job'));
  const { tableFromJobs } = await import('../../day/table/table-from-jobs.ts');
  const written = tableFromJobs(sources);
  if (!written.ok) return fail(written.problems, flags.json === true);
  const ending = extname(sources[0]!.file) === '.json' ? 'json' : 'yaml';
  const stem = flags.out.slice(0, flags.out.length - extname(flags.out).length);
  const template = join(`${stem}-template.${ending}`);
  await writeNew([
    [flags.out, written.value.table],
    [template, written.value.template],
  ]);
  note(`${sources.length} jobs written to ${flags.out}, over ${template}`);
}
