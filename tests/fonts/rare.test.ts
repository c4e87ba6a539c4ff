import fontkit from '@pdf-lib/fontkit';
import pako from 'pako';
import { expect, test } from 'vitest';
import { fontFor, runs } from '../../src/fonts/embed.ts';
import { textBox, textWidth } from '../../src/fonts/measure.ts';
import { textOutline } from '../../src/fonts/outlines.ts';
import { prepareRare } from '../../src/fonts/rare.ts';
import { commandsOf, glyphOf, WEIGHTS } from './full-fonts.ts';

/** ₿ is in the family but not prepared; ƀ and the snowman only in the wider font; 漢 and ש in none that can show them. */
const TEXTS = ['Heron ☃ in ₿', 'ƀ 漢', 'Heron ש'];

test('rare characters are found in the family first, then in the wider font, in both weights', async () => {
  const rare = await prepareRare(TEXTS);
  expect(rare.faces.map(({ table }) => [table.id, table.codePoints])).toEqual([
    ['rare-regular', [0x20bf]],
    ['rare-bold', [0x20bf]],
    ['rare-regular-fallback', [0x180, 0x2603]],
    ['rare-bold-fallback', [0x180, 0x2603]],
  ]);
});

test('they are measured, embedded and drawn like the others', async () => {
  const rare = await prepareRare(TEXTS);
  const snowman = glyphOf('regular-fallback', 0x2603);
  expect(textWidth('☃', 'regular', 2048, rare)).toBe(snowman.advanceWidth);
  const found = runs('a☃b₿', 'regular', rare);
  expect(found.map((run) => run.font)).toEqual(['regular', 'rare-regular-fallback', 'regular', 'rare-regular']);
  for (const { font, glyphs } of found)
    expect(glyphs.every((glyph) => glyph > 0 && fontFor(font, rare).widths[glyph]!)).toBe(true);
  const file = fontkit.create(pako.inflate(fontFor('rare-regular-fallback', rare).fontFile));
  expect(commandsOf(file.getGlyph(found[1]!.glyphs[0]!))).toEqual(commandsOf(snowman));
  const contours = commandsOf(snowman).filter(({ command }) => command === 'moveTo');
  expect(textOutline('☃', 'regular', 2048, rare).map(({ start }) => [start.x, -start.y])).toEqual(
    contours.map(({ args }) => args),
  );
  const item = { text: '☃', at: { x: 0, y: 0 }, anchor: 'start', size: 2048, weight: 'regular', turn: 0 } as const;
  expect(textBox(item, rare).y).toBeCloseTo(-Math.max(snowman.bbox.maxY, 0.698 * 2048), 6);
});

test('without them the box of a missing character stands in', () => {
  expect(runs('☃', 'bold')).toEqual([{ font: 'bold', glyphs: [0], advance: expect.any(Number) }]);
});

test('what only the other weight has is borrowed from it', async () => {
  // The sans-serif A of mathematics is in the regular alone (U+1D5A0), its bold in the bold alone (U+1D5D4).
  const [light, bold] = ['\u{1d5a0}', '\u{1d5d4}'];
  const rare = await prepareRare([light, bold]);
  for (const weight of WEIGHTS) {
    expect(runs(light, weight, rare).map((run) => run.font)).toEqual(['rare-regular-fallback']);
    expect(runs(bold, weight, rare).map((run) => run.font)).toEqual(['rare-bold-fallback']);
  }
});

test('the same texts give the same bytes, other texts another name', async () => {
  const [first, second] = [await prepareRare(TEXTS), await prepareRare([...TEXTS].reverse())];
  expect(second).toEqual(first);
  const names = (faces: typeof first.faces) => faces.map((face) => face.embedded.postScriptName);
  const other = names((await prepareRare(['☂'])).faces);
  expect(new Set([...names(first.faces), ...other]).size).toBe(first.faces.length + other.length);
});

test('nothing rare, nothing read', async () => {
  expect(await prepareRare(['Heron, 16½″ × 20″ 漢 ש'])).toEqual({ faces: [] });
});
