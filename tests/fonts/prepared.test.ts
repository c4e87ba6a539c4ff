import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fontkit from '@pdf-lib/fontkit';
import pako from 'pako';
import { describe, expect, test } from 'vitest';
import { MODULES, PREPARED, preparedModules, prepareFonts } from '../../src/dev/prepare-fonts.ts';
import { drawnCodePoints } from '../../src/fonts/characters.ts';
import { fontFor } from '../../src/fonts/embed.ts';
import { tables } from '../../src/fonts/prepared/tables.ts';
import { commandsOf, FULL, fullFont, glyphOf } from './full-fonts.ts';
import { FONTS } from './loaded.ts';

const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

describe.each(tables.map((table) => [table.id, table] as const))('%s', (id, table) => {
  const embedded = fontFor(id, FONTS);
  const file = pako.inflate(embedded.fontFile);
  const subset = fontkit.create(file);
  const full = fullFont(id);

  test('the cut-down file, opened again, has the outlines and widths of the full font', () => {
    expect(file.length).toBe(embedded.fontFileLength);
    expect(subset.numGlyphs).toBe(embedded.widths.length);
    expect(subset.unitsPerEm).toBe(full.unitsPerEm);
    table.codePoints.forEach((codePoint, i) => {
      const [cut, whole] = [subset.getGlyph(i + 1), full.glyphForCodePoint(codePoint)];
      expect(commandsOf(cut), `U+${codePoint.toString(16)}`).toEqual(commandsOf(whole));
      expect(cut.advanceWidth).toBe(whole.advanceWidth);
      expect(embedded.widths[i + 1]).toBe((whole.advanceWidth * 1000) / full.unitsPerEm);
      expect(table.advances[i + 1]).toBe(whole.advanceWidth);
    });
  });

  test('glyph 0 is a box that can be seen', () => {
    expect(commandsOf(subset.getGlyph(0))).toEqual(commandsOf(full.getGlyph(0)));
    expect(subset.getGlyph(0).bbox.height / subset.unitsPerEm).toBeGreaterThan(0.5);
  });

  test('ToUnicode takes every glyph back to its one code point', () => {
    const cmap = text(pako.inflate(embedded.toUnicode));
    const back = [...cmap.matchAll(/^<(?!0000)([0-9A-F]{4})> <([0-9A-F]+)>$/gm)].map(([, glyph, units]) => [
      Number.parseInt(glyph!, 16),
      String.fromCharCode(...units!.match(/.{4}/g)!.map((unit) => Number.parseInt(unit, 16))),
    ]);
    expect(back).toEqual(table.codePoints.map((codePoint, i) => [i + 1, String.fromCodePoint(codePoint)]));
    const blocks = [...cmap.matchAll(/^(\d+) beginbfchar\n((?:<.*\n)*)endbfchar$/gm)];
    expect(blocks.map(([, count]) => Number(count))).toEqual(
      blocks.map(([, , lines]) => lines!.split('\n').length - 1),
    );
    expect(Math.max(...blocks.map(([, count]) => Number(count)))).toBeLessThanOrEqual(100);
  });

  test('the descriptor has every number that a PDF needs', () => {
    const { bbox, ascent, descent, capHeight, xHeight, italicAngle, stemV, flags } = embedded;
    for (const value of [...bbox, ascent, descent, capHeight, xHeight, italicAngle, stemV, flags]) {
      expect(Number.isFinite(value)).toBe(true);
    }
    expect(embedded.postScriptName).toMatch(/^[A-Z]{6}\+[A-Za-z]+-(Regular|Bold)$/);
    expect(ascent).toBeGreaterThan(capHeight);
    expect(capHeight).toBeGreaterThan(xHeight);
    expect(descent).toBeLessThan(0);
    expect(bbox[0]).toBeLessThan(bbox[2]);
  });

  test('it carries no name that its licence reserves', () => {
    expect(`${embedded.postScriptName} ${text(file)}`).not.toMatch(/plex|ibm|dejavu|bitstream|vera\b/i);
  });

  test('code points rise, and composing a text never takes one away', () => {
    expect(table.codePoints).toEqual([...new Set(table.codePoints)].sort((a, b) => a - b));
    expect(table.codePoints.flatMap((codePoint) => drawnCodePoints(String.fromCodePoint(codePoint)))).toEqual(
      table.codePoints,
    );
  });
});

test('heights are those that the family states of itself', () => {
  // OS/2 table of the fonts: sCapHeight, sxHeight, sTypoAscender, sTypoDescender.
  for (const { id, font } of FULL.filter((full) => !full.id.includes('fallback'))) {
    const { capHeight, xHeight, ascent, descent } = fontFor(id, FONTS);
    expect({ capHeight, xHeight, ascent, descent }).toEqual({
      capHeight: font.capHeight,
      xHeight: font.xHeight,
      ascent: font.ascent,
      descent: font.descent,
    });
  }
});

test('stems are as thick as the I of the wider font, which is nothing but a stem', () => {
  for (const id of ['regular-fallback', 'bold-fallback']) {
    const { bbox } = glyphOf(id, 'I'.charCodeAt(0));
    expect(fontFor(id, FONTS).stemV).toBe((bbox.width * 1000) / fullFont(id).unitsPerEm);
  }
});

test('both weights hold the same characters', () => {
  const of = (id: string) => tables.find((table) => table.id === id)?.codePoints;
  expect(of('bold')).toEqual(of('regular'));
  expect(of('bold-fallback')).toEqual(of('regular-fallback'));
  expect(of('regular')!.filter((codePoint) => of('regular-fallback')!.includes(codePoint))).toEqual([]);
});

test('two runs give the same bytes, which are those that are there', async () => {
  const [first, second] = [await preparedModules(), await preparedModules()];
  expect(Object.keys(first)).toEqual([...MODULES]);
  for (const file of MODULES) {
    expect(first[file] === second[file], file).toBe(true);
    expect(first[file] === readFileSync(join(PREPARED, file), 'utf8'), `${file}: npm run fonts`).toBe(true);
  }
});

test('what is up to date is left alone, and a lost file comes back', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'fonts-'));
  try {
    expect(await prepareFonts(folder)).toBe(true);
    const before = statSync(join(folder, 'tables.ts')).mtimeMs;
    expect(await prepareFonts(folder)).toBe(false);
    expect(statSync(join(folder, 'tables.ts')).mtimeMs).toBe(before);
    rmSync(join(folder, 'outlines.ts'));
    expect(await prepareFonts(folder)).toBe(true);
    expect(statSync(join(folder, 'outlines.ts')).size).toBe(statSync(join(PREPARED, 'outlines.ts')).size);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
