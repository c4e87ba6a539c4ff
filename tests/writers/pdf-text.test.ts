import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { openPdf } from '../../src/dev/render.ts';
import type { TextItem } from '../../src/drawing/model.ts';
import { loadFonts } from '../../src/fonts/load.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { openObjects } from '../readers/pdf-objects.ts';
import { documentOf, drawingOf, group, pageOf, wholePage } from './samples.ts';

const text = (words: string, y: number, over: Partial<TextItem> = {}): TextItem => ({
  kind: 'text',
  text: words,
  at: { x: 100, y },
  anchor: 'start',
  size: 6,
  weight: 'regular',
  turn: 0,
  colour: 0,
  ...over,
});

const WORDS = [
  'BACK, this side up',
  '16 ½ × 20 ⅜″ and 7⁄64, 5′ 6″',
  '¼ ½ ¾ ⅛ ⅜ ⅝ ⅞ ° ± – — “quoted” ‘so’ …',
  'Γλάρος Ωμέγα αβγδεζηθ',
  'Журнал Серый Ёлка ґєії',
  'Café, naïve, Łódź, Øre, ß',
];

test('words come out of the file as they went in, in reading order', async () => {
  const drawing = drawingOf(400, 200, [
    group(
      'words',
      WORDS.map((words, i) => text(words, 20 + 10 * i)),
    ),
  ]);
  const bytes = await writePdf(wholePage(drawing), { fonts: FONTS });
  const read = await readPdf(bytes);
  // One show operator for each font that a text needs; put together they are the text.
  const byLine = new Map<number, string>();
  for (const piece of read.pages[0]!.texts) {
    const row = Math.round(piece.at.y);
    byLine.set(row, (byLine.get(row) ?? '') + piece.text);
  }
  expect([...byLine.values()]).toEqual(WORDS);
  const file = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const items = (await (await file.getPage(1)).getTextContent()).items;
  const flow = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join('');
  expect(flow.split('\n').map((row) => row.trim())).toEqual(WORDS);
});

test('another reader extracts the same words', async () => {
  const drawing = drawingOf(400, 200, [
    group(
      'words',
      WORDS.map((words, i) => text(words, 20 + 10 * i)),
    ),
  ]);
  const pdf = await openPdf(await writePdf(wholePage(drawing), { fonts: FONTS }));
  expect(pdf.text(0).split(/\r?\n/)).toEqual(WORDS);
  pdf.close();
});

test('a text starts, ends or has its middle at its point, turned about it', async () => {
  const words = 'Reading 3 1⁄16';
  for (const weight of ['regular', 'bold'] as const) {
    for (const turn of [0, 30, 90, 180, 270, 345]) {
      for (const [anchor, part] of [
        ['start', 0],
        ['middle', 0.5],
        ['end', 1],
      ] as const) {
        const drawing = drawingOf(200, 200, [group('words', [text(words, 100, { anchor, turn, weight })])]);
        const [found, ...more] = (await readPdf(await writePdf(wholePage(drawing), { fonts: FONTS }))).pages[0]!.texts;
        expect(more).toEqual([]);
        const radians = (turn * Math.PI) / 180;
        const { at, width, size } = found!;
        expect(found!.text).toBe(words);
        expect(Math.abs(size - 6)).toBeLessThan(0.001);
        expect(Math.abs(((found!.turn - turn + 540) % 360) - 180)).toBeLessThan(0.001);
        // The width is what the reader adds up from the widths in the file.
        expect(Math.abs(at.x + part * width * Math.cos(radians) - 100)).toBeLessThan(0.01);
        expect(Math.abs(at.y + part * width * Math.sin(radians) - 100)).toBeLessThan(0.01);
        expect(width).toBeGreaterThan(20);
      }
    }
  }
});

test('only fonts that are used are embedded, each once, as a subset', async () => {
  const fonts = async (words: readonly TextItem[]): Promise<readonly string[]> => {
    const drawing = drawingOf(400, 200, [group('words', words)]);
    const page = pageOf(1, { part: { x: 0, y: 0, width: 200, height: 200, pageX: 0, pageY: 0 }, over: words });
    return (await openObjects(await writePdf(documentOf(drawing, [page]), { fonts: FONTS }))).fonts;
  };
  expect(await fonts([])).toEqual([]);
  const one = await fonts([text('Only one', 20), text('weight', 30)]);
  expect(one.length).toBe(1);
  expect(one[0]).toMatch(/^\/[A-Z]{6}\+/);
  const two = await fonts([text('One', 20), text('two', 30, { weight: 'bold' })]);
  expect(new Set(two).size).toBe(2);
  expect(two[0]).toBe(one[0]);
});

test('rare characters come from fonts that are handed in, and are extracted like all others', async () => {
  const words = 'snow ☃ and ₿';
  const drawing = drawingOf(200, 100, [group('words', [text(words, 50)])]);
  const fonts = await loadFonts([words], { files: true });
  const bytes = await writePdf(wholePage(drawing), { fonts });
  const { texts } = (await readPdf(bytes)).pages[0]!;
  expect(texts.map((piece) => piece.text).join('')).toBe(words);
  expect((await openObjects(bytes)).fonts.length).toBe(3);
  // Each run starts where the last one ended.
  for (let i = 1; i < texts.length; i++) {
    expect(Math.abs(texts[i - 1]!.at.x + texts[i - 1]!.width - texts[i]!.at.x)).toBeLessThan(0.001);
  }
  const without = (await readPdf(await writePdf(wholePage(drawing), { fonts: FONTS }))).pages[0]!.texts;
  expect(without.map((piece) => piece.text).join('')).not.toBe(words);
});

test('a text of which nothing is drawn leaves no trace', async () => {
  const drawing = drawingOf(100, 100, [group('words', [text('', 20), text('\u200b', 30)])]);
  const bytes = await writePdf(wholePage(drawing), { fonts: FONTS });
  expect((await readPdf(bytes)).pages[0]!.texts).toEqual([]);
  expect((await openObjects(bytes)).fonts).toEqual([]);
});
