import type { OutputOptions, Surroundings } from '../../outputs/options.ts';
import { prepare } from '../../outputs/prepare.ts';
import type { Solved, Source } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import { type Result, succeed } from '../../problems/problem.ts';
import { type Paper, papersOf } from './paper.ts';

/** What the bench gets for all jobs together, by the output that it is. */
export const BENCH = { ticket: 'tickets', labels: 'labels', stock: 'stock' } as const;
export type BenchOutput = keyof typeof BENCH;

/** One output of several jobs as files of the day. The jobs have their numbers already. Errors: those of the output. */
export async function benchPapers(
  output: BenchOutput,
  name: string,
  jobs: readonly Solved[],
  shop: Source | undefined,
  { number: _, format: _format, ...options }: OutputOptions,
  around: Surroundings = {},
): Promise<Result<readonly Paper[]>> {
  const prepared = await prepare(output, { jobs, ...defined({ shop }) }, options, around);
  if (!prepared.ok) return prepared;
  const { drawn, ready } = prepared.value;
  const papers: Paper[] = [];
  for (const { document } of drawn.documents) {
    papers.push(
      ...(await papersOf(name, document, { fonts: ready.settled.fonts, ...defined({ pictures: drawn.pictures }) })),
    );
  }
  return succeed(papers, prepared.warnings);
}

/** A job with the number that it has on this day. */
export const withNumber = (solved: Solved, number: string | undefined): Solved =>
  number === undefined ? solved : { ...solved, job: { ...solved.job, number } };
