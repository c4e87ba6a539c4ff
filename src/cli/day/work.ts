import { dirname, relative } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { benchPapers, withNumber } from '../../day/papers/bench.ts';
import type { Paper } from '../../day/papers/paper.ts';
import { type JobPatterns, patternPapers, patternsIn, textsOf } from '../../day/papers/patterns.ts';
import { type Everything, everything } from '../../outputs/everything.ts';
import { manifestFile } from '../../outputs/job-manifest.ts';
import type { PictureReader, Surroundings } from '../../outputs/options.ts';
import { prepare } from '../../outputs/prepare.ts';
import { type Solved, solveLoading } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import { type Problem, type Result, toldOnce } from '../../problems/problem.ts';
import { type Print, printOf } from '../files/made.ts';
import { pictureFile, picturesBeside } from '../output/picture.ts';
import { rendererBytes } from '../output/renderer.ts';
import type { JobText, TaskKind, Tasks } from './tasks.ts';

type Doing = { readonly [Kind in TaskKind]: (task: Tasks[Kind]['task']) => Promise<Tasks[Kind]['answer']> };

/** How each kind of task is done. Nothing is written here: whoever hands out tasks writes what comes of them. */
const DOING: Doing = {
  async job({ job, options, sheets, source, made, pack: isPacked }) {
    const solved = await solvedOf(job);
    if (!solved.ok) return { value: undefined, problems: solved.problems };
    const seen: Print[] = [];
    const around = {
      pictures: noting(picturesBeside(job.file), seen, (name) => name),
      ...ofShop(job, seen),
      renderer: rendererBytes,
    };
    const all = await everything(solved.value, 0, { ...options, ...defined({ number: job.number }) }, around, {
      sheets,
    });
    if (!all.ok) return { value: undefined, problems: all.problems };
    const files = all.value.files.slice(0, -1);
    const outputs = files.map(printOf);
    const manifest = { ...all.value.manifest, source, made: { ...made, pictures: seen, outputs } };
    const packed = isPacked ? pack(job, solved.value, all.value.documents) : undefined;
    const value = {
      files: [...files, manifestFile(manifest)],
      manifest,
      pictures: seen.map(({ name }) => pictureFile(job.file, name)),
      ...defined({ packed }),
    };
    return { value, problems: toldOnce([...solved.warnings, ...all.warnings]) };
  },

  async pages({ job, options }) {
    const solved = await solvedOf(job);
    if (!solved.ok) return { value: undefined, problems: solved.problems };
    const { format: _, ...own } = options;
    const prepared = await prepare('pattern', { jobs: [solved.value] }, { ...own, ...defined({ number: job.number }) });
    if (!prepared.ok) return { value: undefined, problems: prepared.problems };
    const documents = prepared.value.drawn.documents.map((each) => ({ output: 'pattern' as const, ...each }));
    return { value: pack(job, solved.value, documents), problems: [] };
  },

  async patterns({ name, packed }) {
    const jobs = packed.map((bytes) => deserialize(bytes) as JobPatterns);
    return { value: await patternPapers(name, jobs), problems: [] };
  },

  async bench({ papers: wanted, jobs: texts, options }) {
    const jobs: Solved[] = [];
    const problems: Problem[] = [];
    for (const text of texts) {
      const solved = await solvedOf(text);
      if (solved.ok) jobs.push(withNumber(solved.value, text.number));
      else problems.push(...solved.problems);
    }
    const papers: (readonly Paper[])[] = [];
    const around = texts[0] === undefined ? {} : ofShop(texts[0], []);
    for (const { output, name } of wanted) {
      const made = await benchPapers(output, name, jobs, texts[0]?.shop, options, around);
      papers.push(made.ok ? made.value : []);
      if (!made.ok) problems.push(...made.problems);
    }
    return { value: papers, problems: toldOnce(problems) };
  },
};

/** One of them, by its name. */
export const work = <Kind extends TaskKind>(kind: Kind, task: Tasks[Kind]['task']): Promise<Tasks[Kind]['answer']> =>
  DOING[kind](task);

const solvedOf = ({ text, file, shop }: JobText): Promise<Result<Solved>> =>
  solveLoading(text, { file, ...defined({ shop }) });

/** Pages of one job as bytes, for another thread. */
function pack({ number, place }: JobText, solved: Solved, documents: Everything['documents']): Uint8Array | undefined {
  const patterns = patternsIn(documents).map(({ said, document }) => ({ said, document }));
  if (patterns.length === 0) return undefined;
  const { job } = solved;
  const packed: JobPatterns = {
    title: job.title,
    ...defined({ number: number ?? job.number }),
    place,
    texts: textsOf(solved),
    documents: patterns,
  };
  return new Uint8Array(serialize(packed));
}

/** What the shop's file names, noted as a job would name it: by that its manifest finds it again. */
function ofShop({ file, shop }: JobText, seen: Print[]): Pick<Surroundings, 'shopPictures'> {
  if (shop === undefined) return {};
  const noted = (name: string) => relative(dirname(file), pictureFile(shop.file, name)).replaceAll('\\', '/');
  return { shopPictures: noting(picturesBeside(shop.file, "shop's file"), seen, noted) };
}

/** The same pictures, each noted as it is read. */
function noting(pictures: PictureReader, seen: Print[], noted: (name: string) => string): PictureReader {
  return async (name) => {
    const found = await pictures(name);
    const own = noted(name);
    if ('bytes' in found && seen.every((each) => each.name !== own))
      seen.push(printOf({ name: own, bytes: found.bytes }));
    return found;
  };
}
