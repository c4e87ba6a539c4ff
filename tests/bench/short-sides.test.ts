import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/outputs/solve-job.ts';

function warnings(opening: string, thickness: number): readonly string[] {
  const text = `units: mm\nmat: {border: 60, layers: [{board: {thickness: ${thickness}}}]}\nopenings: [{name: Heron, ${opening}}]`;
  const made = solveJob(text);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.warnings.flatMap(({ code, message, hint }) => (code === 'side-too-short' ? [`${message}; ${hint}`] : []));
}

const strokes = (opening: string, thickness: number): number => {
  const made = solveJob(
    `units: mm\nmat: {border: 60, layers: [{board: {thickness: ${thickness}}}]}\nopenings: [{${opening}}]`,
  );
  return made.ok ? made.value.strokes.length : 0;
};

describe('a side that is too short for its bevel', () => {
  // A corner clipped by c has a side of c√2; its bevel takes 2 × 3 × tan(22.5°) = 2.4853 mm of it, c being 1.757 then.
  it('is named, with the length from which on it has a stroke', () => {
    const found = warnings('shape: clipped, clip: 1.7, size: 200 x 300', 3);
    expect(found).toHaveLength(4);
    expect(found[0]).toMatch(
      /^the slanting (?:top|left|right|bottom) side of Heron in the top mat, 2\.4 mm on the face/,
    );
    expect(found[0]).toMatch(/make it longer than 2\.49 mm, or cut it from the face/);
    expect(strokes('shape: clipped, clip: 1.7, size: 200 x 300', 3)).toBe(4);
  });

  it('is not told of where it has one', () => {
    expect(warnings('shape: clipped, clip: 1.8, size: 200 x 300', 3)).toEqual([]);
    expect(strokes('shape: clipped, clip: 1.8, size: 200 x 300', 3)).toBe(8);
  });

  it('is named of an outline of one’s own too', () => {
    const found = warnings('outline: "0,0 99.08,0 100,0.92 100,100 0,100"', 3);
    expect(found.map((each) => each.slice(0, each.indexOf(' is too short')))).toEqual([
      'the slanting top side of Heron in the top mat, 1.3 mm on the face,',
    ]);
  });
});
