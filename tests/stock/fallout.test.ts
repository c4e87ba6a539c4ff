import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';
import { falloutsOf, layersBefore } from '../../src/stock/fallout.ts';

function solved(openings: string, layers = '[{}]', bench = '') {
  const shop = { text: 'heads: {pull: {overrun: 0.5 mm}}\n', file: 'shop.yaml' };
  const made = solveJob(
    `units: mm\nmat: {outer: 600 x 600, layers: ${layers}}\nopenings: ${openings}\nbench: {head: pull${bench}}\n`,
    { shop },
  );
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** Without what the strokes run past their corners: half a millimetre on each side. */
function fallouts(openings: string, layers = '[{}]', margin = 0, bench = '') {
  const { mat, job } = solved(openings, layers, bench);
  return falloutsOf(mat, job, 0, margin).map(({ width, height }) => ({ width: width + 1, height: height + 1 }));
}

const fallout = (openings: string, layers = '[{}]', margin = 0) => fallouts(openings, layers, margin)[0];

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

  it('is a quarter as wide and half as high as a triangle: it lies in the middle of its box, and may be no wider at the top', () => {
    const found = fallout('[{shape: polygon, sides: 3, stands: side, size: 300 x 259.807621135}]', '[{bevel: 90}]');
    expect(found).toEqual(close(75, 129.9, 0));
    // Narrower below by two fifths on the right alone: w / 2 = 60 − h / 5, of which 7/24 of the width makes most.
    const aslant = '[{shape: outline, outline: "0,0 100,0 60,100 0,100", size: 200 x 200}]';
    expect(fallout(aslant, '[{bevel: 90}]')).toEqual(close(58.3, 154.2, 0));
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

  it('is one of each opening that leaves enough', () => {
    const two = '[{size: 200 x 300, place: {left: 20, top: 20}}, {size: 100 x 100, place: {left: 300, top: 20}}]';
    expect(fallouts(two, '[{bevel: 90}]')).toEqual([close(200, 300, 6), close(100, 100, 6)]);
    expect(fallouts('[{size: 52 x 300}]', '[{bevel: 90}]', 2)).toEqual([]);
  });

  it('is free, and as large as the blade left it, once the last mat over it is cut', () => {
    const layers = '[{bevel: 90}, {bevel: 90, reveal: 6, trimBack: 3}]';
    const { mat, job } = solved('[{size: 200 x 300}]', layers);
    expect(layersBefore(mat, job, 0)).toEqual([0, 1]);
    // The size is that of the under mat's opening, whose strokes scratch what lies below; the top's is 12 larger.
    expect(fallouts('[{size: 200 x 300}]', layers)).toEqual([close(200, 300, 6)]);
    const apart = ', stack: apart';
    expect(layersBefore(mat, solved('[{size: 200 x 300}]', layers, apart).job, 0)).toEqual([0]);
    expect(fallouts('[{size: 200 x 300}]', layers, 0, apart)).toEqual([close(212, 312, 6)]);
  });
});
