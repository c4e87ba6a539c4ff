import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { JIGS } from '../../src/documents/jigs/jigs.ts';
import {
  OUTPUTS,
  type OutputId,
  type OutputOptions,
  prepare,
  type Solved,
  solveLoading,
  write,
} from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import { METRIC_JOB, METRIC_SHOP } from '../documents/jig-samples.ts';
import { PIECES } from '../documents/proofs.ts';
import { picturesIn } from '../golden/pictures-in.ts';

/** Widths and heights of the pages that a file has, mm, the smaller first, as pdf.js sees them. */
async function pagesOf(bytes: Uint8Array): Promise<readonly string[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, isEvalSupported: false });
  try {
    const file = await task.promise;
    const sizes: string[] = [];
    for (let number = 1; number <= file.numPages; number++) {
      const [left, bottom, right, top] = (await file.getPage(number)).view as [number, number, number, number];
      sizes.push(sizeOf(((right - left) * 25.4) / 72.0, ((top - bottom) * 25.4) / 72.0));
    }
    return sizes;
  } finally {
    await task.destroy();
  }
}

const sizeOf = (a: number, b: number): string => `${Math.min(a, b).toFixed(2)} × ${Math.max(a, b).toFixed(2)}`;

/** How many pages the words of an output speak of. */
function saidPages(texts: readonly string[]): number {
  return texts.reduce((sum, text) => {
    const found = /(\bone|\b\d+) (?:pages?|sheets?)\b/u.exec(text);
    return sum + (found === null ? 0 : found[1] === 'one' ? 1 : Number(found[1]));
  }, 0);
}

/** What is told before printing, against the pages of the files. */
async function compare(id: OutputId, jobs: readonly Solved[], options: OutputOptions, folder?: string): Promise<void> {
  const prepared = await prepare(id, { jobs }, options, { pictures: picturesIn(folder) });
  if (!prepared.ok) throw new Error(`${id}: ${prepared.problems.map(showProblem).join('\n')}`);
  const files = await write(prepared.value);
  if (!files.ok) throw new Error(files.problems.map(showProblem).join('\n'));
  const pages = (await Promise.all(files.value.map(({ bytes }) => pagesOf(bytes)))).flat();
  const told = prepared.value.taken.papers.flatMap(({ width, height, count }) =>
    Array.from({ length: count }, () => sizeOf(width, height)),
  );
  expect([id, [...told].sort()]).toEqual([id, [...pages].sort()]);
  expect([id, saidPages(prepared.value.drawn.documents.map(({ said }) => said))]).toEqual([id, pages.length]);
}

const solvedFrom = async (job: string, shop: string | undefined, file: string): Promise<Solved> => {
  const solved = await solveLoading(job, {
    file,
    ...(shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } }),
  });
  if (!solved.ok) throw new Error(solved.problems.map(showProblem).join('\n'));
  return solved.value;
};

/** A search of no length: how good a plan is matters to others. */
const FAST = { effort: 0 };

describe('pages that are told before printing are those that come out of the printer', () => {
  const papery = OUTPUTS.filter(({ use }) => use !== undefined);

  it.each(PIECES)('$name', async ({ job, shop, file, folder }) => {
    const solved = await solvedFrom(job, shop, file);
    const hasArtwork = solved.mat.openings.some(({ artwork }) => artwork !== undefined);
    for (const { id } of papery.filter((each) => each.id !== 'jig' && (each.id !== 'placement' || hasArtwork)))
      await compare(id, [solved], FAST, folder);
  });

  it('of every jig', async () => {
    const solved = await solvedFrom(METRIC_JOB, METRIC_SHOP, 'heron.yaml');
    for (const { kind } of JIGS) await compare('jig', [solved], { kind });
  });

  it('on the corners of the board, on a roll, and on one page', async () => {
    const solved = await solvedFrom(METRIC_JOB, METRIC_SHOP, 'heron.yaml');
    for (const options of [{ extent: 'corners' }, { paper: 'roll:610mm' }, { paper: 'fit' }, { paper: 'a3' }] as const)
      for (const id of ['pattern', 'placement'] as const) await compare(id, [solved], options);
  });

  it('of several jobs in one file', async () => {
    const solved = await solvedFrom(METRIC_JOB, METRIC_SHOP, 'heron.yaml');
    for (const { id } of papery.filter(({ needs }) => needs === 'jobs'))
      await compare(id, [solved, solved, solved], FAST);
  });
});
