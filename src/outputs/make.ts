import { type Result, succeed } from '../problems/problem.ts';
import type { OutputOptions, Surroundings } from './options.ts';
import type { Work } from './output.ts';
import { type Prepared, prepare } from './prepare.ts';
import type { OutputId, Records } from './records.ts';
import type { Taken } from './taken.ts';
import { type OutputFile, write } from './write.ts';

/** An output as files, and what is to be said of it. */
export interface Made<Id extends OutputId = OutputId> {
  readonly id: Id;
  readonly files: readonly OutputFile[];
  readonly record: Records[Id];
  readonly taken: Taken;
}

/** One output of some work, written. The same work and options give the same bytes. Errors: those of `prepare` and of `write`. */
export async function make<Id extends OutputId>(
  id: Id,
  work: Work,
  options: OutputOptions = {},
  around: Surroundings = {},
): Promise<Result<Made<Id>>> {
  const prepared = await prepare(id, work, options, around);
  if (!prepared.ok) return prepared;
  const files = await write(prepared.value, around);
  return files.ok ? succeed(madeOf(prepared.value, files.value), prepared.warnings) : files;
}

const madeOf = <Id extends OutputId>({ id, drawn, taken }: Prepared<Id>, files: readonly OutputFile[]): Made<Id> => ({
  id,
  files,
  record: drawn.record,
  taken,
});
