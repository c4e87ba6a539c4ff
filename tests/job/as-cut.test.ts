import { describe, expect, it } from 'vitest';
import { jobOf } from './texts.ts';

const near = (mm: number) => expect.closeTo(mm, 9);
const size = (width: number, height: number) => ({ width: near(25.4 * width), height: near(25.4 * height) });
const LAYERS = 'mat: {layers: [{}, {reveal: 1/4}]}\n';
const asCut = (text: string) => jobOf(`${LAYERS}openings: [{}, {name: two}]\nasCut: ${text}\n`).asCut;

describe('asCut', () => {
  it('is the outer size alone, or nothing', () => {
    expect(jobOf('openings: [{}]\n')).not.toHaveProperty('asCut');
    expect(asCut('{outer: 16 1/32 x 20}')).toStrictEqual({ outer: size(16 + 1 / 32, 20), blanks: [], openings: [] });
    expect(asCut('{}')).toStrictEqual({ blanks: [], openings: [] });
  });

  it('takes blanks by layer, the first being the outer size', () => {
    expect(asCut('{layers: [{blank: 16 x 20}, {blank: 15 3/4 x 19 3/4}]}')).toStrictEqual({
      outer: size(16, 20),
      blanks: [undefined, size(15.75, 19.75)],
      openings: [],
    });
  });

  it('counts openings and layers from 1, the first where none is named', () => {
    expect(
      asCut('{openings: [{size: 10 x 12}, {opening: 2, layer: 2, size: 9 x 11, border: {left: 3}}]}')!.openings,
    ).toStrictEqual([
      { opening: 0, layer: 0, size: size(10, 12), border: {} },
      { opening: 1, layer: 1, size: size(9, 11), border: { left: near(76.2) } },
    ]);
  });
});
