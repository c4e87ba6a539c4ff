import type { Report } from '../bench/report.ts';
import { defined } from '../problems/defined.ts';
import { fail, type Problem, type Result, succeed, toldOnce } from '../problems/problem.ts';
import type { OutputOptions, Surroundings } from './options.ts';
import type { Output } from './output.ts';
import { drawReady, type Prepared } from './prepare.ts';
import { ready } from './ready.ts';
import type { OutputId, Records } from './records.ts';
import { type SolveOptions, solveLoading } from './solve-job.ts';
import { findOutput } from './table.ts';
import { type OutputFile, write } from './write.ts';

/** The outputs that are made of one job. */
export type JobOutput = Exclude<OutputId, 'stock' | 'jig'>;

/** What is to be made, and how. Nothing ambient: texts, names and dates all come in here. */
export interface BuildOptions extends SolveOptions, Omit<OutputOptions, 'kind'>, Surroundings {
  /** The pattern alone, where nothing else is said. */
  readonly documents?: readonly JobOutput[];
}

export interface Built {
  readonly files: readonly OutputFile[];
  /** What was solved, and what each document says of itself. */
  readonly report: Report & {
    readonly patterns: Records['pattern'];
    readonly cutfiles?: Records['cutfile'];
    readonly proof?: Records['proof'];
    readonly sheets?: Partial<Pick<Records, Sheet>>;
  };
}

const SHEETS = ['ticket', 'placement', 'blanks', 'labels', 'intake'] as const;
type Sheet = (typeof SHEETS)[number];

/** Makes the documents of a job: bytes by file name, and what was solved. The same input gives the same bytes. */
export async function build(jobText: string, options: BuildOptions = {}): Promise<Result<Built>> {
  const solved = await solveLoading(jobText, options);
  if (!solved.ok) return solved;
  const outputs = (options.documents ?? ['pattern']).map((id) => findOutput<JobOutput>(id));
  const unknown = outputs.flatMap((each) => (each.ok ? [] : each.problems));
  if (unknown.length > 0) return fail(unknown);
  const planned = outputs
    .flatMap((each) => (each.ok ? [each.value] : []))
    .map((output) => ({
      output,
      own: outputs.length === 1 ? options : optionsFor(output, options),
    }));
  const { shop } = options;
  const work = { jobs: [solved.value], ...defined({ shop }) };
  const made = await ready(
    work,
    options,
    planned.map(({ output, own }) => [output, own]),
  );
  if (!made.ok) return made;
  const problems: Problem[] = [];
  const warnings: Problem[] = [...solved.warnings, ...made.warnings];
  const prepared: Prepared[] = [];
  for (const { output, own } of planned) {
    const one = await drawReady(output, made.value, own, options);
    if (one.ok) prepared.push(one.value);
    (one.ok ? warnings : problems).push(...(one.ok ? one.warnings : one.problems));
  }
  if (problems.length > 0) return fail(toldOnce(problems));
  const files: OutputFile[] = [];
  for (const one of prepared) {
    const written = await write(one, options);
    if (!written.ok) return written;
    files.push(...written.value);
  }
  return succeed({ files, report: reportOf(solved.value.report, prepared) }, toldOnce(warnings));
}

/** Formats of documents are asked of documents: what goes to a machine among several has the machine's own. */
export function optionsFor({ use, formats }: Output, { format, ...others }: OutputOptions): OutputOptions {
  const own = use === undefined ? [] : (format ?? []).filter((each) => formats.includes(each.toLowerCase()));
  return own.length === 0 ? others : { ...others, format: own };
}

function reportOf(report: Report, prepared: readonly Prepared[]): Built['report'] {
  const records: Partial<Records> = Object.fromEntries(prepared.map(({ id, drawn }) => [id, drawn.record]));
  const { pattern = [], cutfile, proof } = records;
  const said = prepared.flatMap(({ id }) => SHEETS.filter((each) => each === id));
  const sheets: Partial<Pick<Records, Sheet>> = Object.fromEntries(said.map((id) => [id, records[id]]));
  return {
    ...report,
    patterns: pattern,
    ...defined({ cutfiles: cutfile, proof, sheets: said.length === 0 ? undefined : sheets }),
  };
}
