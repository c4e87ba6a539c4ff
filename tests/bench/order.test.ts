import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stroke } from '../../src/bench/model.ts';
import { order, type WorkOrder } from '../../src/bench/order.ts';
import { strokes } from '../../src/bench/strokes.ts';
import { turnsAmong } from '../../src/bench/turning.ts';
import { box } from '../../src/geometry/box.ts';
import { bevel, type LayerIn, lopsidedMat, makeJob, makeMat } from './mats.ts';

type Score = readonly [changes: number, turns: number, notUp: number];

const less = (a: Score, b: Score): boolean => (a[0] !== b[0] ? a[0] < b[0] : a[1] !== b[1] ? a[1] < b[1] : a[2] < b[2]);

/** Quarter turns that bring the travel towards the person: down 0, right 1, up 2, left 3. */
function quarter(s: Stroke): number {
  const { x, y } = s.direction;
  if (Math.abs(x) < 1e-9) return y > 0 ? 0 : 2;
  return x > 0 ? 1 : 3;
}

const apart = (a: number, b: number): number => Math.min((a - b + 4) % 4, (b - a + 4) % 4);

/** Settings in these tests are whole millimetres or beyond the guide: equal or clearly different. */
const setting = (s: Stroke): number => (s.beyondGuide ? -1 : Math.round(s.guide * 100));

interface Tally {
  readonly score: Score;
  readonly before?: Stroke;
  readonly turned: boolean;
}

const NOTHING: Tally = { score: [0, 0, 0], turned: false };

/** One stroke more: layers start TOP up, and strokes after a layer's first turn are not up. */
function add(tally: Tally, s: Stroke): Tally {
  const { score, before } = tally;
  const newLayer = before?.layer !== s.layer;
  const step = apart(newLayer || before === undefined ? 0 : quarter(before), quarter(s));
  const turned = (tally.turned && !newLayer) || step > 0;
  const change = before !== undefined && setting(before) !== setting(s) ? 1 : 0;
  return { score: [score[0] + change, score[1] + step, score[2] + (turned ? 1 : 0)], before: s, turned };
}

/** Every sequence there is, cut off where it already costs as much as the best. */
function bruteForce(all: readonly Stroke[], stack: 'together' | 'apart'): Score {
  let best: Score | undefined;
  const left = new Set(all);
  const walk = (tally: Tally): void => {
    if (best !== undefined && !less(tally.score, best)) return;
    if (left.size === 0) {
      best = tally.score;
      return;
    }
    const waiting = [...left];
    const current = tally.before?.layer;
    const unfinished = waiting.some((s) => s.layer === current);
    const lowest = Math.min(...waiting.map((s) => s.layer));
    for (const s of waiting) {
      if (unfinished ? s.layer !== current : stack === 'together' && s.layer !== lowest) continue;
      left.delete(s);
      walk(add(tally, s));
      left.add(s);
    }
  };
  walk(NOTHING);
  return best!;
}

/** Borders and turns chosen so that settings are often shared between sides, openings and layers. */
const jobs = fc
  .record({
    layers: fc.array(
      fc.oneof(
        fc.record({
          left: fc.constantFrom(40, 60, 80),
          right: fc.constantFrom(40, 60, 80, 100),
          top: fc.constantFrom(40, 60, 80),
          bottom: fc.constantFrom(60, 80, 100),
          reverse: fc.boolean(),
        }),
        fc.constantFrom(60, 80).map((even) => ({ left: even, right: even, top: even, bottom: even, reverse: false })),
      ),
      { minLength: 1, maxLength: 3 },
    ),
    two: fc.boolean(),
    opening: fc.constantFrom('left' as const, 'right' as const),
    stack: fc.constantFrom('together' as const, 'apart' as const),
    longest: fc.constantFrom(90, 1000),
  })
  .map(({ layers, two, opening, stack, longest }) => {
    // Two openings only in one layer: eight strokes are what brute force can take again and again.
    const used = two ? layers.slice(0, 1) : layers;
    const mat = makeMat(
      400,
      400,
      used.map((l): LayerIn => {
        const width = 400 - l.left - l.right;
        const height = 400 - l.top - l.bottom;
        const half = (width - 40) / 2;
        const faces = two
          ? [box(l.left, l.top, half, height), box(l.left + half + 40, l.top, half, height)]
          : [box(l.left, l.top, width, height)];
        return { thickness: 1, bevel: bevel(45, l.reverse), faces };
      }),
    );
    return { mat, job: makeJob(mat, { head: { opening }, stack, guide: { longest } }) };
  });

const scoreOf = (work: WorkOrder): Score => work.strokes.reduce(add, NOTHING).score;

describe('order of work', () => {
  test('is as good as the best of all sequences, on 500 random jobs', () => {
    fc.assert(
      fc.property(jobs, ({ mat, job }) => {
        const work = strokes(mat, job);
        expect(work.strokes.map((s) => s.order)).toEqual(work.strokes.map((_, i) => i + 1));
        expect(new Set(work.strokes.map((s) => `${s.layer} ${s.opening} ${s.side}`)).size).toBe(work.strokes.length);
        const mine = scoreOf(work);
        expect(mine).toEqual(bruteForce(work.strokes, job.bench.stack));
        expect([work.guideChanges, work.turns]).toEqual(mine.slice(0, 2));
      }),
      { numRuns: 500, seed: 20 },
    );
  }, 120_000);

  test('is as good as the best of all sequences for strokes of any kind', () => {
    const ways = [
      { x: 0, y: 1 },
      { x: 1, y: 0 },
      { x: 0, y: -1 },
      { x: -1, y: 0 },
    ];
    const origin = { x: 0, y: 0 };
    const plain = strokes(lopsidedMat(), makeJob(lopsidedMat())).strokes[0]!;
    const anyStroke = fc.record({
      layer: fc.constantFrom(1, 1, 1, 2, 3),
      guide: fc.constantFrom(10, 20, 30),
      direction: fc.constantFrom(...ways),
    });
    fc.assert(
      fc.property(
        fc.array(anyStroke, { minLength: 1, maxLength: 8 }),
        fc.constantFrom('together' as const, 'apart' as const),
        (list, stack) => {
          const all = list.map((s, i): Stroke => ({ ...plain, ...s, opening: i, start: origin, beyondGuide: false }));
          const work = order(all, stack);
          expect(scoreOf(work)).toEqual(bruteForce(all, stack));
          expect([work.guideChanges, work.turns]).toEqual(scoreOf(work).slice(0, 2));
        },
      ),
      { numRuns: 500, seed: 21 },
    );
  }, 120_000);

  test('the shortest way through some facings is as short as the best of all sequences', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 31 }), { minLength: 1, maxLength: 6 }),
        fc.nat(),
        fc.nat(),
        (eighths, a, b) => {
          const facings = eighths.map((e) => e / 8);
          const [from, to] = [a % facings.length, b % facings.length];
          const found = turnsAmong(facings).tour((1 << facings.length) - 1, from, to);
          if (from === to && facings.length > 1) {
            expect(found).toBeUndefined();
            return;
          }
          const permute = (left: number[], at: number): number => {
            if (left.length === 0) return at === to ? 0 : Number.POSITIVE_INFINITY;
            const gap = (i: number) =>
              Math.min((facings[i]! - facings[at]! + 4) % 4, (facings[at]! - facings[i]! + 4) % 4);
            return Math.min(
              ...left.map(
                (i) =>
                  gap(i) +
                  permute(
                    left.filter((k) => k !== i),
                    i,
                  ),
              ),
            );
          };
          expect(found!.turns).toBeCloseTo(
            permute(
              facings.map((_, i) => i).filter((i) => i !== from),
              from,
            ),
            9,
          );
          expect([...found!.path].sort()).toEqual(facings.map((_, i) => i));
        },
      ),
      { numRuns: 300 },
    );
  });

  test('even borders: one setting, from TOP up round in three quarter turns, clockwise for an opening on the left', () => {
    const mat = makeMat(300, 300, [{ thickness: 1.4, bevel: bevel(), faces: [box(50, 50, 200, 200)] }]);
    const work = strokes(mat, makeJob(mat));
    // Seen from the back with TOP up, the side at a bar on the left is the face's right side.
    expect(work.strokes.map((s) => s.side)).toEqual(['right', 'bottom', 'left', 'top']);
    expect(work.steps.map((s) => s.turn)).toEqual([0, 1, 1, 1]);
    expect(work.steps.map((s) => s.setGuide)).toEqual([true, false, false, false]);
    expect([work.guideChanges, work.turns]).toEqual([0, 3]);
    const right = strokes(mat, makeJob(mat, { head: { opening: 'right' } }));
    expect(right.strokes.map((s) => s.side)[0]).toBe('left');
    expect(right.turns).toBe(3);
  });

  test('a weighted bottom: the three even sides first, the bottom last', () => {
    const mat = makeMat(300, 320, [{ thickness: 1.4, bevel: bevel(), faces: [box(50, 50, 200, 200)] }]);
    const work = strokes(mat, makeJob(mat));
    // Right (TOP up), top, left: 0 + 1 + 1, then left to bottom 1: three turns; one change.
    expect([work.guideChanges, work.turns]).toEqual([1, 3]);
    expect(work.strokes[0]!.side).toBe('right');
    expect(work.strokes[3]!.side).toBe('bottom');
  });

  test('together the layers come from the top mat down and a shared setting joins them', () => {
    const mat = makeMat(400, 400, [
      { thickness: 1, bevel: bevel(), faces: [box(60, 60, 280, 260)] },
      { thickness: 1, bevel: bevel(), faces: [box(80, 80, 240, 240)] },
    ]);
    // Top mat: three sides at 60, bottom at 80; under mat all at 80: one change in all.
    const work = strokes(mat, makeJob(mat));
    expect(work.strokes.map((s) => s.layer)).toEqual([1, 1, 1, 1, 2, 2, 2, 2]);
    expect(work.guideChanges).toBe(1);
    expect(work.steps.map((s) => s.newLayer)).toEqual([true, false, false, false, true, false, false, false]);
  });

  test('apart the layers may change places where that spares a change', () => {
    // Settings {60}, {80}, {60} from the top down: in that order two changes, otherwise one.
    const mat = makeMat(400, 400, [
      { thickness: 1, bevel: bevel(), faces: [box(60, 60, 280, 280)] },
      { thickness: 1, bevel: bevel(), faces: [box(80, 80, 240, 240)] },
      { thickness: 1, bevel: bevel(), faces: [box(60, 60, 280, 280)] },
    ]);
    expect(strokes(mat, makeJob(mat)).guideChanges).toBe(2);
    const free = strokes(mat, makeJob(mat, { stack: 'apart' }));
    expect(free.guideChanges).toBe(1);
    expect([...new Set(free.strokes.map((s) => s.layer))]).toEqual([1, 3, 2]);
  });

  test('strokes beyond the guide share one removal of it', () => {
    const mat = lopsidedMat();
    // Borders 70, 90, 80, 120 with a guide up to 85: two settings and two sides without the guide.
    const work = strokes(mat, makeJob(mat, { guide: { longest: 85 } }));
    expect(work.guideChanges).toBe(2);
  });

  test('forty openings: a change between any two settings and no more', () => {
    const faces = Array.from({ length: 40 }, (_, i) => box(40 + (i % 8) * 45, 30 + Math.floor(i / 8) * 60, 30, 40));
    const mat = makeMat(425, 340, [{ thickness: 1, bevel: bevel(), faces }]);
    const work = strokes(mat, makeJob(mat));
    expect(work.strokes).toHaveLength(160);
    // 8 columns, left and right alike: 40, 85 … 355 (425 − 355 − 30 = 40). 5 rows likewise: 30, 90 … 270
    // (340 − 270 − 40 = 30). None is among both: 13 settings, 12 changes.
    expect(work.guideChanges).toBe(12);
  });

  test('sides in very many directions are all ordered', () => {
    const plain = strokes(lopsidedMat(), makeJob(lopsidedMat())).strokes[0]!;
    const all = Array.from({ length: 90 }, (_, i): Stroke => {
      const angle = (i * 4 * Math.PI) / 180;
      return {
        ...plain,
        layer: 1 + (i % 2),
        beyondGuide: i % 3 > 0,
        direction: { x: Math.sin(angle), y: Math.cos(angle) },
      };
    });
    const work = order(all, 'together');
    expect(work.strokes).toHaveLength(90);
    // Each layer has two settings of the guide (on and off), one of which joins the layers: two changes.
    expect(work.guideChanges).toBe(2);
    // Two settings in each layer, all the way round for both, all directions within 15° steps.
    expect(work.turns).toBeLessThan(2 * 2 * 4 + 0.001);
  });

  test('nothing to cut is no work', () => {
    expect(order([], 'apart')).toEqual({ strokes: [], steps: [], guideChanges: 0, turns: 0 });
  });
});
