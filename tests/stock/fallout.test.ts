import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';
import { falloutOf } from '../../src/stock/fallout.ts';

function fallout(openings: string, layers = '[{}]', margin = 0) {
  const solved = solveJob(`units: mm\nmat: {outer: 600 x 600, layers: ${layers}}\nopenings: ${openings}\n`);
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  return falloutOf(solved.value.mat, 0, margin);
}

const close = (width: number, height: number, digits: number) => ({
  width: expect.closeTo(width, digits),
  height: expect.closeTo(height, digits),
});

describe('what drops out of an opening', () => {
  it('is squared to its back where the bevel is normal, to its face where it is reversed', () => {
    const board = '{name: b, thickness: 1.5}';
    expect(fallout('[{size: 300 x 200}]', `[{board: ${board}}]`)).toEqual(close(297, 197, 6));
    expect(fallout('[{size: 300 x 200}]', `[{board: ${board}, bevel: {angle: 45, reverse: true}}]`)).toEqual(
      close(300, 200, 6),
    );
    expect(fallout('[{size: 300 x 200}]', `[{board: ${board}, bevel: 90}]`, 4)).toEqual(close(292, 192, 6));
  });

  it('is the largest rectangle within an oval, a circle or clipped corners', () => {
    const square = '[{bevel: 90}]';
    // The largest rectangle in an ellipse has its sides over √2; width goes by twenty-fourths here.
    const oval = fallout('[{size: 300 x 200, shape: oval}]', square)!;
    expect((oval.width * oval.height) / (300 * 200)).toBeGreaterThan(0.499);
    expect((oval.width / 300) ** 2 + (oval.height / 200) ** 2).toBeLessThanOrEqual(1.0003);
    const round = fallout('[{size: 200 x 200, shape: circle}]', square)!;
    expect(Math.hypot(round.width, round.height)).toBeLessThanOrEqual(200.03);
    expect(Math.hypot(round.width, round.height)).toBeGreaterThan(199.9);
    const notched = fallout('[{outline: "0,0 300,0 300,200 160,200 160,40 140,40 140,200 0,200"}]', square)!;
    // A slot from below to 40 reaches the middle, where no rectangle about it is.
    expect(notched).toBeUndefined();
  });

  it('is that of the largest opening, and none where it is too small', () => {
    const two = '[{size: 200 x 300, place: {left: 20, top: 20}}, {size: 100 x 100, place: {left: 300, top: 20}}]';
    expect(fallout(two, '[{bevel: 90}]')).toEqual(close(200, 300, 6));
    expect(fallout('[{size: 52 x 300}]', '[{bevel: 90}]', 2)).toBeUndefined();
  });
});
