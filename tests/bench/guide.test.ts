import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offScale, reach, scaleUnits, settingOf } from '../../src/bench/guide.ts';
import type { Stroke } from '../../src/bench/model.ts';
import { strokes } from '../../src/bench/strokes.ts';
import { box } from '../../src/geometry/box.ts';
import type { Side } from '../../src/geometry/sides.ts';
import { guideReading } from '../../src/mat/guide-reading.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';
import type { Guide } from '../../src/shop/guide.ts';
import type { Head } from '../../src/shop/head.ts';
import { bevel, lopsidedMat, makeJob, makeMat } from './mats.ts';

const guide = (some: Partial<Guide> = {}): Guide => ({ graduation: 1, a: 0, b: 1, ...some });
const bySide = (found: readonly Stroke[]) => Object.fromEntries(found.map((s) => [s.side, s])) as Record<Side, Stroke>;

describe('distance', () => {
  test('from the outer edge on the border side, by the side as named from the face', () => {
    // Lopsided: left 70, right 400 − 310 = 90, top 80, bottom 500 − 380 = 120.
    const s = bySide(strokes(lopsidedMat(), makeJob(lopsidedMat())).strokes);
    expect([s.left, s.right, s.top, s.bottom].map((each) => each.distance)).toEqual([70, 90, 80, 120]);
    expect([s.left, s.right].map((each) => each.guideFrom)).toEqual(['border', 'border']);
  });

  test('from the far edge for a reverse bevel', () => {
    // The left face line is at x = 70: 400 − 70 = 330 from the right edge; right 310; top 500 − 80 = 420; bottom 380.
    const mat = lopsidedMat(1.4, 45, true);
    const s = bySide(strokes(mat, makeJob(mat)).strokes);
    expect([s.left, s.right, s.top, s.bottom].map((each) => each.distance)).toEqual([330, 310, 420, 380]);
    expect(s.left.guideFrom).toBe('far');
  });

  test('an under mat is set from the edge of the top mat, whatever was trimmed off its own', () => {
    const mat = makeMat(400, 500, [
      { thickness: 1.4, bevel: bevel(), faces: [box(70, 80, 240, 300)] },
      { thickness: 1.4, bevel: bevel(), faces: [box(76, 86, 228, 288)], reveal: 6, trimBack: 3 },
    ]);
    for (const stack of ['together', 'apart'] as const) {
      const under = bySide(strokes(mat, makeJob(mat, { stack })).strokes.filter((s) => s.layer === 2));
      expect([under.left, under.right, under.top, under.bottom].map((s) => s.distance)).toEqual([76, 96, 86, 126]);
    }
  });

  test('square to an oblique side it is the distance to the farthest corner of the board', () => {
    const towards = { x: Math.SQRT1_2, y: -Math.SQRT1_2 };
    // From (250, 100) to the top right corner (300, 0): (50 + 100)/√2.
    expect(reach({ width: 300, height: 200 }, { x: 250, y: 100 }, towards)).toBeCloseTo(150 / Math.SQRT2, 9);
  });
});

describe('reading', () => {
  test('(distance + (t − t_ref)·cot θ − a) / b', () => {
    // 76.2 + (3 − 1.4)·cot 60° = 76.2 + 1.6 × 0.5773502692 = 77.1237604; less 0.5, over 1.002.
    const reading = guideReading(guide({ setAt: 1.4, a: 0.5, b: 1.002 }), 76.2, 3, bevel(60));
    expect(reading).toBeCloseTo(76.6237604307 / 1.002, 8);
    expect(guideReading(guide({ a: 0.5, b: 1.002 }), 76.2, 3, bevel(60))).toBeCloseTo(75.7 / 1.002, 9);
    expect(guideReading(guide({ setAt: 1.4 }), 76.2, 3, bevel(90))).toBe(76.2);
  });

  test('a blade that enters where the guide puts it comes out on the face line, normal and reverse', () => {
    // The cutter of this test: the edge lies on the guide at 0, and with a board of t_ref the face line is at the true
    // setting. The blade leans towards the guide, so it enters t_ref·cot farther out, wherever the board's back is.
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.double({ min: 35, max: 90, noNaN: true }),
        fc.boolean(),
        (thickness, setAt, angle, reverse) => {
          const mat = lopsidedMat(thickness, angle, reverse);
          const settings = { setAt, a: 0.7, b: 1.01 };
          for (const s of strokes(mat, makeJob(mat, { guide: settings })).strokes) {
            const cot = Math.tan(((90 - angle) * Math.PI) / 180);
            const entry = 0.7 + 1.01 * s.guide + setAt * cot;
            // Where the line on the back is, measured from the edge on the guide, from the mat's own back opening.
            const back = mat.openings[0]!.layers[0]!.backBox;
            const fromEdge = {
              left: back.x,
              right: 400 - back.x - back.width,
              top: back.y,
              bottom: 500 - back.y - back.height,
            };
            const across = s.side === 'left' || s.side === 'right' ? 400 : 500;
            expect(entry).toBeCloseTo(reverse ? across - fromEdge[s.side] : fromEdge[s.side], 8);
          }
        },
      ),
    );
  });

  test('beyond the longest setting of the guide', () => {
    const s = bySide(strokes(lopsidedMat(), makeJob(lopsidedMat(), { guide: { longest: 90 } })).strokes);
    expect([s.left, s.right, s.top, s.bottom].map((each) => each.beyondGuide)).toEqual([false, false, false, true]);
  });

  test('a reverse bevel, whose opening lies under the bar, has the bar line on the side of the opening', () => {
    const text = `units: mm
mat: {outer: 400 x 500, layers: [{bevel: {angle: 45, reverse: true}}]}
openings: [{size: 100 x 120}]
bench: {head: h}
`;
    const shop = 'units: mm\nheads: {h: {bevel: 45, bar: 30}}\nguide: {graduation: 1, longest: 100, a: 0, b: 1}\n';
    const solved = solveJob(text, { shop: { text: shop, file: 'shop.yaml' } });
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const top = solved.value.strokes.find((s) => s.side === 'top')!;
    expect(top.bar!.from.y - top.line.from.y).toBeCloseTo(30, 9);
  });

  test('beyond it the bar lies at its distance from the line, on the border side, or a warning asks for it', () => {
    const mat = lopsidedMat();
    const made = (head: Partial<Head>) => strokes(mat, makeJob(mat, { guide: { longest: 90 }, head }));
    const { bottom, top } = bySide(made({ bar: 40 }).strokes);
    expect(bottom!.bar!.from.y - bottom!.line.from.y).toBeCloseTo(40, 9);
    expect(bottom!.bar!.from.x).toBeCloseTo(bottom!.line.from.x, 9);
    expect(top!.bar).toBeUndefined();
    expect(made({ bar: 40 }).warnings).toEqual([]);
    const [warned, ...more] = made({}).warnings;
    expect(warned).toMatchObject({ code: 'guide-beyond', severity: 'warning', path: ['openings', 0] });
    expect(warned!.message).toContain('the guide, which reaches 90 mm, cannot be set for');
    expect(warned!.message).toContain('bottom');
    expect(more).toEqual([]);
    expect(made({ straightedge: 20 }).warnings).toEqual([]);
  });
});

describe('setting', () => {
  test('scant a little less, full a little more, exact within 0.05 mm', () => {
    const sixteenth = 25.4 / 16;
    // 3 1/16 in = 77.7875 mm.
    expect(settingOf(77.7875, sixteenth, 'in')).toMatchObject({ text: '3 1/16 in', sense: 'exact' });
    expect(settingOf(77.7875 - 0.4, sixteenth, 'in')).toMatchObject({ text: '3 1/16 in', sense: 'scant' });
    expect(settingOf(77.7875 - 0.4, sixteenth, 'in').remainder).toBeCloseTo(-0.4, 9);
    expect(settingOf(77.7875 + 0.4, sixteenth, 'in')).toMatchObject({ text: '3 1/16 in', sense: 'full' });
    expect(settingOf(77.7875 + 0.049, sixteenth, 'in').sense).toBe('exact');
    expect(settingOf(77.7875 - 0.051, sixteenth, 'in').sense).toBe('scant');
    expect(settingOf(77.8, 1, 'mm')).toMatchObject({ value: 78, text: '78 mm', sense: 'scant' });
    expect(settingOf(77.3, 0.5, 'cm')).toMatchObject({ value: 77.5, text: '7.75 cm', sense: 'scant' });
  });

  test('the printed setting and its remainder are the reading', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 900, noNaN: true }),
        fc.constantFrom(25.4 / 64, 25.4 / 32, 25.4 / 16, 0.5, 1),
        (reading, graduation) => {
          const setting = settingOf(reading, graduation, 'in');
          expect(setting.value + setting.remainder).toBeCloseTo(reading, 9);
          expect(Math.abs(setting.remainder)).toBeLessThanOrEqual(graduation / 2 + 1e-6);
          expect(Math.abs(setting.value / graduation - Math.round(setting.value / graduation))).toBeLessThan(1e-9);
        },
      ),
    );
  });
});

describe('the unit of a reading', () => {
  test.each([
    [1.5875, 'mm', 'in'],
    [1.5875, 'cm', 'in'],
    [25.4 / 32, 'in', 'in'],
    [1, 'in', 'mm'],
    [0.5, 'in', 'mm'],
    [1, 'mm', 'mm'],
    [1, 'cm', 'cm'],
    // Of neither kind, or of both: as the job has it.
    [0.7, 'mm', 'mm'],
    [0.7, 'in', 'in'],
    [12.7, 'in', 'in'],
    [127, 'mm', 'mm'],
  ] as const)('a scale of %s mm in a job in %s is read in %s', (graduation, units, expected) => {
    expect(scaleUnits(graduation, units)).toBe(expected);
  });

  test('85.72 mm on a scale of sixteenths is 3 3/8 in, in a metric job too', () => {
    const job = 'units: mm\nmat: {outer: 400 x 400, border: 85.725}\nopenings: [{}]\n';
    const solved = solveJob(job, { shop: { text: 'guide: {graduation: 1/16}\n', file: 'shop.yaml' } });
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    expect(solved.value.strokes[0]!.setting).toMatchObject({ text: '3 3/8 in', sense: 'exact' });
  });
});

describe('the ends of the scale', () => {
  test('bound what the guide is set to: its longest and its shortest setting, and zero', () => {
    const guide = { graduation: 1, longest: 300, shortest: 12, a: 0, b: 1 };
    expect([11.9, 12, 300, 300.1].map((reading) => offScale(guide, reading))).toEqual([true, false, false, true]);
    const { longest, shortest, ...open } = guide;
    expect([-0.1, 0, 5000].map((reading) => offScale(open, reading))).toEqual([true, false, false]);
    expect(longest).toBeGreaterThan(shortest);
  });

  test('are told where a border is below them: 2 in where the guide begins at 3', () => {
    const shop = { text: 'guide: {shortest: 3 in}\n', file: 'shop.yaml' };
    const solved = solveJob('mat: {outer: 16 x 20, border: {sides: 2, top: 4, bottom: 4}}\nopenings: [{}]\n', { shop });
    if (!solved.ok) throw new Error('not solved');
    const beyond = Object.fromEntries(solved.value.strokes.map(({ side, beyondGuide }) => [side, beyondGuide]));
    expect(beyond).toEqual({ top: false, bottom: false, left: true, right: true });
    expect(solved.warnings.map(({ message }) => message).join()).toContain('below its shortest, 3 in');
  });
});
