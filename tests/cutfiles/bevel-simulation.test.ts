import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bevel } from '../../src/cutfiles/bevel.ts';
import { BEVEL_COUPON, bevelCoupon } from '../../src/cutfiles/coupons/bevel.ts';
import type { CutJob, Toolpath } from '../../src/cutfiles/model.ts';
import { flattened } from '../../src/geometry/flatten.ts';
import { solveJob } from '../../src/index.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import type { BevelMachine } from '../../src/shop/machine.ts';
import { plainMachine } from '../../src/shop/machine.ts';
import { FONTS } from '../fonts/loaded.ts';
import { randomShape } from '../shapes/random-shapes.ts';
import { cut, LOPSIDED } from './cut.ts';
import { apart, Chain, dense, inside, type P, rectangle } from './points.ts';
import { waysOf } from './read-svg.ts';

const ALLOWED = 0.02;
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

interface Blade {
  /** Degrees to the board. */
  readonly angle: number;
  readonly lean: 'left' | 'right' | undefined;
  /** How far ahead of the head's own place the cut in the face begins and ends. */
  readonly start: number;
  readonly stop: number;
}

/** The part of a way from one length to another, gone on straight where it is longer than the way. */
function part(way: readonly P[], from: number, to: number): P[] {
  const total = way.slice(1).reduce((sum, p, i) => sum + apart(p, way[i]!), 0);
  const [first, second, last, before] = [way[0]!, way[1]!, way.at(-1)!, way.at(-2)!];
  const on = (p: P, q: P, by: number): P => {
    const long = apart(p, q);
    return { x: q.x + ((q.x - p.x) * by) / long, y: q.y + ((q.y - p.y) * by) / long };
  };
  const all = dense([on(second, first, 10), ...way, on(before, last, 10)], 0.05, false);
  const found: P[] = [];
  let at = -10;
  for (const [i, p] of all.entries()) {
    if (i > 0) at += apart(p, all[i - 1]!);
    if (at >= from - 1e-9 && at <= total + to + 1e-9) found.push(p);
  }
  return found;
}

/** A plane of blade, tilted square to its travel, pushed along a way: where it comes out on the other side of the board. */
function below(way: readonly P[], thickness: number, { angle, lean }: Blade): P[] {
  const aside = lean === undefined ? 0 : thickness / Math.tan(radians(angle));
  const sign = lean === 'left' ? -1 : 1;
  return way.map((p, i) => {
    const [a, b] = [way[Math.max(0, i - 1)]!, way[Math.min(way.length - 1, i + 1)]!];
    const long = apart(a, b);
    // y runs down, so that the right hand of (1, 0) is (0, 1).
    return { x: p.x - (sign * aside * (b.y - a.y)) / long, y: p.y + (sign * aside * (b.x - a.x)) / long };
  });
}

interface Cut {
  /** Farthest that the wished edge lies from a cut, and that a cut goes past the edge's corners. */
  readonly left: number;
  readonly past: number;
  /** Least that a stroke goes past its corners. */
  readonly least: number;
}

function compared(cuts: readonly (readonly P[])[], edge: readonly P[], step = 0.2): Cut {
  const chains = cuts.map((points) => new Chain(points));
  const edgeClose = new Chain(dense(edge, 1, true), 8);
  const most = (points: readonly P[], far: (p: P) => number): number =>
    points.reduce((worst, p) => Math.max(worst, far(p)), 0);
  return {
    left: most(dense(edge, step, true), (p) => Math.min(...chains.map((chain) => chain.distance(p)))),
    // What runs into the fallout hurts nobody.
    past: most(cuts.flat(), (p) => (inside(edge, p) ? 0 : edgeClose.distance(p))),
    least: Math.min(...cuts.flatMap((points) => [points[0]!, points.at(-1)!]).map((p) => edgeClose.distance(p))),
  };
}

const machine = (more: string): string =>
  `units: mm\nmachines: {bevel: {start: 1.2, stop: -0.4, overrun: 0.3, format: svg, notes: false${more}}}\n`;
const HEAD = { start: 1.2, stop: -0.4 };
const job = (bevelOf: string): string => LOPSIDED.replace('bevel: 90', `bevel: ${bevelOf}`);
/** The face opening in the back view, mirrored: 47 from the left. */
const BACK = rectangle(47, 61, 180, 240);
const FACE = rectangle(33, 61, 180, 240);
const THICK = 1.5;

async function cuts(bevelOf: string, more: string, blade: Partial<Blade> = {}): Promise<P[][]> {
  const { texts, built } = await cut(job(bevelOf), machine(more), { machine: 'bevel' });
  const [tilt] = built.report.cutfiles![0]!.operations[0]!.tilts!;
  const own: Blade = { ...HEAD, angle: tilt!.angle, lean: tilt!.lean, ...blade };
  const up = built.report.cutfiles![0]!.up;
  return waysOf(texts[0]!).map(({ points }) => {
    const way = part(points, own.start, own.stop);
    return up === 'back' ? below(way, THICK, own) : way;
  });
}

describe('what a tilted blade leaves in the face', () => {
  it.each([
    ['45', ''],
    ['60', ''],
    ['{angle: 60, reverse: true}', ''],
    ['45', ', opening: right'],
    ['90', ''],
  ])('is the opening within 0.02 mm, each stroke 0.3 mm past its corners: %s%s', async (bevelOf, more) => {
    const found = await cuts(bevelOf, more);
    expect(found.length).toBe(4);
    const { left, past, least } = compared(found, BACK);
    expect(left).toBeLessThan(ALLOWED);
    expect(past).toBeCloseTo(0.3, 1);
    expect(past).toBeLessThan(0.3 + 0.001);
    expect(least).toBeGreaterThan(0.3 - 0.051);
  });

  it('is the same with the face up, where the blade enters at the face', async () => {
    for (const bevelOf of ['45', '{angle: 60, reverse: true}']) {
      const { left, past } = compared(await cuts(bevelOf, ', up: face'), FACE);
      expect(left).toBeLessThan(ALLOWED);
      expect(past).toBeLessThan(0.3 + 0.001);
    }
  });

  it('is not, where offsets, angle, lean or the mirror image are forgotten: the check can fail', async () => {
    const right = await cuts('60', '');
    expect(compared(right, FACE).left).toBeGreaterThan(1);
    expect(compared(await cuts('60', '', { start: 2.2 }), BACK).left).toBeGreaterThan(0.2);
    expect(compared(await cuts('60', '', { stop: -1.4 }), BACK).left).toBeGreaterThan(0.2);
    expect(compared(await cuts('60', '', { angle: 30 }), BACK).left).toBeGreaterThan(1);
    expect(compared(await cuts('60', '', { lean: 'left' }), BACK).left).toBeGreaterThan(1);
  });

  it('goes the way round that keeps the opening on the head’s own hand', async () => {
    const turning = async (bevelOf: string, more: string): Promise<number> => {
      const { texts } = await cut(job(bevelOf), machine(more), { machine: 'bevel' });
      const centre = { x: more.includes('face') ? 123 : 137, y: 181 };
      const signs = waysOf(texts[0]!).map(({ points }) => {
        const [a, b] = [points[0]!, points.at(-1)!];
        return Math.sign((b.x - a.x) * (centre.y - a.y) - (b.y - a.y) * (centre.x - a.x));
      });
      expect(new Set(signs).size).toBe(1);
      return signs[0]!;
    };
    // Positive: the middle of the opening lies to the right of every stroke.
    expect(await turning('45', '')).toBe(-1);
    expect(await turning('45', ', opening: right')).toBe(1);
    expect(await turning('{angle: 45, reverse: true}', '')).toBe(1);
    expect(await turning('45', ', up: face')).toBe(1);
    expect(await turning('{angle: 45, reverse: true}', ', up: face')).toBe(-1);
  });
});

describe('strokes', () => {
  it.each([
    ['a rectangle', ''],
    ['a notched opening, whose corners point into it', ', shape: notched, notch: 12'],
  ])('are those of the bench, for a head with the same offsets: %s', async (_, shape) => {
    const shop = `${machine('')}heads: {pull: {bevel: 45, opening: left, start: 1.2, stop: -0.4, overrun: 0.3}}\n`;
    const text = `${job('45').replace(/(openings: *\[\{[^}]*)\}/u, `$1${shape}}`)}bench: {head: pull}\n`;
    expect(text).toContain(shape);
    const solved = solveJob(text, { shop: { text: shop, file: 'shop.yaml' } });
    if (!solved.ok) throw new Error('no good job');
    const { texts } = await cut(text, shop, { machine: 'bevel' });
    const ways = waysOf(texts[0]!).map(({ points }) => [points[0]!, points.at(-1)!] as const);
    expect(ways.length).toBe(solved.value.strokes.length);
    for (const { start, stop } of solved.value.strokes) {
      const found = ways.some(([a, b]) => apart(a, start) < 1e-3 && apart(b, stop) < 1e-3);
      expect([start, stop, found]).toEqual([start, stop, true]);
    }
  });

  it('reach the mitre on the back where a corner of the mat points into the opening', () => {
    const solved = solveJob(job('45'), {});
    if (!solved.ok) throw new Error('no good job');
    const outline = shapeOf('notched').outline({ x: 0, y: 0, width: 80, height: 80 }, { notch: 10, steps: 1 });
    const board = {
      ...bevelCoupon(solved.value.mat.layers[0]!.board),
      openings: [{ id: 'opening-1', path: ['openings', 0], name: 'o', face: outline, back: outline }],
    };
    const own = { ...(plainMachine('bevel') as BevelMachine), overrun: 0 };
    const found = bevel.toolpaths(board, { ...solved.value, fonts: FONTS }, own);
    if (!found.ok) throw new Error('it can be cut');
    const ends = found.value.flatMap(({ path }) => [path.start, path.segments.at(-1)!.to]);
    // The notch at the upper left has its inner corner at 10 10, and on the back at 11.5 11.5.
    const near = ends.filter((p) => apart(p, { x: 11.5, y: 11.5 }) < 1e-9);
    expect(near.length).toBe(2);
  });

  it('leave any shape of opening, curves followed round and corners cut clean', () => {
    let done = 0;
    const solved = solveJob(job('45'), {});
    if (!solved.ok) throw new Error('no good job');
    fc.assert(
      fc.property(
        randomShape,
        fc.constantFrom(45, 60, 75),
        fc.boolean(),
        fc.constantFrom('back' as const, 'face' as const),
        (made, angle, reverse, up) => {
          const { mat } = solved.value;
          const layers = [{ ...mat.layers[0]!, bevel: { angle, reverse } }];
          const cutJob: CutJob = { job: solved.value.job, mat: { ...mat, layers }, fonts: FONTS };
          const outline = shapeOf(made.kind).outline(made.frame, made.fields);
          const board = {
            ...bevelCoupon(layers[0]!.board),
            openings: [{ id: 'opening-1', path: ['openings', 0], name: 'o', face: outline, back: outline }],
          };
          expect(board.size).toEqual(BEVEL_COUPON);
          const own: BevelMachine = {
            ...(plainMachine('bevel') as BevelMachine),
            up,
            start: [{ offset: 0.7 }],
            stop: [{ offset: 0.2 }],
            overrun: 0.3,
          };
          const found = bevel.toolpaths(board, cutJob, own);
          if (!found.ok) return;
          done++;
          const edge = flattened(outline, 1e-4);
          const faces = found.value.map((toolpath: Toolpath) => {
            const way = part(flattened(toolpath.path, 1e-4), 0.7, 0.2);
            const blade = { angle, lean: toolpath.tilt!.lean, start: 0, stop: 0 };
            return up === 'back' ? below(way, THICK, blade) : way;
          });
          const { left, past } = compared(faces, edge, 0.5);
          expect(left).toBeLessThan(ALLOWED);
          expect(past).toBeLessThan(0.3 + 0.001);
        },
      ),
      { numRuns: 30 },
    );
    expect(done).toBeGreaterThan(15);
  });
});

it.each([
  ['left', 'back'],
  ['left', 'face'],
  ['right', 'back'],
  ['right', 'face'],
])(
  'a stroke all round begins and ends in the middle of the longest side, with openings on the %s and the %s up',
  async (hand, up) => {
    const shop = `units: mm\nmachines: {bevel: {opening: ${hand}, up: ${up}, start: -2.3, stop: 0.9, overrun: 0.1, format: svg, marks: false, notes: false}}\n`;
    const rounded = job('45').replace('size: 180 x 240', 'shape: rounded, radius: 14, size: 180 x 240');
    const { texts } = await cut(rounded, shop, { machine: 'bevel' });
    const [way, ...others] = waysOf(texts[0]!);
    expect(others).toEqual([]);
    const [xs, ys] = [way!.points.map(({ x }) => x), way!.points.map(({ y }) => y)];
    const middle = (Math.min(...ys) + Math.max(...ys)) / 2;
    // The blade goes in 2.3 mm behind its head and comes out 0.9 mm ahead of it, 0.1 mm past where it began.
    const [first, last] = [way!.points[0]!, way!.points.at(-1)!];
    expect(Math.abs(first.y - middle)).toBeCloseTo(2.2, 3);
    expect(Math.abs(last.y - middle)).toBeCloseTo(0.8, 3);
    for (const { x } of [first, last]) expect(Math.min(x - Math.min(...xs), Math.max(...xs) - x)).toBeLessThan(1e-6);
  },
);

it('a straight stroke is one line, from where its head begins to where it ends', async () => {
  const { texts } = await cut(job('45'), machine(', marks: false'), { machine: 'bevel' });
  const ways = waysOf(texts[0]!);
  expect(ways).toHaveLength(4);
  for (const { points } of ways) expect(points).toHaveLength(2);
});
