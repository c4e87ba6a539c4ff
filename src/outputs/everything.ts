import type { Report } from '../bench/report.ts';
import { countedOn } from '../documents/ticket/tickets.ts';
import type { PageRecord } from '../paper/manifest.ts';
import { defined } from '../problems/defined.ts';
import { fail, type Problem, type Result, succeed, toldOnce } from '../problems/problem.ts';
import { optionsFor } from './build.ts';
import type { OutputOptions, Surroundings } from './options.ts';
import { drawReady } from './prepare.ts';
import { ready } from './ready.ts';
import type { Records } from './records.ts';
import type { Solved } from './solve-job.ts';
import { OUTPUTS } from './table.ts';
import { type OutputFile, write } from './write.ts';

export interface Everything {
  readonly files: readonly OutputFile[];
  readonly manifest: Manifest;
}

/** What `manifest.json` says: the files, of every page what it shows and where, and what each output says of itself. */
export interface Manifest extends Partial<Omit<Records, 'pattern' | 'cutfile' | 'stock' | 'jig'>>, Report {
  readonly title: string;
  readonly files: readonly string[];
  readonly pages: readonly PageRecord[];
  readonly board?: Records['pattern'][number]['board'];
  readonly patterns: Records['pattern'];
  readonly cutfiles: Records['cutfile'];
  readonly warnings: readonly Problem[];
}

/**
 * Every output of one job, the one at `index` among those asked for, each as `make` makes it: the job is solved once and
 * paper, printer and fonts are decided once for all of them. What a machine cannot cut is told as a warning and left
 * out, since nobody asked for that machine; other problems leave nothing.
 */
export async function everything(
  job: Solved,
  index: number,
  given: OutputOptions = {},
  around: Surroundings = {},
): Promise<Result<Everything>> {
  const { number } = given;
  const options = number === undefined ? given : { ...given, number: countedOn(number, index) };
  const planned = OUTPUTS.flatMap((output) => {
    const ways = output.ofEveryJob?.(job) ?? [];
    return ways.map((own) => ({ output, own: { ...own, ...optionsFor(output, options) } }));
  });
  const made = await ready(
    { jobs: [job] },
    options,
    planned.map((each) => [each.output, each.own]),
  );
  if (!made.ok) return made;
  const problems: Problem[] = [];
  const warnings: Problem[] = [...made.warnings];
  const files: OutputFile[] = [];
  const cutfiles: Records['cutfile'][number][] = [];
  const records: Partial<Records> = {};
  for (const { output, own } of planned) {
    const one = await drawReady(output, made.value, own, around);
    if (!one.ok && output.id === 'cutfile') warnings.push(...one.problems.map(asWarning));
    else if (!one.ok) problems.push(...one.problems);
    else {
      const written = await write(one.value, around);
      if (!written.ok) return written;
      files.push(...written.value);
      warnings.push(...one.warnings);
      const { id, drawn } = one.value;
      Object.assign(records, { [id]: drawn.record });
      if (id === 'cutfile') cutfiles.push(...(records.cutfile ?? []));
    }
  }
  if (problems.length > 0) return fail(toldOnce(problems));
  const told = toldOnce(warnings);
  const manifest = manifestOf(job, files, { ...records, cutfile: cutfiles }, told);
  return succeed({ files: [...files, manifestFile(manifest)], manifest }, told);
}

const asWarning = (problem: Problem): Problem => ({ ...problem, severity: 'warning' });

function manifestOf(
  { report }: Solved,
  files: readonly OutputFile[],
  { pattern = [], cutfile = [], ...records }: Partial<Records>,
  warnings: readonly Problem[],
): Manifest {
  const board = pattern[0]?.board;
  return {
    ...report,
    files: files.map(({ name }) => name),
    pages: [...pattern.flatMap(({ pages }) => pages), ...(records.placement?.pages ?? [])],
    ...defined({ board }),
    patterns: pattern,
    ...records,
    cutfiles: cutfile,
    // The folder may be moved: what it says of itself holds no ways of this machine.
    warnings: warnings.map((problem) =>
      problem.file === undefined ? problem : { ...problem, file: lastPart(problem.file) },
    ),
  };
}

const lastPart = (file: string): string => file.slice(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);

const manifestFile = (manifest: Manifest): OutputFile => ({
  name: 'manifest.json',
  bytes: new TextEncoder().encode(`${JSON.stringify(manifest, null, 2)}\n`),
});
