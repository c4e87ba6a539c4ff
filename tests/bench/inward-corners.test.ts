import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';

describe('corners of the mat that point into the opening', () => {
  const marks = (bevelOf: string) => {
    const layer = `{board: {thickness: 1.5}, bevel: ${bevelOf}}`;
    const text = `units: mm\nmat: {outer: 200 x 200, layers: [${layer}]}\nopenings: [{shape: notched, notch: 10, size: 100 x 100}]\nbench: {head: h}\n`;
    const shop = { text: 'units: mm\nheads: {h: {start: 1, stop: 0.5, overrun: 0.25}}\n', file: 'shop.yaml' };
    const solved = solveJob(text, { shop });
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    // The notch at the upper left in the back view: its corner at 60 60, on the back at 60 + s, 60 + s.
    return solved.value.strokes.filter(
      ({ face }) => Math.min(...[face.from, face.to].map((p) => Math.hypot(p.x - 60, p.y - 60))) < 1e-9,
    );
  };

  test.each([
    ['45', 1.5],
    ['60', 0.8660254],
    ['90', 0],
  ])('the strokes go on into the fallout, to the corner on the back: %s°', (bevelOf, s) => {
    const two = marks(bevelOf);
    expect(two.length).toBe(2);
    // Round it the other way than the opening: the one that ends there comes from the upper border.
    const ends = two.map(({ start, stop, direction, face }) =>
      Math.hypot(face.to.x - 60, face.to.y - 60) < 1e-9
        ? { end: 'stop', beyond: (stop.x - 60) * direction.x + (stop.y - 60) * direction.y }
        : { end: 'start', beyond: (60 - start.x) * direction.x + (60 - start.y) * direction.y },
    );
    expect(ends.find(({ end }) => end === 'start')!.beyond).toBeCloseTo(1 + 0.25 + s, 6);
    expect(ends.find(({ end }) => end === 'stop')!.beyond).toBeCloseTo(-0.5 + 0.25 + s, 6);
  });

  test('those of a reverse bevel do not: there it would be the mat', () => {
    for (const { start, stop, direction, face } of marks('{angle: 45, reverse: true}')) {
      const u = (p: Point): number => (p.x - face.from.x) * direction.x + (p.y - face.from.y) * direction.y;
      expect(u(start)).toBeCloseTo(-1.25, 6);
      expect(u(stop) - u(face.to)).toBeCloseTo(-0.25, 6);
    }
  });
});
