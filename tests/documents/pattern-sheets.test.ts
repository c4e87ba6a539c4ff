import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { build, solveLoading } from '../../src/index.ts';
import type { PageRecord } from '../../src/paper/manifest.ts';
import { type ReadPage, type ReadPoint, readPdf } from '../readers/pdf-lines.ts';
import { arrows, faults, shownWords } from './pattern-words.ts';

const TEMPLATES = join(import.meta.dirname, '../../templates');
const names = readdirSync(TEMPLATES).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml');
const PAPERS = ['letter', 'a4', 'a3'] as const;

interface Sheet {
  readonly page: ReadPage;
  readonly record: PageRecord;
}

interface Printed {
  /** From 1; nothing for what is done on the face. */
  readonly layer: number | undefined;
  readonly sheets: readonly Sheet[];
}

async function printed(
  job: string,
  shop: string | undefined,
  paper: string,
  extent: 'whole' | 'corners',
): Promise<readonly Printed[]> {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const built = await build(job, { ...source, paper, extent });
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  const { report, files } = built.value;
  return Promise.all(
    report.patterns.map(async ({ file, layer, pages }): Promise<Printed> => {
      const { pages: read } = await readPdf(files.find(({ name }) => name === file)!.bytes);
      const sheets = pages.flatMap((record): Sheet[] =>
        record.width === undefined ? [] : [{ record, page: read[record.number - 1]! }],
      );
      return { layer: file === 'pattern-face.pdf' ? undefined : layer, sheets };
    }),
  );
}

const turned = ({ page, record }: Sheet, pattern: RegExp): readonly number[] =>
  shownWords(page)
    .filter(({ text }) => pattern.test(text))
    .map(({ turn }) => (Math.round(turn) - record.rotation + 360) % 360);

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
async function lacking(job: string, shop: string | undefined, { layer, sheets }: Printed): Promise<readonly string[]> {
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

const shopText = readFileSync(join(TEMPLATES, 'shop.yaml'), 'utf8');

describe.each(names)('the words of %s', (name) => {
  const job = readFileSync(join(TEMPLATES, name), 'utf8');

  it.each(PAPERS)('stand whole on the sheets of %s, TOP upright', async (paper) => {
    for (const { sheets } of await printed(job, shopText, paper, 'whole')) {
      expect(sheets.flatMap(({ page, record }) => faults(page, record))).toEqual([]);
      expect(sheets.flatMap((sheet) => turned(sheet, /TOP$/))).toEqual([0]);
    }
  });

  it.each(PAPERS)('stand whole on corner sheets of %s, with all that their strokes need', async (paper) => {
    for (const each of await printed(job, shopText, paper, 'corners')) {
      expect(each.sheets.flatMap(({ page, record }) => faults(page, record))).toEqual([]);
      expect(await lacking(job, shopText, each)).toEqual([]);
    }
  });
});
