import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutOnce } from '../../src/cutfiles/toolpaths/join.ts';
import { pathLength } from '../../src/geometry/measure.ts';
import { type Path, polygon, type Segment, straightSides } from '../../src/geometry/path.ts';

const box = (x: number, y: number, width: number, height: number): Path =>
  polygon([
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ]);

/** The length of everything that any of the level or upright lines covers, each place once: added up line by line. */
function covered(paths: readonly Path[]): number {
  const rows = new Map<string, [number, number][]>();
  for (const { from, to } of paths.flatMap((path) => straightSides(path))) {
    const level = from.y === to.y;
    const key = level ? `y${from.y}` : `x${from.x}`;
    const [a, b] = level ? [from.x, to.x] : [from.y, to.y];
    rows.set(key, [...(rows.get(key) ?? []), [Math.min(a, b), Math.max(a, b)]]);
  }
  let sum = 0;
  for (const spans of rows.values()) {
    let end = Number.NEGATIVE_INFINITY;
    for (const [a, b] of spans.sort((p, q) => p[0] - q[0])) {
      sum += Math.max(0, b - Math.max(a, end));
      end = Math.max(end, b);
    }
  }
  return sum;
}

describe('paths that lie on each other', () => {
  it('leave a path alone that only touches another at a corner', () => {
    const paths = [box(0, 0, 10, 20), box(10, 20, 5, 5)];
    expect(cutOnce(paths)).toEqual(paths);
  });

  it('make one stretch of what is left on both sides of where a path began', () => {
    // The right side of the second is cut already: it goes on from below it round to above it.
    const [first, second, ...others] = cutOnce([box(0, 0, 10, 20), box(-10, 5, 10, 10)]);
    expect(others).toEqual([]);
    expect(first).toEqual(box(0, 0, 10, 20));
    expect(second!.closed).toBe(false);
    expect([second!.start, ...second!.segments.map(({ to }) => to)]).toEqual([
      { x: 0, y: 15 },
      { x: -10, y: 15 },
      { x: -10, y: 5 },
      { x: 0, y: 5 },
    ]);
  });

  it('leave paths alone that begin at the same corner', () => {
    const back = polygon([
      { x: 0, y: 0 },
      { x: -10, y: 0 },
      { x: -10, y: -20 },
      { x: 0, y: -20 },
    ]);
    const paths = [box(0, 0, 10, 20), back];
    expect(cutOnce(paths)).toEqual(paths);
  });

  it('run on where a path began, rather than off into another that ends there', () => {
    const stub = polygon(
      [
        { x: 0, y: -5 },
        { x: 0, y: 0 },
      ],
      false,
    );
    // The right side of the second box is the left one of the first.
    const neighbour = box(10, 0, 10, 10);
    expect(cutOnce([neighbour, stub, box(0, 0, 10, 10)])).toEqual([
      neighbour,
      stub,
      polygon(
        [
          { x: 10, y: 10 },
          { x: 0, y: 10 },
          { x: 0, y: 0 },
          { x: 10, y: 0 },
        ],
        false,
      ),
    ]);
  });

  it('leave a path alone that lies apart', () => {
    const paths = [box(0, 0, 10, 20), box(30, 0, 10, 20)];
    expect(cutOnce(paths)).toEqual(paths);
  });

  it('cut an edge that two blanks share once', () => {
    const [first, second, ...more] = cutOnce([box(0, 0, 10, 20), box(10, 0, 15, 20)]);
    expect(more).toEqual([]);
    expect(first).toEqual(box(0, 0, 10, 20));
    expect(second!.closed).toBe(false);
    expect(pathLength(second!)).toBeCloseTo(15 + 20 + 15, 9);
  });

  it('take nothing away and nothing twice, over blanks on a grid', () => {
    const size = fc.integer({ min: 1, max: 4 }).map((n) => 10 * n);
    const at = fc.integer({ min: 0, max: 5 }).map((n) => 10 * n);
    fc.assert(
      fc.property(fc.array(fc.tuple(at, at, size, size), { minLength: 1, maxLength: 7 }), (boxes) => {
        const paths = boxes.map(([x, y, w, h]) => box(x, y, w, h));
        const once = cutOnce(paths);
        const total = once.reduce((sum, path) => sum + pathLength(path), 0);
        expect(total).toBeCloseTo(covered(paths), 6);
        expect(covered(once)).toBeCloseTo(covered(paths), 6);
        for (const path of once) {
          const end = path.segments.at(-1)!.to;
          const round = Math.hypot(end.x - path.start.x, end.y - path.start.y) < 1e-9;
          expect(round).toBe(path.closed);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('see lines within 0.01 mm as one cut, and those farther apart as two', () => {
    const length = (gap: number): number =>
      cutOnce([box(0, 0, 10, 20), box(10 + gap, 0, 10, 20)]).reduce((sum, path) => sum + pathLength(path), 0);
    expect(length(0.005)).toBeCloseTo(100, 1);
    expect(length(0.02)).toBeCloseTo(120, 9);
  });

  it('keep curves that are alike once, and join what touches', () => {
    const ring: Path = {
      start: { x: 10, y: 0 },
      segments: [{ kind: 'arc', to: { x: -10, y: 0 }, centre: { x: 0, y: 0 }, clockwise: true }],
      closed: false,
    };
    const back: Path = {
      start: { x: -10, y: 0 },
      segments: [{ kind: 'arc', to: { x: 10, y: 0 }, centre: { x: 0, y: 0 }, clockwise: true }],
      closed: false,
    };
    const once = cutOnce([ring, back, ring]);
    expect(once.length).toBe(1);
    expect(once[0]!.closed).toBe(true);
    expect(pathLength(once[0]!)).toBeCloseTo(20 * Math.PI, 9);
  });

  it('close a round of lines and curves as they were drawn', () => {
    const arc: Segment = { kind: 'arc', to: { x: 20, y: 20 }, centre: { x: 20, y: 10 }, clockwise: true };
    const cubic: Segment = { kind: 'cubic', c1: { x: 26, y: 0 }, c2: { x: 26, y: 20 }, to: { x: 20, y: 20 } };
    const line = (x: number, y: number): Segment => ({ kind: 'line', to: { x, y } });
    for (const curve of [arc, cubic]) {
      const front: Path = { start: { x: 0, y: 0 }, segments: [line(20, 0), curve], closed: false };
      const rest: Path = { start: { x: 20, y: 20 }, segments: [line(0, 20), line(0, 0)], closed: false };
      const round = [line(20, 0), curve, line(0, 20), line(0, 0)];
      expect(cutOnce([front, rest])).toEqual([{ start: front.start, segments: round, closed: true }]);
    }
  });

  it('close a round that ends in an arc by a line over the slack, so that the arc keeps its radius', () => {
    const line = (x: number, y: number): Segment => ({ kind: 'line', to: { x, y } });
    const centre = { x: 0, y: 10 };
    const arc: Segment = { kind: 'arc', to: { x: 0, y: 0 }, centre, clockwise: true };
    const straight: Path = {
      start: { x: 0, y: 0.004 },
      segments: [line(20, 0), line(20, 20), line(0, 20)],
      closed: false,
    };
    const bent: Path = { start: { x: 0, y: 20 }, segments: [arc], closed: false };
    expect(cutOnce([straight, bent])).toEqual([
      { start: straight.start, segments: [...straight.segments, arc, line(0, 0.004)], closed: true },
    ]);
  });
});
