import { countedOn } from '../documents/ticket/tickets.ts';
import type { Document } from '../drawing/document.ts';
import { error, fail, type Problem, type Result, succeed, toldOnce } from '../problems/problem.ts';
import { USUALLY_MADE } from '../shop/make-list.ts';
import { optionsFor } from './build.ts';
import { faceFile } from './face.ts';
import { type Manifest, manifestFile, manifestOf } from './job-manifest.ts';
import type { OutputOptions, Surroundings } from './options.ts';
import { drawReady, type Prepared } from './prepare.ts';
import { ready } from './ready.ts';
import type { OutputId, Records } from './records.ts';
import type { Solved } from './solve-job.ts';
import { OUTPUTS } from './table.ts';
import { type OutputFile, write } from './write.ts';

export interface Everything {
  readonly files: readonly OutputFile[];
  readonly manifest: Manifest;
  /** What was laid on pages, to be joined with that of other jobs. */
  readonly documents: readonly JobDocument[];
}

export interface JobDocument {
  readonly output: OutputId;
  /** Of its files, without an ending. */
  readonly name: string;
  /** What it is, in a few words: `top mat: 6 sheets of Letter`. */
  readonly said: string;
  readonly document: Document;
}

/** What a job may take. */
export interface Limits {
  /** Pages, all of its documents together. */
  readonly sheets?: number;
}

/** More is a mistake in a size or a paper. */
export const MOST_SHEETS = 200;

/** What is made of a job: what it asks for, else its shop. */
const wantedOf = ({ job, shop }: Pick<Solved, 'job' | 'shop'>): readonly OutputId[] =>
  job.make ?? shop.make ?? USUALLY_MADE;

/**
 * Every output that is wanted of one job, the one at `index` among those asked for, each as `make` makes it: the job is
 * solved once and paper, printer and fonts are decided once for all of them. What a machine cannot cut is told as a
 * warning and left out, since nobody asked for that machine; other problems leave nothing. Errors: `sheets-many`.
 */
export async function everything(
  job: Solved,
  index: number,
  given: OutputOptions = {},
  around: Surroundings = {},
  { sheets: most = MOST_SHEETS }: Limits = {},
): Promise<Result<Everything>> {
  const { number } = given;
  const options = number === undefined ? given : { ...given, number: countedOn(number, index) };
  const wanted = wantedOf(job);
  const planned = OUTPUTS.filter(({ id }) => wanted.includes(id)).flatMap((output) => {
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
  const prepared: Prepared[] = [];
  for (const { output, own } of planned) {
    const one = await drawReady(output, made.value, own, around);
    if (one.ok) {
      prepared.push(one.value);
      warnings.push(...one.warnings);
    } else if (output.id === 'cutfile') warnings.push(...one.problems.map(asWarning));
    else problems.push(...one.problems);
  }
  const documents = prepared.flatMap(({ id, drawn }) =>
    drawn.documents.map(({ name, said, document }) => ({ output: id, name, said, document })),
  );
  const sheets = documents.reduce((sum, { document }) => sum + document.pages.length, 0);
  if (sheets > most) problems.push(...job.locate([tooMany(sheets, most)]));
  if (problems.length > 0) return fail(toldOnce(problems));
  const files: OutputFile[] = [];
  for (const one of prepared) {
    const written = await write(one, around);
    if (!written.ok) return written;
    files.push(...written.value);
    if (one.id !== 'proof') continue;
    const face = await faceFile(one);
    if (!face.ok) return face;
    files.push(face.value);
  }
  const told = toldOnce(warnings);
  const head = { number: options.number ?? job.job.number, due: job.job.due };
  const manifest = manifestOf(job.report, head, files, sheets, recordsOf(prepared), told);
  return succeed({ files: [...files, manifestFile(manifest)], manifest, documents }, told);
}

const asWarning = (problem: Problem): Problem => ({ ...problem, severity: 'warning' });

function tooMany(sheets: number, most: number): Problem {
  const message = `the job’s documents take ${sheets} sheets, more than the ${most} that one job may take`;
  return error('sheets-many', [], message, 'take a larger paper, lay patterns on by corners, or allow more');
}

function recordsOf(prepared: readonly Prepared[]): Partial<Records> {
  const records: Partial<Records> = {};
  const cutfiles: Records['cutfile'][number][] = [];
  for (const { id, drawn } of prepared) {
    Object.assign(records, { [id]: drawn.record });
    if (id === 'cutfile') cutfiles.push(...(records.cutfile ?? []));
  }
  return { ...records, cutfile: cutfiles };
}
