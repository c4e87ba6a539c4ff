import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withArcs } from '../../src/geometry/arcs.ts';
import { directionAt, piecesOf, pointAt } from '../../src/geometry/curves.ts';
import { pathLength } from '../../src/geometry/measure.ts';
import { toPiece } from '../../src/geometry/near.ts';
import type { Path } from '../../src/geometry/path.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';

const coordinate = fc.double({ min: -200, max: 200, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const cubic: fc.Arbitrary<Path> = fc
  .tuple(point, point, point, point)
  .map(([start, c1, c2, to]) => ({ start, segments: [{ kind: 'cubic', c1, c2, to }], closed: false }));

/** Without cusps or loops: handles within 80° of the chord, together no longer than it. */
const gentle: fc.Arbitrary<Path> = fc
  .record({
    long: fc.double({ min: 5, max: 300, noNaN: true }),
    angles: fc.tuple(fc.double({ min: -1.4, max: 1.4, noNaN: true }), fc.double({ min: -1.4, max: 1.4, noNaN: true })),
    handles: fc.tuple(fc.double({ min: 0.1, max: 0.5, noNaN: true }), fc.double({ min: 0.1, max: 0.5, noNaN: true })),
  })
  .map(({ long, angles: [a, b], handles: [g, h] }) => {
    const c1 = { x: g * long * Math.cos(a), y: g * long * Math.sin(a) };
    const c2 = { x: long - h * long * Math.cos(b), y: -h * long * Math.sin(b) };
    return { start: { x: 0, y: 0 }, segments: [{ kind: 'cubic', c1, c2, to: { x: long, y: 0 } }], closed: false };
  });

/** To a chain of chords so short that it is the curve itself. */
function toChords(chords: readonly Point[], p: Point): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < chords.length; i++)
    best = Math.min(best, toPiece({ from: chords[i]!, segment: { kind: 'line', to: chords[i + 1]! } }, p));
  return best;
}

describe('arcs that stand in for cubics', () => {
  it('lie within the tolerance, and the cubics within it of them', () => {
    fc.assert(
      fc.property(cubic, fc.constantFrom(0.5, 0.05, 0.01), (path, tolerance) => {
        const arcs = piecesOf(withArcs(path, tolerance));
        const curve = piecesOf(path)[0]!;
        const chords = Array.from({ length: 3001 }, (_, i) => pointAt(curve, i / 3000));
        for (let i = 0; i <= 200; i++) {
          const p = pointAt(curve, i / 200);
          expect(Math.min(...arcs.map((piece) => toPiece(piece, p)))).toBeLessThan(tolerance);
        }
        for (const piece of arcs)
          for (const t of [0.1, 0.3, 0.5, 0.7, 0.9])
            expect(toChords(chords, pointAt(piece, t))).toBeLessThan(tolerance);
        expect(arcs[0]!.from).toEqual(path.start);
        expect(arcs.at(-1)!.segment.to).toEqual(path.segments[0]!.to);
      }),
      { numRuns: 60 },
    );
  });

  it('run on into each other without a corner, and each ends where the next begins', () => {
    fc.assert(
      fc.property(gentle, (path) => {
        const arcs = piecesOf(withArcs(path, 0.01));
        for (const [i, piece] of arcs.entries()) {
          if (piece.segment.kind === 'arc')
            expect(distance(piece.segment.to, piece.segment.centre)).toBeCloseTo(
              distance(piece.from, piece.segment.centre),
              5,
            );
          const next = arcs[i + 1];
          if (next === undefined) continue;
          expect(distance(piece.segment.to, next.from)).toBeLessThan(1e-9);
          const [u, v] = [directionAt(piece, 1)!, directionAt(next, 0)!];
          expect(u.x * v.x + u.y * v.y).toBeGreaterThan(0.995);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('leave lines and arcs as they are', () => {
    const rounded = shapeOf('rounded').outline({ x: 0, y: 0, width: 50, height: 80 }, { radius: 8 });
    expect(withArcs(rounded, 0.01)).toEqual(rounded);
  });

  it('make an oval of few arcs, as long as the oval', () => {
    const oval = shapeOf('oval').outline({ x: 0, y: 0, width: 200, height: 300 }, {});
    const arcs = withArcs(oval, 0.01);
    expect(arcs.segments.every(({ kind }) => kind === 'arc')).toBe(true);
    expect(arcs.segments.length).toBeLessThan(80);
    expect(pathLength(arcs)).toBeCloseTo(pathLength(oval), 1);
  });
});
