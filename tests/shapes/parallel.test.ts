import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathBox } from '../../src/geometry/extent.ts';
import { flattened } from '../../src/geometry/flatten.ts';
import { signedArea } from '../../src/geometry/measure.ts';
import { selfCrossing } from '../../src/geometry/meetings.ts';
import { movedPiece } from '../../src/geometry/parallel.ts';
import type { Path } from '../../src/geometry/path.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { type RandomShape, randomShape } from './random-shapes.ts';

interface P {
  readonly x: number;
  readonly y: number;
}

function toSegment(p: P, a: P, b: P): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/** The farthest that a corner of one polygon lies from another polygon's line: sides are looked up by squares of 4 mm. */
function apart(from: readonly P[], to: readonly P[]): number {
  const cell = 4;
  const column = (length: number): number => Math.floor(length / cell) + 5000;
  const cells = new Map<number, number[]>();
  to.forEach((a, i) => {
    const b = to[(i + 1) % to.length]!;
    for (let x = column(Math.min(a.x, b.x)) - 1; x <= column(Math.max(a.x, b.x)) + 1; x++) {
      for (let y = column(Math.min(a.y, b.y)) - 1; y <= column(Math.max(a.y, b.y)) + 1; y++) {
        // Of a long slanting side only the squares that it comes near.
        if (toSegment({ x: (x - 4999.5) * cell, y: (y - 4999.5) * cell }, a, b) > 2 * cell) continue;
        const key = x * 10_000 + y;
        const known = cells.get(key);
        if (known === undefined) cells.set(key, [i]);
        else known.push(i);
      }
    }
  });
  let worst = 0;
  for (const p of from) {
    let nearest = Number.POSITIVE_INFINITY;
    for (const i of cells.get(column(p.x) * 10_000 + column(p.y)) ?? [])
      nearest = Math.min(nearest, toSegment(p, to[i]!, to[(i + 1) % to.length]!));
    worst = Math.max(worst, nearest);
  }
  return worst;
}

/** Chords of the outline this fine cost a corner at most their own bend. */
const CHORDS = 2e-4;

/**
 * A library that knows chords alone mitres each chord of a curve by itself: where two arcs, or an arc and a side, meet at
 * a corner, the curves are drawn on there, not their tangents. So corners that part on curves are left out.
 */
const partsOnCurves = ({ kind, fields }: RandomShape, by: number): boolean =>
  (kind === 'arch' && by > 0) ||
  (kind === 'outline' && typeof fields.outline === 'object' && fields.outline.segments.some((s) => s.kind === 'arc'));

/** The sharpest bend that is pushed away from its centre; of a free outline, whose hollows are pushed so inwards too, a small one. */
function leastRadius({ kind, frame, fields }: RandomShape, by: number): number {
  const [a, b] = [Math.max(frame.width, frame.height) / 2, Math.min(frame.width, frame.height) / 2];
  if (kind === 'outline') return 3;
  if (by < 0) return Number.POSITIVE_INFINITY;
  return kind === 'rounded' ? Number(fields.radius) : kind === 'oval' ? (b * b) / a : b;
}

/** Pushed away from its centre, a chord's error grows with the radius. */
function reference(made: RandomShape, by: number): readonly (readonly P[])[] {
  const outline: Path = shapeOf(made.kind).outline(made.frame, made.fields);
  const points = flattened(outline, CHORDS / (1 + Math.abs(by) / leastRadius(made, by))).map(({ x, y }) => ({ x, y }));
  return inflatePathsD([points], by, JoinType.Miter, EndType.Polygon, 200, 6);
}

/** Where more than this share of the width is taken off, curves are pushed past their own centres. */
const DEEP = 0.1;

/**
 * Far inwards the library's chords cross one another by the million: its time grows with the square of their number, up to
 * minutes for one case. So those cases are a fifth as large, with as many chords fewer; the tolerance is the same.
 */
function bounded(made: RandomShape, share: number): RandomShape {
  if (share > -DEEP) return made;
  const small = (length: number): number => length / 5;
  const { x, y, width, height } = made.frame;
  const fields = Object.entries(made.fields).map(([name, value]) => [
    name,
    typeof value === 'number' && name !== 'sides' && name !== 'steps' ? small(value) : value,
  ]);
  return { ...made, frame: { x, y, width: small(width), height: small(height) }, fields: Object.fromEntries(fields) };
}

describe('parallels against a general-purpose geometry library', () => {
  const shares = fc.integer({ min: -450, max: 450 }).map((k) => (k === 0 ? 1 : k) / 1000);

  it('lie within 0.001 mm of it over random shapes and distances', () => {
    let compared = 0;
    fc.assert(
      fc.property(randomShape, shares, (drawn, share) => {
        const made = bounded(drawn, share);
        const shape = shapeOf(made.kind);
        const by = share * Math.min(made.frame.width, made.frame.height);
        if (Math.abs(by) < 0.05 || partsOnCurves(made, by)) return;
        const ours = shape.parallel(made.frame, by, made.fields);
        const theirs = reference(made, by).filter((each) => each.length > 2);
        if (ours === undefined || theirs.length !== 1) {
          // Nothing left, or several pieces: then the library must see the same, but for slivers.
          const area = theirs.reduce((sum, each) => sum + Math.abs(polygonArea(each)), 0);
          if (ours === undefined && theirs.length === 1) expect(area).toBeLessThan(0.05);
          if (ours !== undefined) expect(theirs.length).toBeGreaterThan(0);
          return;
        }
        compared++;
        const flat = flattened(ours, CHORDS);
        expect(apart(flat, theirs[0]!)).toBeLessThan(0.001);
        expect(apart(theirs[0]!, flat)).toBeLessThan(0.001);
      }),
      {
        numRuns: 60,
        examples: [
          [
            { kind: 'rounded', frame: { x: 0.039, y: 0.042, width: 342.812, height: 369.2368 }, fields: { radius: 1 } },
            0.039,
          ],
        ],
      },
    );
    expect(compared).toBeGreaterThan(30);
  });

  it('run clockwise, cross nowhere and nest: inwards lies inside, outwards outside', () => {
    fc.assert(
      fc.property(randomShape, shares, (made, share) => {
        const shape = shapeOf(made.kind);
        const by = share * Math.min(made.frame.width, made.frame.height);
        const base = shape.outline(made.frame, made.fields);
        const moved = shape.parallel(made.frame, by, made.fields);
        if (moved === undefined) {
          expect(by).toBeLessThan(0);
          return;
        }
        expect(signedArea(moved)).toBeGreaterThan(0);
        expect(selfCrossing(moved)).toBeUndefined();
        expect(Math.sign(signedArea(moved) - signedArea(base))).toBe(Math.sign(by));
        const [outer, inner] = by > 0 ? [pathBox(moved), pathBox(base)] : [pathBox(base), pathBox(moved)];
        expect(inner.x - outer.x).toBeGreaterThan(0);
        expect(outer.x + outer.width - inner.x - inner.width).toBeGreaterThan(0);
      }),
      { numRuns: 100 },
    );
  });

  it('keeps a blunt corner between curves closed at any distance, however short its two sides come out', () => {
    // The last corner turns by less than 2°: its sides are as short as the slack of chaining somewhere on the way.
    const arc = (x: number, y: number, cx: number, cy: number) =>
      ({ kind: 'arc', to: { x, y }, centre: { x: cx, y: cy }, clockwise: true }) as const;
    const outline: Path = {
      start: { x: 33, y: 0 },
      segments: [
        arc(10.925026991341161, 33.623775714445976, -3.199216258966821, 0.29249069308625053),
        arc(-26.69756081437326, 19.396913325651617, 2.760142038013705, -1.6438221945117242),
        arc(-34.93429227682371, -25.381249024881647, 2.692981839408624, -9.155973273485227),
        arc(10.197560814373258, -31.38486503774007, -7.875670890852019, 5.390529268183844),
        arc(33, 0, -1.8875020130860385, 1.3713504842027433),
      ],
      closed: true,
    };
    const frame = { x: 110.259, y: 249.507, width: 65.1238, height: 65.1238 };
    const shape = shapeOf('outline');
    for (let by = 0.01; by < 0.5; by += 0.005) expect(shape.parallel(frame, by, { outline })).toBeDefined();
  });

  it.each([-5, -0.5, 0.5, 5])('is made of numbers beside a cubic whose handles have no length, %d mm off', (by) => {
    const [from, to] = [
      { x: 160, y: 11.8 },
      { x: 120, y: 200 },
    ];
    for (const [c1, c2] of [
      [{ x: 160, y: 17.2 }, to],
      [from, { x: 120, y: 100 }],
    ] as const) {
      const points = movedPiece({ from, segment: { kind: 'cubic', c1, c2, to } }, by).flatMap(({ segment }) =>
        segment.kind === 'cubic' ? [segment.c1, segment.c2, segment.to] : [segment.to],
      );
      expect(points.length).toBeGreaterThan(2);
      for (const { x, y } of points) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
    }
  });

  it('come back: outwards and in again is the outline itself', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        randomShape,
        fc.integer({ min: 5, max: 200 }).map((k) => k / 10),
        (made, by) => {
          if (made.kind === 'outline') return;
          compared++;
          const shape = shapeOf(made.kind);
          const base = shape.outline(made.frame, made.fields);
          const out = shape.parallel(made.frame, by, made.fields)!;
          const back = shapeOf('outline').parallel(pathBox(out), -by, { outline: out })!;
          expect(apart(flattened(back, CHORDS), flattened(base, CHORDS))).toBeLessThan(0.002);
        },
      ),
      { numRuns: 60 },
    );
    expect(compared).toBeGreaterThan(40);
  });
});

function polygonArea(points: readonly P[]): number {
  return points.reduce((sum, a, i) => {
    const b = points[(i + 1) % points.length]!;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);
}
