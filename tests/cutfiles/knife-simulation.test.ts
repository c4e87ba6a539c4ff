import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withLead } from '../../src/cutfiles/toolpaths/lead.ts';
import { swivelPath } from '../../src/cutfiles/toolpaths/swivel.ts';
import { flattened } from '../../src/geometry/flatten.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { randomShape } from '../shapes/random-shapes.ts';
import { cut, LOPSIDED } from './cut.ts';
import { apart, Chain, dense, inside, type P, rectangle } from './points.ts';
import { waysOf } from './read-svg.ts';

const ALLOWED = 0.02;

/**
 * Drags a knife: its tip stands `offset` from the axis and is drawn after it, always along its own edge. `towards` is
 * where the tip lies when the knife is let down, radians.
 */
function dragged(axis: readonly P[], offset: number, towards: number, step = 0.02): P[] {
  const way = dense(axis, step, false);
  let tip = { x: way[0]!.x + offset * Math.cos(towards), y: way[0]!.y + offset * Math.sin(towards) };
  const found = [tip];
  for (const at of way.slice(1)) {
    const long = apart(at, tip);
    tip = { x: at.x + ((tip.x - at.x) * offset) / long, y: at.y + ((tip.y - at.y) * offset) / long };
    found.push(tip);
  }
  return found;
}

interface Cut {
  /** Farthest that the wished edge lies from the cut, and that the cut runs into what is kept, mm. */
  readonly left: number;
  readonly into: number;
}

function compared(tip: readonly P[], edge: readonly P[], waste: 'inside' | 'outside', step = 0.1): Cut {
  const [tipClose, edgeClose] = [new Chain(tip), new Chain(dense(edge, 1, true))];
  const most = (points: readonly P[], far: (p: P) => number): number =>
    points.reduce((worst, p) => Math.max(worst, far(p)), 0);
  const left = most(dense(edge, step, true), (p) => tipClose.distance(p));
  const into = most(tip, (p) => (inside(edge, p) === (waste === 'inside') ? 0 : edgeClose.distance(p)));
  return { left, into };
}

const shop = (offset: number, more = ''): string =>
  `units: mm\nmachines: {knife: {offset: ${offset}, format: svg, marks: false, notes: false${more}}}\n`;

/** Of the wanted arithmetic: the blank's corner lies where the outside's own points say. */
function jobEdges(outer: readonly P[], offset: number): { readonly blank: P[]; readonly opening: P[] } {
  // The axis swings out by the offset at every corner: its box is the blank's, larger by that, but for the lead.
  const bottom = Math.max(...outer.map(({ y }) => y)) - offset;
  const left = Math.min(...outer.map(({ x }) => x)) + offset;
  const [x, y] = [left, bottom - 390];
  return { blank: rectangle(x, y, 260, 390), opening: rectangle(x + 47, y + 61, 180, 240) };
}

describe('what a drag knife leaves', () => {
  it.each([
    [0.25, 0],
    [0.25, Math.PI],
    [0.25, 2],
    [0.6, -Math.PI / 2],
    [1, 4],
  ])('is the job within 0.02 mm, corners and all: offset %s mm, let down at %s', async (offset, towards) => {
    const { texts } = await cut(LOPSIDED, shop(offset), { machine: 'knife' });
    const [inner, outer] = waysOf(texts[0]!);
    const { blank, opening } = jobEdges(outer!.points, offset);
    const hole = compared(dragged(inner!.points, offset, towards), opening, 'inside');
    expect(hole.left).toBeLessThan(ALLOWED);
    expect(hole.into).toBeLessThan(ALLOWED);
    const board = compared(dragged(outer!.points, offset, towards), blank, 'outside');
    expect(board.left).toBeLessThan(ALLOWED);
    expect(board.into).toBeLessThan(ALLOWED);
  });

  it('cuts corners short where nothing is allowed for: the check can fail', async () => {
    const { texts } = await cut(LOPSIDED, shop(0), { machine: 'knife' });
    const [inner, outer] = waysOf(texts[0]!);
    const { opening } = jobEdges(outer!.points, 0);
    const hole = compared(dragged(inner!.points, 0.25, 1), opening, 'inside');
    expect(hole.left).toBeGreaterThan(0.1);
    // Nor with half of the offset.
    const half = await cut(LOPSIDED, shop(0.125), { machine: 'knife' });
    const [wrong] = waysOf(half.texts[0]!);
    expect(compared(dragged(wrong!.points, 0.25, 1), opening, 'inside').left).toBeGreaterThan(ALLOWED);
  });

  it('needs the strokes in the waste: let down on the cut itself, the blade does not know its way', async () => {
    const { texts } = await cut(LOPSIDED, shop(0.6), { machine: 'knife' });
    const [inner, outer] = waysOf(texts[0]!);
    const { opening } = jobEdges(outer!.points, 0.6);
    const begun = inner!.points.findIndex(
      (p) => Math.abs(p.x - opening[1]!.x) < 1e-3 || Math.abs(p.y - opening[1]!.y) < 1e-3,
    );
    expect(begun).toBeGreaterThan(2);
    const bare = dragged(inner!.points.slice(begun), 0.6, 0.3);
    expect(compared(bare, opening, 'inside').into).toBeGreaterThan(ALLOWED);
  });

  it('is any shape of opening, and of what is cut out around', () => {
    let compared_ = 0;
    fc.assert(
      fc.property(
        randomShape,
        fc.double({ min: 0.1, max: 0.8, noNaN: true }),
        fc.constantFrom('inside' as const, 'outside' as const),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (made, offset, waste, towards) => {
          const outline = shapeOf(made.kind).outline(made.frame, made.fields);
          const tip = withLead(outline, waste, { radius: 3, settle: Math.max(1, 5 * offset), overcut: 1 });
          if (tip === undefined) return;
          compared_++;
          const axis = flattened(swivelPath(tip, offset), 1e-4);
          const edge = flattened(outline, 1e-4);
          const { left, into } = compared(dragged(axis, offset, towards, 0.02), edge, waste, 0.5);
          expect(left).toBeLessThan(ALLOWED);
          expect(into).toBeLessThan(ALLOWED);
        },
      ),
      { numRuns: 30 },
    );
    expect(compared_).toBeGreaterThan(20);
  });
});

describe('passes', () => {
  it('are light ones first, on their own layer, along the same way', async () => {
    const { texts } = await cut(LOPSIDED, shop(0.25, ', passes: 3'), { machine: 'knife' });
    const ways = waysOf(texts[0]!);
    expect(ways.map(({ layer }) => layer)).toEqual(['score', 'score', 'score', 'score', 'inner', 'outer']);
    const inner = ways.find(({ layer }) => layer === 'inner')!;
    const same = ways.filter(({ layer, points }) => layer === 'score' && points.length === inner.points.length);
    expect(same.filter(({ points }) => apart(points[0]!, inner.points[0]!) < 1e-6).length).toBe(2);
  });

  it('goes past its beginning by the overcut, and leaves into the waste', () => {
    const outline = shapeOf('rectangle').outline({ x: 0, y: 0, width: 100, height: 200 }, {});
    const length = (overcut: number): number => {
      const tip = flattened(withLead(outline, 'inside', { radius: 3, settle: 1, overcut })!, 1e-4);
      return tip.slice(1).reduce((sum, p, i) => sum + apart(p, tip[i]!), 0);
    };
    expect(length(2.5) - length(0)).toBeCloseTo(2.5, 6);
  });
});
