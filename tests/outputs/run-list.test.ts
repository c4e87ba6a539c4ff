import { expect, test } from 'vitest';
import { prepare } from '../../src/outputs/prepare.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { readSheets, wordsOf } from '../documents/tickets.ts';

function solved(text: string) {
  const made = solveJob(text);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const ONE = solved('{title: Heron, number: A-1, mat: {outer: 8 x 10 in}, openings: [{size: 4 x 6 in}]}');
const OTHER = solved('{title: Tern, number: A-2, mat: {outer: 12 x 14 in}, openings: [{size: 6 x 8 in}]}');

test('the list of the run by itself is what lies in front of the tickets', async () => {
  const book = await readSheets('ticket', [ONE, OTHER], {});
  const list = await readSheets('ticket', [ONE, OTHER], { run: true });
  expect(list.pages.length).toBeGreaterThan(0);
  expect(list.pages.length).toBeLessThan(book.pages.length);
  expect(wordsOf(list.pages)).toBe(wordsOf(book.pages.slice(0, list.pages.length)));
});

test('it is a file of its own, also of one job', async () => {
  const prepared = await prepare('ticket', { jobs: [ONE] }, { run: true });
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.problems));
  const { documents, title } = prepared.value.drawn;
  expect([documents.map(({ name }) => name), title]).toEqual([['run-list'], 'Heron, run list']);
  expect(wordsOf((await readSheets('ticket', [ONE], { run: true })).pages)).toContain('one ticket, 1 piece');
});
