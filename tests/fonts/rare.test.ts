import fontkit from '@pdf-lib/fontkit';
import pako from 'pako';
import { expect, test } from 'vitest';
import { missing } from '../../src/fonts/coverage.ts';
import { fontFor, runs } from '../../src/fonts/embed.ts';
import { loadFonts } from '../../src/fonts/load.ts';
import { textBox, textWidth } from '../../src/fonts/measure.ts';
import type { Fonts } from '../../src/fonts/model.ts';
import { textOutline } from '../../src/fonts/outlines.ts';
import { commandsOf, glyphOf, WEIGHTS } from './full-fonts.ts';
import { FONTS } from './loaded.ts';

/** ₿ is in the family but not prepared; ƀ and the snowman only in the wider font; 漢 and ש in none that can show them. */
const TEXTS = ['Heron ☃ in ₿', 'ƀ 漢', 'Heron ש'];

test('rare characters are found in the family first, then in the wider font, in both weights', async () => {
  const { rare } = await loadFonts(TEXTS);
  expect(rare.map(({ id, codePoints }) => [id, codePoints])).toEqual([
    ['rare-regular', [0x20bf]],
    ['rare-bold', [0x20bf]],
    ['rare-regular-fallback', [0x180, 0x2603]],
    ['rare-bold-fallback', [0x180, 0x2603]],
  ]);
});

test('they are measured, embedded and drawn like the others', async () => {
  const fonts = await loadFonts(TEXTS, { outlines: true, files: true });
  const snowman = glyphOf('regular-fallback', 0x2603);
  expect(textWidth('☃', 'regular', 2048, fonts)).toBe(snowman.advanceWidth);
  const found = runs('a☃b₿', 'regular', fonts);
  expect(found.map((run) => run.font)).toEqual(['regular', 'rare-regular-fallback', 'regular', 'rare-regular']);
  for (const { font, glyphs } of found)
    expect(glyphs.every((glyph) => glyph > 0 && fontFor(font, fonts).widths[glyph]!)).toBe(true);
  const file = fontkit.create(pako.inflate(fontFor('rare-regular-fallback', fonts).fontFile));
  expect(commandsOf(file.getGlyph(found[1]!.glyphs[0]!))).toEqual(commandsOf(snowman));
  const contours = commandsOf(snowman).filter(({ command }) => command === 'moveTo');
  expect(textOutline('☃', 'regular', 2048, fonts).map(({ start }) => [start.x, -start.y])).toEqual(
    contours.map(({ args }) => args),
  );
  const item = { text: '☃', at: { x: 0, y: 0 }, anchor: 'start', size: 2048, weight: 'regular', turn: 0 } as const;
  expect(textBox(item, fonts).y).toBeCloseTo(-Math.max(snowman.bbox.maxY, 0.698 * 2048), 6);
});

test('without them the box of a missing character stands in', () => {
  expect(runs('☃', 'bold', FONTS)).toEqual([{ font: 'bold', glyphs: [0], advance: expect.any(Number) }]);
});

test('what only the other weight has is borrowed from it', async () => {
  // The sans-serif A of mathematics is in the regular alone (U+1D5A0), its bold in the bold alone (U+1D5D4).
  const [light, bold] = ['\u{1d5a0}', '\u{1d5d4}'];
  const fonts = await loadFonts([light, bold]);
  for (const weight of WEIGHTS) {
    expect(runs(light, weight, fonts).map((run) => run.font)).toEqual(['rare-regular-fallback']);
    expect(runs(bold, weight, fonts).map((run) => run.font)).toEqual(['rare-bold-fallback']);
  }
});

test('the same texts give the same bytes, other texts another name', async () => {
  const all = { outlines: true, files: true };
  const [first, second] = [await loadFonts(TEXTS, all), await loadFonts([...TEXTS].reverse(), all)];
  expect(second).toEqual(first);
  const names = ({ files }: Fonts) =>
    files!.filter(({ id }) => id.startsWith('rare-')).map((file) => file.postScriptName);
  const other = names(await loadFonts(['☂'], all));
  expect(new Set([...names(first), ...other]).size).toBe(names(first).length + other.length);
});

test('nothing rare, nothing read', async () => {
  expect((await loadFonts(['Heron, 16½″ × 20″ 漢 ש'])).rare).toEqual([]);
});

test('each part is there only where it was asked for, and one that is missing is a plain mistake', async () => {
  const fonts = await loadFonts(['☃']);
  expect(Object.keys(fonts)).toEqual(['tables', 'rare']);
  expect(missing(['☃'], fonts)).toEqual([]);
  expect(missing(['☃'], FONTS).map(({ name }) => name)).toEqual(['U+2603']);
  expect(() => textOutline('a', 'regular', 1, fonts)).toThrow('loaded without the outlines of letters');
  expect(() => fontFor('regular', fonts)).toThrow('loaded without the files to embed');
});

test('fonts are plain data: a copy sets the same words alike', async () => {
  const copy = structuredClone(await loadFonts(TEXTS, { outlines: true, files: true }));
  const fonts = await loadFonts(TEXTS, { outlines: true, files: true });
  for (const text of TEXTS) {
    expect(runs(text, 'bold', copy)).toEqual(runs(text, 'bold', fonts));
    expect(textOutline(text, 'bold', 3, copy)).toEqual(textOutline(text, 'bold', 3, fonts));
    expect(textWidth(text, 'bold', 3, copy)).toBe(textWidth(text, 'bold', 3, fonts));
  }
});
