import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besideKerf } from '../../src/cutfiles/toolpaths/kerf.ts';
import { flattened } from '../../src/geometry/flatten.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { randomShape } from '../shapes/random-shapes.ts';
import { cut, LOPSIDED } from './cut.ts';
import { Chain, dense, inside, type P, rectangle } from './points.ts';
import { waysOf } from './read-svg.ts';

/** Farthest that what is cut may lie from the job, mm. */
const ALLOWED = 0.02;

/** A beam is an ellipse; the plane stretched so that it is a circle of radius 1 measures how far it reaches. */
const stretched = (points: readonly P[], kerf: P): P[] =>
  points.map(({ x, y }) => ({ x: (2 * x) / kerf.x, y: (2 * y) / kerf.y }));

interface Cut {
  /** Farthest that board is left standing past the wished edge, and that it is missing, mm. */
  readonly left: number;
  readonly missing: number;
}

/**
 * Sweeps a round beam along a closed way and compares what comes off with the edge that is wished. `waste` says on which
 * side of the edge the beam runs. Where corners point into the waste a round beam leaves them round: `corners` is the part
 * of the edge to leave out there.
 */
function swept(
  way: readonly P[],
  edge: readonly P[],
  kerf: P,
  waste: 'inside' | 'outside',
  corners = 0,
  step = 0.013,
): Cut {
  const scale = Math.min(kerf.x, kerf.y) / 2;
  const wayClose = new Chain(stretched(dense(way, 0.2, true), kerf), 4);
  const edgeClose = new Chain(stretched(dense(edge, 0.2, true), kerf), 4);
  let [left, missing] = [0, 0];
  for (const p of dense(edge, step, true)) {
    if (corners > 0 && edge.some((c) => Math.hypot(c.x - p.x, c.y - p.y) < corners)) continue;
    left = Math.max(left, (wayClose.distance(stretched([p], kerf)[0]!) - 1) * scale);
  }
  for (const p of dense(way, step, true)) {
    const away = edgeClose.distance(stretched([p], kerf)[0]!);
    const off = inside(edge, p) === (waste === 'inside') ? away : -away;
    missing = Math.max(missing, (1 - off) * scale);
  }
  return { left, missing };
}

const shop = (x: number, y: number, more = ''): string =>
  `units: mm\nmachines: {laser: {kerf: {x: ${x}, y: ${y}}, marks: false, notes: false${more}}}\n`;

/** From the drawing's own arithmetic: the opening in the back view, blank at half a kerf from the corner of the drawing. */
const opening = (edge: number): P[] => rectangle(edge + 47, edge + 61, 180, 240);
const blank = (edge: number): P[] => rectangle(edge, edge, 260, 390);

describe('what a laser leaves', () => {
  it('is the opening and the blank of the job within 0.02 mm, corners and all, with a fine beam', async () => {
    const { texts } = await cut(LOPSIDED, shop(0.09, 0.09), { machine: 'laser' });
    const [inner, outer] = waysOf(texts[0]!);
    expect(inner!.closed && outer!.closed).toBe(true);
    const hole = swept(inner!.points, opening(0.045), { x: 0.09, y: 0.09 }, 'inside');
    expect(hole.left).toBeLessThan(ALLOWED);
    expect(hole.missing).toBeLessThan(ALLOWED);
    // Corners of a hole are as round as the beam: (√2 − 1)·r.
    expect(hole.left).toBeCloseTo((Math.SQRT2 - 1) * 0.045, 3);
    const board = swept(outer!.points, blank(0.045), { x: 0.09, y: 0.09 }, 'outside');
    expect(board.left).toBeLessThan(0.001);
    expect(board.missing).toBeLessThan(0.001);
  });

  it.each([
    [0.2, 0.2],
    [0.3, 0.15],
    [0.1, 0.25],
  ])('keeps its sides with a beam of %s × %s mm; only corners are as round as the beam', async (x, y) => {
    const edge = Math.max(x, y) / 2;
    const { texts } = await cut(LOPSIDED, shop(x, y), { machine: 'laser' });
    const [inner, outer] = waysOf(texts[0]!);
    const hole = swept(inner!.points, opening(edge), { x, y }, 'inside', edge);
    expect(hole.left).toBeLessThan(0.002);
    expect(hole.missing).toBeLessThan(0.002);
    const board = swept(outer!.points, blank(edge), { x, y }, 'outside');
    expect(board.left).toBeLessThan(0.002);
    expect(board.missing).toBeLessThan(0.002);
  });

  it('is wrong by half the kerf where nothing is allowed for: the check can fail', async () => {
    const { texts } = await cut(LOPSIDED, shop(0, 0), { machine: 'laser' });
    const [inner, outer] = waysOf(texts[0]!);
    const beam = { x: 0.2, y: 0.2 };
    expect(swept(inner!.points, opening(0), beam, 'inside').missing).toBeCloseTo(0.1, 3);
    expect(swept(outer!.points, blank(0), beam, 'outside').missing).toBeCloseTo(0.1, 3);
    // Nor does it pass with the axes changed about.
    const swapped = await cut(LOPSIDED, shop(0.3, 0.1), { machine: 'laser' });
    const wrong = swept(waysOf(swapped.texts[0]!)[0]!.points, opening(0.15), { x: 0.1, y: 0.3 }, 'inside', 0.2);
    expect(Math.max(wrong.left, wrong.missing)).toBeGreaterThan(0.09);
  });

  it('is any shape of opening, whatever the beam', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        randomShape,
        fc.double({ min: 0.06, max: 0.4, noNaN: true }),
        fc.double({ min: 0.06, max: 0.4, noNaN: true }),
        fc.constantFrom('in' as const, 'out' as const),
        (made, x, y, side) => {
          const outline = shapeOf(made.kind).outline(made.frame, made.fields);
          const kerf = made.frame.width > 150 ? { x, y } : { x, y: x };
          const moved = besideKerf(outline, kerf, side);
          if (typeof moved === 'string') return;
          compared++;
          const edge = flattened(outline, 1e-4);
          // Where the beam is round, corners are as sharp as they look there.
          const corner = sharpest(stretched(edge, kerf)) * Math.min(kerf.x, kerf.y);
          const { left, missing } = swept(
            flattened(moved, 1e-4),
            edge,
            kerf,
            side === 'in' ? 'inside' : 'outside',
            0,
            0.4,
          );
          expect(missing).toBeLessThan(0.002);
          expect(left).toBeLessThan(0.002 + corner);
        },
      ),
      { numRuns: 25 },
    );
    expect(compared).toBeGreaterThan(15);
  });
});

/** How round a beam of width 1 leaves the sharpest corner of a polygon: (1 / sin(α/2) − 1) / 2. */
function sharpest(points: readonly P[]): number {
  let most = 0;
  for (const [i, p] of points.entries()) {
    const [a, b] = [points[(i + points.length - 1) % points.length]!, points[(i + 1) % points.length]!];
    const turn = Math.abs(
      Math.atan2(
        (p.x - a.x) * (b.y - p.y) - (p.y - a.y) * (b.x - p.x),
        (p.x - a.x) * (b.x - p.x) + (p.y - a.y) * (b.y - p.y),
      ),
    );
    most = Math.max(most, (1 / Math.cos(turn / 2) - 1) / 2);
  }
  return most;
}
