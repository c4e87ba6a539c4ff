import { describe, expect, it } from 'vitest';
import { cropOf } from '../../src/documents/proof/crop.ts';
import { solveJob } from '../../src/index.ts';

/** An artwork of 200 × 200 whose sight is 190 × 190 in its middle; floated, all of it is seen. */
function opening(how: string) {
  const solved = solveJob(
    `units: mm\nmat: {border: 60, layers: [{board: {thickness: 1.5}, bevel: 90}]}\nopenings: [{artwork: 200 x 200, ${how}}]\n`,
  );
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  return solved.value.mat.openings[0]!;
}

describe('what of a picture is seen through an opening', () => {
  it('of another shape: its middle, as large as covers the artwork, and it is said to be cut', () => {
    const covered = opening('overlap: 5');
    const { x, y } = covered.artwork!.box;
    // 2000 pixels are 200 mm high: ten a mm, 300 mm wide, of which 50 are cut off at each side. Half a millimetre goes under the board.
    const wide = cropOf(covered, { width: 3000, height: 2000 })!;
    expect(wide.cut).toBe(true);
    expect(wide.pixels).toEqual({ x: 545, y: 45, width: 1910, height: 1910 });
    expect(wide.box.x).toBeCloseTo(x + 4.5, 9);
    expect(wide.box.y).toBeCloseTo(y + 4.5, 9);
    expect(wide.box.width).toBeCloseTo(191, 9);
    const high = cropOf(covered, { width: 1000, height: 1500 })!;
    expect(high.cut).toBe(true);
    // Five a mm; 250 of 1500 pixels are cut off above. Whole pixels, outwards.
    expect(high.pixels).toEqual({ x: 22, y: 272, width: 956, height: 956 });
  });

  it('of the same shape, but for what measuring explains: all of it but what the mat covers', () => {
    const covered = opening('overlap: 5');
    const same = cropOf(covered, { width: 1000, height: 1000 })!;
    expect([same.cut, same.pixels]).toEqual([false, { x: 22, y: 22, width: 956, height: 956 }]);
    expect(cropOf(covered, { width: 1019, height: 1000 })!.cut).toBe(false);
    expect(cropOf(covered, { width: 1021, height: 1000 })!.cut).toBe(true);
    expect(cropOf(covered, { width: 1000, height: 1021 })!.cut).toBe(true);
  });

  it('of a float: the whole artwork, no more', () => {
    const floated = opening('float: 5');
    const { pixels, box } = cropOf(floated, { width: 3000, height: 2000 })!;
    expect(pixels.x).toBeCloseTo(500, 6);
    expect(pixels.y).toBeCloseTo(0, 6);
    expect([pixels.width, pixels.height].map(Math.round)).toEqual([2000, 2000]);
    expect(box.x).toBeCloseTo(floated.artwork!.box.x, 9);
    expect(box.width).toBeCloseTo(200, 9);
  });
});
