import { describe, expect, it } from 'vitest';
import { itemBox } from '../../src/drawing/bounds.ts';
import type { FullScale } from '../../src/drawing/full-scale.ts';
import { type Box, bottom, contains, overlaps, right } from '../../src/geometry/box.ts';
import { layOut } from '../../src/paper/layout.ts';
import { mmFromInches } from '../../src/units/units.ts';
import { FONTS } from '../fonts/loaded.ts';
import { drawnPoints, even, isShown, itemsOf, laid, onPage, options, pensOf, sheetsIn, wordsOf } from './laid.ts';
import { LARGE, MIDDLING, ringMat } from './sample.ts';

/** Nothing but borders: no blank place for words. */
const NARROW = ringMat({ width: 200, height: 150, top: 40, right: 40, bottom: 40, left: 40 });

const CASES: readonly (readonly [string, FullScale, string])[] = [
  ['a full board on a roll of 36 in', LARGE, 'roll:36in'],
  ['turned on a roll of 44 in', LARGE, 'roll:44in'],
  ['16 × 20 in to fit', MIDDLING, 'fit'],
  ['a small one to fit, words below', NARROW, 'fit'],
  ['a small one on a roll, words below', NARROW, 'roll:610mm'],
];

describe.each(CASES)('%s', (_, work, paper) => {
  const { drawing } = work;
  const layout = laid(work, paper);
  const [sheet] = sheetsIn(layout);

  it('is one page with all of the drawing', () => {
    expect(layout.pages).toHaveLength(1);
    expect(layout.sheets).toBe(1);
    expect(drawnPoints(drawing, 5).every((p) => isShown(p, sheet!))).toBe(true);
  });

  it('keeps to its margins and lays no words over the drawing', () => {
    const { width, height } = sheet!.paper;
    const area: Box = { x: 6.35, y: 6.35, width: width - 12.7, height: height - 12.7 };
    const theirs = drawing.groups.flatMap(({ items }) =>
      items.map((item): Box => {
        const b = itemBox(item, drawing.pens, FONTS)!;
        const [p, q] = [onPage({ x: b.x, y: b.y }, sheet!), onPage({ x: right(b), y: bottom(b) }, sheet!)];
        return {
          x: Math.min(p.x, q.x),
          y: Math.min(p.y, q.y),
          width: Math.abs(p.x - q.x),
          height: Math.abs(p.y - q.y),
        };
      }),
    );
    for (const b of theirs) expect(contains(area, b, 0.3)).toBe(true);
    for (const item of itemsOf(sheet!)) {
      const b = itemBox(item, pensOf(sheet!), FONTS);
      if (b === undefined) continue;
      expect(contains(area, b, 0.001)).toBe(true);
      if (item.kind === 'text') expect(theirs.some((t) => overlaps(b, t))).toBe(false);
    }
  });

  it('has the scale lines on it, none of them solid, 100 mm and 4 in', () => {
    const lines = itemsOf(sheet!).flatMap((item) =>
      item.kind === 'line' && item.id?.startsWith('scale-') === true ? [item] : [],
    );
    expect(lines.map(({ id }) => id)).toEqual(['scale-x-100mm', 'scale-x-4in', 'scale-y-100mm', 'scale-y-4in']);
    for (const line of lines) expect(pensOf(sheet!)[line.pen]!.dash.length).toBeGreaterThan(0);
    expect(Math.abs(lines[0]!.to.x - lines[0]!.from.x)).toBeCloseTo(100, 9);
    expect(Math.abs(lines[3]!.to.y - lines[3]!.from.y)).toBeCloseTo(mmFromInches(4), 9);
    for (const item of itemsOf(sheet!)) {
      if (item.kind === 'line' && pensOf(sheet!)[item.pen]!.dash.length === 0) {
        expect(Math.hypot(item.to.x - item.from.x, item.to.y - item.from.y)).toBeLessThan(6);
      }
    }
  });

  it('says what it is', () => {
    const words = wordsOf(sheet!);
    for (const part of ['Print at 100 %', 'Measure the four lines', 'seen from the BACK', work.facts[0]!.shown])
      expect(words).toContain(part);
  });
});

describe('how long the page is', () => {
  it('a roll is used for as little as it takes: turned where that is shorter', () => {
    const narrow = laid(LARGE, 'roll:36in').pages[0]!;
    expect(narrow.paper.width).toBe(mmFromInches(36));
    expect(narrow.paper.height).toBeCloseTo(LARGE.drawing.height + 12.7, 9);
    expect(narrow.rotation).toBe(0);
    const wide = laid(LARGE, 'roll:44in').pages[0]!;
    expect(wide.paper.width).toBe(mmFromInches(44));
    expect(wide.paper.height).toBeCloseTo(LARGE.drawing.width + 12.7, 9);
    expect(wide.rotation).toBe(90);
  });

  it('a page to fit is the drawing and its margins', () => {
    const { paper } = laid(MIDDLING, 'fit', { margin: { top: 10, right: 20, bottom: 30, left: 40 } }).pages[0]!;
    expect(paper.width).toBeCloseTo(MIDDLING.drawing.width + 60, 9);
    expect(paper.height).toBeCloseTo(MIDDLING.drawing.height + 40, 9);
  });

  it('a printer that prints short gets a page that is longer for it', () => {
    const printer = { id: 'plotter', x: 0.99, y: 0.98, calibrated: true, margin: even(0) };
    const [sheet] = sheetsIn(laid(MIDDLING, 'fit', { printer }));
    const { paper, part, scale } = sheet!;
    expect(scale).toEqual({ x: 0.99, y: 0.98 });
    // What is sent to the printer, before it shrinks it, still ends at the margin.
    expect((part.pageX + part.width) / 0.99).toBeLessThanOrEqual(paper.width - 6.35 + 1e-9);
    expect((part.pageY + part.height) / 0.98).toBeLessThanOrEqual(paper.height - 6.35 + 1e-9);
    // Nothing of the drawing is cut off for it.
    expect(drawnPoints(MIDDLING.drawing, 5).every((p) => isShown(p, sheet!))).toBe(true);
    const roll = laid(LARGE, 'roll:36in', { printer });
    expect(sheetsIn(roll)).toHaveLength(1);
    expect(drawnPoints(LARGE.drawing, 5).every((p) => isShown(p, sheetsIn(roll)[0]!))).toBe(true);
  });
});

describe('what no page holds', () => {
  it('a roll too narrow for the drawing either way', () => {
    const made = layOut(LARGE, options('roll:24in', { path: ['print'] }));
    expect(made).toMatchObject({ ok: false, problems: [{ code: 'roll-too-narrow', path: ['print', 'paper'] }] });
    expect(made.ok ? '' : made.problems[0]!.message).toMatch(/24 in wide.*takes 32\.5/);
  });

  it('a page beyond 200 in, the largest of a PDF without UserUnit (Adobe PDF Reference 1.7, Appendix C)', () => {
    const long = ringMat({ width: 800, height: 5070, top: 80, right: 80, bottom: 80, left: 80 });
    for (const paper of ['roll:36in', 'fit']) {
      const made = layOut(long, options(paper));
      expect(made).toMatchObject({ ok: false, problems: [{ code: 'page-too-large' }] });
      expect(made.ok ? '' : made.problems[0]!.message).toContain('200 in at most');
    }
    const just = ringMat({ width: 800, height: 5065, top: 80, right: 80, bottom: 80, left: 80 });
    expect(layOut(just, options('fit')).ok).toBe(true);
  });
});
