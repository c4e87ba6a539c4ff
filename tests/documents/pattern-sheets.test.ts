import { describe, expect, it } from 'vitest';
import { solveLoading } from '../../src/index.ts';
import { visible } from '../readers/pdf-lines.ts';
import { BARS, HERON, PAPERS, printed, type Sheet, SMALL, TEMPLATES, turned } from './pattern-printed.ts';
import { faults, inkBox, mistakable, shownWords, underlines } from './pattern-words.ts';
import { onPage } from './sheets.ts';

describe.each([...TEMPLATES, HERON])('the words of $name', (each) => {
  it.each(PAPERS)('stand whole on the sheets of %s, TOP upright, 6 and 9 underlined', async (paper) => {
    for (const { sheets } of await printed(each, paper, 'whole')) {
      expect(sheets.flatMap(({ page, record }) => faults(page, record))).toEqual([]);
      expect(sheets.flatMap((sheet) => turned(sheet, /TOP$/))).toEqual([0]);
      for (const { page } of sheets) expect(underlines(page)).toBe(mistakable(page));
    }
  });
});

it.each(SMALL)('$name has its TOP upright, and the words of its hinge along the hinge or not at all', async (each) => {
  const [pattern] = await printed(each, 'letter', 'whole');
  const [sheet] = pattern!.sheets;
  expect(faults(sheet!.page, sheet!.record)).toEqual([]);
  expect(turned(sheet!, /TOP$/)).toEqual([0]);
  // The longer edge, at the right as it is seen from the back.
  for (const turn of turned(sheet!, /^hinge along/)) expect(turn).toBe(90);
});

/** What is written beside the lines of bars, each nearer to its own than to any other. */
async function barNames(sheets: readonly Sheet[], layer: number): Promise<readonly string[]> {
  const solved = await solveLoading(BARS.job, { shop: { text: BARS.shop!, file: 'shop.yaml' } });
  if (!solved.ok) throw new Error('it was printed');
  const bars = solved.value.strokes.filter((s) => s.layer === layer && s.bar !== undefined);
  return sheets.flatMap(({ page, record }) =>
    shownWords(page)
      .filter(({ text }) => text.startsWith('bar for '))
      .map((word) => {
        const { x, y, width, height } = inkBox(word);
        const middle = { x: x + width / 2, y: y + height / 2 };
        // The drawing begins a millimetre before the board; the lines run on beyond their strokes.
        const off = bars.map(({ order, bar }) => {
          const [a, b] = [bar!.from, bar!.to].map((p) => onPage({ x: p.x + 1, y: p.y + 1 }, record));
          const [dx, dy] = [b!.x - a!.x, b!.y - a!.y];
          const aside = Math.abs((middle.x - a!.x) * dy - (middle.y - a!.y) * dx) / Math.hypot(dx, dy);
          return { name: `bar for ${order}`, aside };
        });
        const nearest = off.reduce((best, one) => (one.aside < best.aside ? one : best));
        expect(nearest.aside).toBeLessThan(8);
        expect(word.text).toBe(nearest.name);
        return word.text;
      }),
  );
}

it('every line of a bar carries the number of its own stroke', async () => {
  for (const { sheets, layer } of await printed(BARS, 'letter', 'whole')) {
    expect(sheets.flatMap(({ page, record }) => faults(page, record))).toEqual([]);
    const names = await barNames(sheets, layer!);
    expect(names.length).toBeGreaterThan(3);
    expect(new Set(names).size).toBe(names.length);
    // Each bar that lies on the board is drawn, 4 mm on and off.
    const drawn = sheets.flatMap(({ page }) =>
      page.lines.filter(
        ({ dash }) => dash.length === 2 && Math.abs(dash[0]! - 4) < 0.01 && Math.abs(dash[1]! - 4) < 0.01,
      ),
    );
    const ids = new Set(drawn.filter((line) => visible(line) !== undefined).map(({ path, page }) => `${page} ${path}`));
    expect(ids.size).toBeGreaterThanOrEqual(names.length);
  }
});
