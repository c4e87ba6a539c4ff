import { describe, expect, it } from 'vitest';
import { itemBox } from '../../src/drawing/bounds.ts';
import type { Page } from '../../src/drawing/document.ts';
import type { LineItem } from '../../src/drawing/model.ts';
import { grown, overlaps, union } from '../../src/geometry/box.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import type { Layout } from '../../src/paper/layout.ts';
import type { LaidPage } from '../../src/paper/model.ts';
import { warning } from '../../src/problems/problem.ts';
import { mmFromInches } from '../../src/units/units.ts';
import { FONTS } from '../fonts/loaded.ts';
import { even, itemsOf, laid, pensOf, textsOf, wordsOf } from './laid.ts';
import { LARGE, MIDDLING, ringMat } from './sample.ts';

const checkPagesOf = (layout: Layout): readonly LaidPage[] => layout.pages.filter((page) => page.part === undefined);

function scaleLines(page: Page): readonly LineItem[] {
  return itemsOf(page).flatMap((item) =>
    item.kind === 'line' && item.id?.startsWith('scale-') === true ? [item] : [],
  );
}

const lengthOf = ({ from, to }: LineItem): number => Math.hypot(to.x - from.x, to.y - from.y);

const PAPERS = ['letter', 'a4', 'legal', 'a3', 'a0', '150 x 200 mm', '100 x 150 mm', '60 x 90 mm'];

describe.each(PAPERS)('the first sheet on %s', (paper) => {
  const layout = laid(MIDDLING, paper, { margin: even(5), lap: 8 });
  const check = checkPagesOf(layout);

  it('comes first and says so', () => {
    expect(layout.pages[0]!.name).toBe('check');
    expect(layout.pages.slice(0, check.length)).toEqual(check);
    expect(wordsOf(check[0]!)).toContain('Print this first, at 100 %');
    expect(wordsOf(check[0]!)).toContain('No scaling, no “fit to page”');
  });

  it('has lines of whole lengths in mm and in, across and down, with ticks at their very ends', () => {
    const lines = scaleLines(check[0]!);
    if (paper.startsWith('60')) return expect(lines).toEqual([]);
    expect(lines).toHaveLength(4);
    const others = itemsOf(check[0]!).flatMap((item) => (item.kind === 'line' && item.id === undefined ? [item] : []));
    for (const line of lines) {
      const [, axis, size, unit] = /^scale-([xy])-(\d+)(mm|in)$/.exec(line.id!)!;
      expect(lengthOf(line)).toBeCloseTo(unit === 'mm' ? Number(size) : mmFromInches(Number(size)), 9);
      expect(axis === 'x' ? line.from.y === line.to.y : line.from.x === line.to.x).toBe(true);
      for (const end of [line.from, line.to]) {
        expect(others.some(({ from, to }) => (from.x + to.x) / 2 === end.x && (from.y + to.y) / 2 === end.y)).toBe(
          true,
        );
      }
    }
    const sizes = lines.map(({ id }) => id);
    if (Math.min(layout.pages[0]!.paper.width, layout.pages[0]!.paper.height) > 180) {
      expect(sizes).toEqual(['scale-x-100mm', 'scale-x-4in', 'scale-y-100mm', 'scale-y-4in']);
    }
  });

  it('lays nothing over its words', () => {
    for (const page of check) {
      // Numbers on the map stand on patches of white, over its lines.
      const boxes = itemsOf(page).flatMap((item) => {
        const b = item.kind === 'text' && !/^\d+$/.test(item.text) ? itemBox(item, pensOf(page), FONTS) : undefined;
        return b === undefined ? [] : [{ b, text: JSON.stringify(item) }];
      });
      for (const [i, one] of boxes.entries()) {
        for (const other of boxes.slice(i + 1))
          expect(overlaps(one.b, other.b), `${one.text} ${other.text}`).toBe(false);
      }
    }
  });

  it("is read at arm's length", () => {
    for (const page of check) {
      for (const item of itemsOf(page)) {
        if (item.kind === 'text' && !/^[A-Z]?\d+$/.test(item.text)) expect(item.size).toBeGreaterThanOrEqual(3);
      }
    }
  });
});

describe('what the first sheet says', () => {
  const layout = laid(
    {
      ...LARGE,
      instructions: ['Cut by the numbers.', 'Mind the blade.'],
      warnings: [warning('w', [], 'the border is narrow', 'widen it')],
    },
    'letter',
  );
  const all = wordsOf(...checkPagesOf(layout));

  it('what 94 and 97 mm mean: A4 and Letter fitted to each other, 0.940741 and 0.972673 (PWG 5101.1, derived)', () => {
    expect(((11 * 25.4) / 297).toFixed(6)).toBe('0.940741');
    expect((210 / (8.5 * 25.4)).toFixed(6)).toBe('0.972673');
    expect(all).toContain('94 or 97 mm instead of 100');
    expect(all).toContain('Set Letter');
  });

  it('the diagonals and key sizes to check, the settings, the steps, the warnings', () => {
    for (const { shown, label } of LARGE.facts) {
      expect(all).toContain(shown);
      expect(all).toContain(label);
    }
    for (const part of [
      '8½ × 11 in',
      '¼ in all round',
      'upright on the sheets',
      '15: this one and 14 of the pattern; 6 more would be blank',
      'Cut by the numbers.',
      'Mind the blade.',
      'the border is narrow; widen it.',
    ]) {
      expect(all).toContain(part);
    }
    for (const { text } of LARGE.legend) expect(all).toContain(text);
  });

  it('how to lay it on, where the drawing brings no steps of its own', () => {
    const own = wordsOf(...checkPagesOf(laid(LARGE, 'letter')));
    for (const part of ["inside the board's edge", 'notches', 'low-tack tape', 'double']) expect(own).toContain(part);
  });

  it('how lapped and butted sheets are joined', () => {
    expect(all).toContain('Lay it over the neighbour');
    expect(wordsOf(...checkPagesOf(laid(LARGE, 'letter', { join: 'butt' })))).toContain('Lay the edges together');
    const single = wordsOf(...checkPagesOf(laid(MIDDLING, 'a2')));
    expect(single).toContain('Print the next page');
    expect(single).not.toContain('neighbour');
  });

  it('lengths are in the unit of the job', () => {
    expect(wordsOf(...checkPagesOf(laid(MIDDLING, 'a4', { units: 'mm' })))).toContain('6.35 mm all round');
  });

  it('a long list of steps goes on to further pages, none of it lost', () => {
    const instructions = Array.from(
      { length: 60 },
      (_, i) => `Step number ${i + 1} of many: ${'do it carefully '.repeat(6)}end${i + 1}.`,
    );
    const long = laid({ ...MIDDLING, instructions }, 'a4');
    const pages = checkPagesOf(long);
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.map((page) => page.name)).toEqual(pages.map((_, i) => (i === 0 ? 'check' : `check ${i + 1}`)));
    const words = wordsOf(...pages);
    for (let i = 1; i <= 60; i++) expect(words).toContain(`end${i}.`);
  });
});

describe('the map', () => {
  const fills = (page: Page, grey: number) =>
    itemsOf(page).flatMap((item) => (item.kind === 'path' && item.fill === grey ? [item] : []));

  it('names every sheet that is printed, and greys those that are not', () => {
    const layout = laid(LARGE, 'letter');
    const [check] = checkPagesOf(layout);
    for (const page of layout.pages) if (page.part !== undefined) expect(textsOf(check!)).toContain(page.name);
    for (const skipped of ['B2', 'B3', 'B4', 'C2', 'C3', 'C4']) expect(textsOf(check!)).not.toContain(skipped);
    // The six lie side by side, so they are one area: three sheets wide, each as wide as its join lines leave it.
    expect(layout.skipped).toBe(6);
    expect(fills(check!, 0.86)).toHaveLength(1);
    const [grey] = fills(check!, 0.86).map((item) => pathBox(item.paths[0]!));
    const printed = itemsOf(check!).flatMap((item) =>
      item.kind === 'path' && item.pen === 'thin' ? [pathBox(item.paths[0]!)] : [],
    );
    for (const sheet of printed) expect(overlaps(sheet, grown(grey!, -0.01))).toBe(false);
    const all = union(printed);
    expect(grey!.width * grey!.height + printed.reduce((sum, b) => sum + b.width * b.height, 0)).toBeCloseTo(
      all.width * all.height,
      3,
    );
  });

  it('finds its place even for hundreds of sheets, and its names stay legible', () => {
    const layout = laid(LARGE, '100 x 100 mm', { margin: even(5), lap: 10 });
    expect(layout.sheets).toBeGreaterThan(40);
    const words = checkPagesOf(layout).flatMap(textsOf);
    for (const page of layout.pages) if (page.part !== undefined) expect(words).toContain(page.name);
  });

  it('shows the corner sheets where they lie', () => {
    const texts = textsOf(laid(LARGE, 'letter', { extent: 'corners' }).pages[0]!);
    for (const name of ['C1', 'C2', 'C3', 'C4']) expect(texts).toContain(name);
    expect(texts.join(' ')).toContain('Where the sheets lie on the board.');
  });

  it('numbers the facts as the list does', () => {
    const texts = textsOf(
      laid(ringMat({ width: 300, height: 400, top: 50, right: 50, bottom: 50, left: 50 }), 'a4').pages[0]!,
    );
    expect(texts.filter((text) => text === '1').length).toBeGreaterThanOrEqual(1);
    expect(texts.some((text) => text.endsWith('board, diagonal'))).toBe(true);
  });
});
