import { describe, expect, it } from 'vitest';
import { bridged, windowsOf } from '../../src/geometry/bridges.ts';
import { type Path, polygon, reversed } from '../../src/geometry/path.ts';

const corners = (...points: readonly (readonly [number, number])[]): Path =>
  polygon(points.map(([x, y]) => ({ x, y })));

/** The corners of closed paths of straight lines, each from its leftmost, the highest of these first. */
function cornersOf(paths: readonly Path[]): readonly (readonly (readonly [number, number])[])[] {
  return paths
    .map(({ segments }) => {
      const points = segments.map(({ to }): readonly [number, number] => [to.x, to.y]);
      const first = points.reduce((best, [x, y], i) => {
        const [left, top] = points[best]!;
        return x < left || (x === left && y < top) ? i : best;
      }, 0);
      return [...points.slice(first), ...points.slice(0, first)];
    })
    .sort(([a], [b]) => a![0] - b![0]);
}

describe('bridges', () => {
  // A window 100 wide and high, in its middle an island of 40 that is notched from its left, a little beyond its middle.
  const window = corners([-50, -50], [50, -50], [50, 50], [-50, 50]);
  const island = corners([-20, -20], [20, -20], [20, 20], [-20, 20], [-20, 3], [-0.5, 3], [-0.5, -3], [-20, -3]);

  it('go up and down through the middle of an island whose middle is notched on one side', () => {
    const expected = [
      [
        [-50, -50],
        [-1, -50],
        [-1, -20],
        [-20, -20],
        [-20, -3],
        [-0.5, -3],
        [-0.5, 3],
        [-20, 3],
        [-20, 20],
        [-1, 20],
        [-1, 50],
        [-50, 50],
      ],
      [
        [1, -50],
        [50, -50],
        [50, 50],
        [1, 50],
        [1, 20],
        [20, 20],
        [20, -20],
        [1, -20],
      ],
    ];
    const mirrored = expected
      .map((part) => part.map(([x, y]): readonly [number, number] => [-x!, y!]))
      .map((part) => corners(...part.toReversed()));
    const flipped = (path: Path): Path => ({
      ...path,
      start: { x: -path.start.x, y: path.start.y },
      segments: path.segments.map(({ to }) => ({ kind: 'line', to: { x: -to.x, y: to.y } })),
    });
    for (const [contours, wanted] of [
      [[window, island], expected],
      [[reversed(window), reversed(island)], expected],
      [[flipped(window), flipped(island)], cornersOf(mirrored)],
    ] as const) {
      const sorted = windowsOf(contours);
      expect(sorted.ok && sorted.windows.length).toBe(1);
      const made = sorted.ok ? bridged(sorted.windows[0]!, 2) : undefined;
      expect(made?.bridges).toBe(2);
      expect(cornersOf(made!.parts)).toEqual(wanted);
    }
  });
});
