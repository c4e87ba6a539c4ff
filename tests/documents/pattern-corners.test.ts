import { describe, expect, it } from 'vitest';
import { solveLoading } from '../../src/index.ts';
import type { PageRecord } from '../../src/paper/manifest.ts';
import type { ReadPoint } from '../readers/pdf-lines.ts';
import {
  HERON,
  type JobText,
  LARGE,
  PAPERS,
  type Printed,
  printed,
  type Sheet,
  TEMPLATES,
  turned,
} from './pattern-printed.ts';
import { arrows, faults, numbersOver, shownWords } from './pattern-words.ts';

/** Sheets of one corner have names that begin alike. */
function corners(sheets: readonly Sheet[]): readonly (readonly Sheet[])[] {
  const groups = new Map<string, Sheet[]>();
  for (const sheet of sheets) {
    const corner = sheet.record.name.split('-')[0]!;
    groups.set(corner, [...(groups.get(corner) ?? []), sheet]);
  }
  return [...groups.values()];
}

/** Of a side of which less is seen, the number may stand for all, mm. */
const LITTLE = 45;

/** How much of a line of the back view the sheets of a corner show, mm. */
function seenOf({ from, to }: { readonly from: ReadPoint; readonly to: ReadPoint }, corner: readonly Sheet[]): number {
  const long = Math.round(Math.hypot(to.x - from.x, to.y - from.y));
  return Array.from({ length: long }, (_, i) => (i + 0.5) / long).filter((k) =>
    corner.some(({ record }) => {
      const { x, y, width, height } = record as Required<PageRecord>;
      // The drawing begins a millimetre before the board.
      const [px, py] = [from.x + k * (to.x - from.x) + 1, from.y + k * (to.y - from.y) + 1];
      return px > x && py > y && px < x + width && py < y + height;
    }),
  ).length;
}

/** What a corner's sheets lack of TOP, BACK and, for every stroke that is seen, number, arrow, reading and side. */
async function lacking({ job, shop }: JobText, { layer, sheets }: Printed): Promise<readonly string[]> {
  const solved = await solveLoading(job, shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } });
  if (!solved.ok) throw new Error('it was printed');
  const { strokes } = solved.value;
  return corners(sheets).flatMap((corner) => {
    const name = corner[0]!.record.name;
    const side = layer === undefined ? /FACE/ : /BACK/;
    const marks = ([/TOP$/, side] as const).flatMap((words) => {
      const found = corner.flatMap((sheet) => turned(sheet, words));
      return found.length > 0 && found.includes(0) ? [] : [`${name} has no ${words.source} upright`];
    });
    if (layer === undefined) return marks;
    const seen = strokes.filter((s) => s.layer === layer).map((s) => ({ s, mm: seenOf(s.line, corner) }));
    const words = corner.flatMap(({ page }) => shownWords(page));
    const numbers = words.filter(({ layer: of }) => of === 'Stroke arrows and numbers').map(({ text }) => text);
    const readings = words.filter(({ layer: of }) => of === 'Guide readings').map(({ text }) => text);
    const missing = seen.flatMap(({ s, mm }) => {
      if (mm < LITTLE) return [];
      const what = `${name}, stroke ${s.order}`;
      const reading = s.beyondGuide ? 'guide off' : s.setting.text;
      return [
        ...(numbers.includes(String(s.order)) ? [] : [`${what}: no number`]),
        ...(readings.some((text) => text.startsWith(reading)) ? [] : [`${what}: no reading`]),
      ];
    });
    const sides = readings.filter((text) => /(?:top|bottom|left|right)\b/.test(text));
    const full = seen.filter(({ mm }) => mm >= LITTLE).length;
    const drawn = corner.flatMap(({ page }) => arrows(page));
    return [
      ...marks,
      ...missing,
      ...(sides.length >= full ? [] : [`${name}: ${sides.length} sides of ${full} strokes`]),
      ...(drawn.length === numbers.length ? [] : [`${name}: ${drawn.length} arrows of ${numbers.length} strokes`]),
    ];
  });
}

describe.each([...TEMPLATES, HERON, ...LARGE])('corner sheets of $name', (each) => {
  it.each(PAPERS)('have all that their strokes need, whole, on %s', async (paper) => {
    for (const pattern of await printed(each, paper, 'corners')) {
      expect(pattern.sheets.flatMap(({ page, record }) => faults(page, record))).toEqual([]);
      expect(pattern.sheets.flatMap(({ page }) => numbersOver(page))).toEqual([]);
      expect(await lacking(each, pattern)).toEqual([]);
    }
  });
});
