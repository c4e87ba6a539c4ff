import { expect, it } from 'vitest';
import { swivelPath } from '../../src/cutfiles/toolpaths/swivel.ts';
import { piecesOf, pointAt } from '../../src/geometry/curves.ts';
import { pathLength } from '../../src/geometry/measure.ts';
import type { Path } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';

const along = (start: Point, ...corners: readonly Point[]): Path => ({
  start,
  segments: corners.map((to) => ({ kind: 'line', to })),
  closed: false,
});

it.each([
  ['to one hand', 1],
  ['to the other', -1],
])('the axis goes round a right corner the shorter way, %s', (_, hand) => {
  const axis = swivelPath(along({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10, y: hand * 10 }), 1);
  const pieces = piecesOf(axis);
  expect(pieces.map(({ segment }) => segment.kind)).toEqual(['line', 'arc', 'line']);
  const ends = [axis.start, ...axis.segments.map(({ to }) => to)].flatMap(({ x, y }) => [x, hand * y]);
  for (const [i, value] of [1, 0, 11, 0, 10, 1, 10, 11].entries()) expect(ends[i]).toBeCloseTo(value, 12);
  // Round the tip that stands still: the middle of the quarter lies ahead of both ways, away from the corner by the offset.
  const middle = pointAt(pieces[1]!, 0.5);
  expect(middle.x).toBeCloseTo(10 + Math.SQRT1_2, 12);
  expect(hand * middle.y).toBeCloseTo(Math.SQRT1_2, 12);
  expect(pathLength(axis)).toBeCloseTo(10 + Math.PI / 2 + 10, 9);
});

it('the axis turns by as much as the way does, at blunt and at sharp corners', () => {
  for (const degrees of [10, 60, 120, 170]) {
    const turn = (degrees * Math.PI) / 180;
    const to = { x: 10 + 10 * Math.cos(turn), y: 10 * Math.sin(turn) };
    const axis = swivelPath(along({ x: 0, y: 0 }, { x: 10, y: 0 }, to), 0.5);
    expect(pathLength(axis)).toBeCloseTo(20 + 0.5 * turn, 9);
  }
});
