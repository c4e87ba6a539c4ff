import type { PictureReader, Step, Surroundings } from '../../outputs/options.ts';
import { type Prepared, prepare } from '../../outputs/prepare.ts';
import type { Solved } from '../../outputs/solve-job.ts';
import type { Taken } from '../../outputs/taken.ts';
import { type OutputFile, write } from '../../outputs/write.ts';
import { defined } from '../../problems/defined.ts';
import { type Problem, type Result, succeed, toldOnce } from '../../problems/problem.ts';
import type { Asks, JobSource, Laid, Told, Wanted, Work } from './answers.ts';
import { solvedOf } from './solved.ts';

/**
 * The only file of the page that makes outputs: the same calls, in the same order, as the command of each, so that the
 * bytes are the same.
 */
export async function lay(request: Asks['lay']['request']): Promise<Told<Laid>> {
  const prepared = await preparedOf(request);
  if (!prepared.ok) return { ok: false, problems: prepared.problems };
  const { drawn, taken } = prepared.value;
  const laid: Laid = {
    title: drawn.title,
    taken,
    documents: drawn.documents.map(({ name, said, document }) => ({ name, said, document })),
    drawings: drawn.drawings.map(({ name, said, drawing }) => ({ name, said, drawing })),
    notes: drawn.notes,
    pictures: Object.fromEntries(Object.entries(drawn.pictures ?? {}).map(([name, { jpeg }]) => [name, jpeg])),
  };
  return { ok: true, value: laid, problems: prepared.warnings };
}

/** What an output would take of paper and beds, counted on its pages. */
export async function take(request: Asks['take']['request']): Promise<Told<Taken>> {
  const prepared = await preparedOf(request);
  return prepared.ok
    ? { ok: true, value: prepared.value.taken, problems: prepared.warnings }
    : { ok: false, problems: prepared.problems };
}

async function preparedOf({ jobs, wanted, shop }: Asks['lay']['request']): Promise<Result<Prepared>> {
  const solved = await solvedOf(jobs);
  if (!solved.ok) return solved;
  const prepared = await prepare(
    wanted.id,
    workOf(solved.value, { jobs, ...defined({ shop }) }),
    wanted.options,
    around(jobs),
  );
  return prepared.ok ? succeed(prepared.value, toldOnce([...solved.warnings, ...prepared.warnings])) : prepared;
}

/** The files of all that is wanted, one output after the other; nothing where one of them cannot be made. */
export async function make(
  { jobs, wanted, shop }: Asks['make']['request'],
  progress: (step: Step) => void,
): Promise<Told<readonly OutputFile[]>> {
  const solved = await solvedOf(jobs);
  if (!solved.ok) return { ok: false, problems: solved.problems };
  const files: OutputFile[] = [];
  const told: Problem[] = [...solved.warnings];
  for (const [i, { id, options }] of wanted.entries()) {
    const one = await made({ id, options }, solved.value, { jobs, ...defined({ shop }) }, (step) => {
      if (wanted.length === 1) progress(step);
    });
    if (!one.ok) return { ok: false, problems: one.problems };
    files.push(...one.value);
    told.push(...one.warnings);
    if (wanted.length > 1) progress({ output: id, file: one.value.at(-1)?.name ?? id, done: i + 1, of: wanted.length });
  }
  return { ok: true, value: files, problems: toldOnce(told) };
}

async function made(
  { id, options }: Wanted,
  solved: readonly Solved[],
  of: Work,
  progress: (step: Step) => void,
): Promise<Result<readonly OutputFile[]>> {
  const prepared = await prepare(id, workOf(solved, of), options, around(of.jobs));
  if (!prepared.ok) return prepared;
  const files = await write(prepared.value, { ...around(of.jobs), progress });
  return files.ok ? succeed(files.value, prepared.warnings) : files;
}

function workOf(solved: readonly Solved[], { jobs, shop }: Work) {
  return { jobs: solved, ...defined({ shop: jobs[0]?.shop ?? shop }) };
}

function around(jobs: readonly JobSource[]): Surroundings {
  const known = Object.assign({}, ...jobs.map(({ pictures }) => pictures)) as JobSource['pictures'];
  const any = jobs.some(({ pictures }) => Object.keys(pictures).length > 0);
  const ofShop = jobs[0]?.shopPictures;
  return {
    ...(any ? { pictures: readerOf(known) } : {}),
    ...(ofShop === undefined ? {} : { shopPictures: readerOf(ofShop) }),
  };
}

const readerOf =
  (known: JobSource['pictures']): PictureReader =>
  async (name) => {
    const bytes = known[name];
    return bytes === undefined
      ? { why: `the picture ${JSON.stringify(name)} is not on this page`, hint: 'drop its file on the page' }
      : { bytes };
  };
