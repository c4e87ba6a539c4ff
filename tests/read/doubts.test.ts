import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/outputs/solve-job.ts';

const warned = (text: string) => {
  const solved = solveJob(`${text}\nmat: {outer: 16 x 20}\nopenings: [{artwork: 10 x 13}]\n`, {});
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  return solved.warnings.filter(({ code }) => code === 'yaml-comment').map(({ line, column }) => [line, column]);
};

describe('a comment that may be text', () => {
  it('is told where it stands', () => {
    expect(warned('title: Cat #3')).toEqual([[1, 12]]);
    expect(warned('customer: Sam\ntitle: Print room #b')).toEqual([[2, 19]]);
  });

  it('is none in quotes, with a space behind its sign, behind a number, or on its own line', () => {
    for (const text of [
      'title: "Cat #3"',
      "title: 'Cat #3'",
      'title: Cat # the third',
      'count: 3 #each',
      '#Cat',
      'title: Cat#3',
    ])
      expect(warned(text), text).toEqual([]);
  });
});
