import { expect, test } from 'vitest';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { showProblem } from '../../src/problems/show.ts';
import { readSheets, wordsOf } from '../documents/tickets.ts';

const SHOP = 'units: in\nboards: {bone: {name: Bone, thickness: 1.4 mm, sheets: [20 x 24]}}\n';

function solved(text: string) {
  const made = solveJob(text, { shop: { text: SHOP, file: 'shop.yaml' } });
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  return made.value;
}

const SMALL = solved('{number: A-1, mat: {outer: 8 x 10, layers: [{board: bone}]}, openings: [{size: 4 x 6}]}');
const LARGE = solved('{number: A-2, mat: {outer: 20 x 24, layers: [{board: bone}]}, openings: [{size: 14 x 18}]}');

/** Where the first stroke of a ticket stands on the run list, among its words. */
async function first(number: string, fallouts: boolean): Promise<number> {
  const { pages } = await readSheets('ticket', [SMALL, LARGE], fallouts ? { fallouts } : {});
  return wordsOf(pages.slice(0, 1)).indexOf(`${number}: 1 `);
}

test('a blank that comes out of a fallout waits for the mat that it drops out of', async () => {
  expect(await first('A-1', false)).toBeLessThan(await first('A-2', false));
  expect(await first('A-1', true)).toBeGreaterThan(await first('A-2', true));
});
