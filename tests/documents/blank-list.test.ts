import { describe, expect, it } from 'vitest';
import { listedBlanks } from '../../src/documents/lists/blank-list.ts';
import { solveJob } from '../../src/index.ts';
import type { Solved } from '../../src/outputs/solve-job.ts';
import { readSheets, wordsOf } from './tickets.ts';

function solved(title: string, count: number, outer: string): Solved {
  const made = solveJob(
    `title: ${title}\nunits: mm\ncount: ${count}\nmat: {outer: ${outer}}\nopenings: [{size: 100 x 150}]\n`,
  );
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

describe('the list of blanks', () => {
  const jobs = [solved('Ebb', 3, '300 x 400'), solved('Flood', 5, '300 x 400'), solved('Slack', 2, '250 x 400')];

  it('adds up what jobs share, with their counts: three and five are eight', () => {
    const [board] = listedBlanks(jobs);
    expect(board!.count).toBe(10);
    expect(board!.blanks.map(({ width, height, count, uses }) => [width, height, count, uses.length])).toEqual([
      [300, 400, 8, 2],
      [250, 400, 2, 1],
    ]);
  });

  it('says so on paper', async () => {
    const { pages } = await readSheets('blanks', jobs);
    const words = wordsOf(pages);
    expect(words).toContain('10 blanks for 3 jobs');
    expect(pages[0]!.texts.map(({ text }) => text).filter((text) => /× \d+$/.test(text))).toEqual(['× 8', '× 2']);
  });
});
