import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';

/** Outer size, one border, a ratio and the opening's size: the reveals are what is left over. */
const job = (shape: string, layers: number, top: number, ratio: number): string => `units: mm
mat: {outer: 610 x 460, border: {top: ${top}}, weighting: {ratio: ${ratio}}, layers: [${Array.from({ length: layers }, () => '{}').join(', ')}]}
openings: [{${shape}}]
`;

describe('reveals that are left out, about sides that slant', () => {
  it('make borders and opening add up to the mat, however far the sides reach out', () => {
    let solved = 0;
    const shapes = fc.constantFrom(
      'shape: outline, outline: "0,0 6,0 4,5", size: 127 x 178',
      'shape: outline, outline: "0,0 10,0 5,3", size: 120 x 60',
      'shape: outline, outline: "0,1 9,0 10,8 3,6", size: 130 x 150',
      'shape: polygon, sides: 3, size: 140 x 121.243556529821',
      'shape: polygon, sides: 5, stands: corner, size: 150 x 142.658477444',
      'shape: clipped, clip: 30, size: 120 x 150',
    );
    fc.assert(
      fc.property(
        shapes,
        fc.integer({ min: 2, max: 4 }),
        fc.integer({ min: 30, max: 110 }),
        fc.constantFrom('1.1', '4/3'),
        (shape, layers, top, ratio) => {
          const made = solveJob(job(shape, layers, top, ratio === '4/3' ? 4 / 3 : 1.1).replace(String(4 / 3), '4/3'));
          if (!made.ok) {
            // Refused, since nothing is left over: never for sizes that have not settled.
            expect(made.problems.map(({ code }) => code)).not.toContain('sizes-not-enough');
            return;
          }
          solved++;
          const { mat } = made.value;
          const { faceBox } = mat.openings[0]!.layers[0]!;
          expect(faceBox.y).toBeCloseTo(top, 6);
          expect(mat.border.bottom).toBeCloseTo(top * (ratio === '4/3' ? 4 / 3 : 1.1), 6);
          expect(460 - faceBox.y - faceBox.height).toBeCloseTo(mat.border.bottom, 6);
          expect(610 - faceBox.x - faceBox.width).toBeCloseTo(mat.border.right, 6);
        },
      ),
      { numRuns: 120 },
    );
    expect(solved).toBeGreaterThan(40);
  });
});
