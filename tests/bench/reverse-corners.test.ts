import { describe, expect, it } from 'vitest';
import { mostUncut } from '../../src/bench/uncut.ts';
import { reverseCornerWords } from '../../src/documents/words/reverse-corners.ts';
import { type Solved, solveJob } from '../../src/outputs/solve-job.ts';

function solved(layer: string, opening = 'size: 200 x 300', more = ''): Solved {
  const made = solveJob(`units: mm\nmat: {border: 60, layers: [${layer}]}\nopenings: [{${opening}}]\n${more}`);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const uncut = ({ strokes }: Solved): readonly number[] =>
  strokes.flatMap((s) => (s.uncut === undefined ? [] : [s.uncut.start, s.uncut.stop]));

describe('what a reverse bevel leaves uncut at the back', () => {
  it.each([
    // The corner on the back lies a setback further out; the overrun of 0.25 mm is cut.
    ['{board: {thickness: 1.4}, bevel: {angle: 45, reverse: true}}', 1.4 - 0.25],
    ['{board: {thickness: 3}, bevel: {angle: 45, reverse: true}}', 3 - 0.25],
    ['{board: {thickness: 3}, bevel: {angle: 60, reverse: true}}', 3 / Math.sqrt(3) - 0.25],
  ])('%s: at both ends of every stroke', (layer, expected) => {
    const found = uncut(solved(layer));
    expect(found).toHaveLength(8);
    for (const each of found) expect(each).toBeCloseTo(expected, 9);
  });

  it('is nothing for a bevel that is not reversed, or cut square', () => {
    expect(uncut(solved('{board: {thickness: 3}}'))).toEqual([]);
    expect(uncut(solved('{board: {thickness: 3}, bevel: {angle: 90, reverse: true}}'))).toEqual([]);
  });

  it('is less at blunt corners, and nothing at those that point into the opening', () => {
    const layer = '{board: {thickness: 3}, bevel: {angle: 45, reverse: true}}';
    const hexagon = uncut(solved(layer, 'shape: polygon, sides: 6, size: 200 x 173.205'));
    for (const each of hexagon) expect(each).toBeCloseTo(3 * Math.tan(Math.PI / 6) - 0.25, 4);
    const notched = uncut(solved(layer, 'shape: notched, notch: 30, size: 200 x 300'));
    expect(notched.filter((each) => each === 0)).toHaveLength(8);
    expect(notched.filter((each) => Math.abs(each - 2.75) < 1e-9)).toHaveLength(16);
  });

  it('is the board’s own, where the line is drawn for paper that stays on it', () => {
    const layer = '{board: {thickness: 3}, bevel: {angle: 45, reverse: true}}';
    const lifted = solved(layer, 'size: 200 x 300', 'print: {transfer: cut-through, paperThickness: 0.5}');
    for (const each of uncut(lifted)) expect(each).toBeCloseTo(2.75, 9);
  });

  it('is in the report, and in words that say how far and how', () => {
    const job = solved('{board: {thickness: 1.4}, bevel: {angle: 45, reverse: true}}');
    expect(job.report.strokes[0]).toMatchObject({
      uncut: { start: expect.closeTo(1.15, 9), stop: expect.closeTo(1.15, 9) },
    });
    const [first, how, never] = reverseCornerWords(mostUncut(job.strokes, 1));
    expect(first).toMatch(/^Reverse bevel: up to 1\.2 mm at both ends of every stroke/);
    expect(how).toMatch(/from the back before the fallout is pushed out/);
    expect(never).toMatch(/^Never upright/);
    expect(reverseCornerWords(0)).toEqual([]);
  });
});
