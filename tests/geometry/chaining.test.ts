import { describe, expect, it } from 'vitest';
import { chained, type Stretch } from '../../src/geometry/chaining.ts';
import { type Piece, pointAt } from '../../src/geometry/curves.ts';
import { pathLength } from '../../src/geometry/measure.ts';
import type { Point } from '../../src/geometry/point.ts';

const SLACK = 1e-3;
const part = (of: Piece, t0 = 0, t1 = 1): Stretch => ({ of, t0, t1, from: pointAt(of, t0), to: pointAt(of, t1) });
const line = (from: Point, to: Point): Stretch => part({ from, segment: { kind: 'line', to } });

const SQUARE = [
  line({ x: 0, y: 0 }, { x: 10, y: 0 }),
  line({ x: 10, y: 0 }, { x: 10, y: 10 }),
  line({ x: 10, y: 10 }, { x: 0, y: 10 }),
  line({ x: 0, y: 10 }, { x: 0, y: 0 }),
];
/** A whole circle, whose end misses its beginning by a nanometre. */
const CIRCLE: Piece = {
  from: { x: 3, y: 0 },
  segment: { kind: 'arc', centre: { x: 0, y: 0 }, clockwise: true, to: { x: 3, y: -1e-9 } },
};

const lengthOf = (stretches: readonly Stretch[]): number | string => {
  const made = chained(stretches, SLACK);
  return typeof made === 'string' ? made : pathLength(made);
};

describe('stretches put together', () => {
  it('make the outline that they go round, whichever comes first', () => {
    expect(lengthOf(SQUARE)).toBeCloseTo(40, 9);
    expect(lengthOf([SQUARE[2]!, SQUARE[0]!, SQUARE[3]!, SQUARE[1]!])).toBeCloseTo(40, 9);
    expect(lengthOf(SQUARE.slice(1))).toBe('nothing');
  });

  it('make a circle of one that goes all round, though its ends are one point', () => {
    expect(lengthOf([part(CIRCLE)])).toBeCloseTo(6 * Math.PI, 6);
    expect(lengthOf([...SQUARE, part(CIRCLE)])).toBe('parts');
  });

  it('leave out a sliver of a circle, whose ends are as near: it goes round nothing', () => {
    expect(lengthOf([...SQUARE, part(CIRCLE, 0.5, 0.500001)])).toBeCloseTo(40, 9);
    expect(lengthOf([part(CIRCLE, 0.5, 0.500001)])).toBe('nothing');
  });
});
