import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { missing, rareCharacters } from '../../src/fonts/coverage.ts';
import { runs } from '../../src/fonts/embed.ts';
import { everything, tables } from '../../src/fonts/prepared/tables.ts';
import { unshapable } from '../../src/fonts/shaping.ts';
import { FULL, WEIGHTS } from './full-fonts.ts';
import { FONTS } from './loaded.ts';

const needsRare = (texts: readonly string[]): boolean => rareCharacters(texts, tables, everything).length > 0;

const range = (first: number, last: number): string =>
  String.fromCodePoint(...Array.from({ length: last - first + 1 }, (_, i) => first + i));

/** What job texts and labels must be able to hold without the slow way. The soft hyphen of Latin-1 is never drawn. */
const WANTED: Readonly<Record<string, string>> = {
  ASCII: range(0x20, 0x7e),
  'Latin-1': range(0xa0, 0xff),
  'Latin Extended-A': range(0x100, 0x17f),
  'Romanian commas, capital sharp s': 'ȘșȚțẞ',
  Vietnamese: range(0x1ea0, 0x1ef9),
  Greek: 'ΆΈΉΊΌΎΏΐΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩΪΫάέήίΰαβγδεζηθικλμνξοπρςστυφχψωϊϋόύώ',
  Cyrillic: range(0x400, 0x45f),
  'Cyrillic of Ukraine and Central Asia': 'ҐґҒғҖҗҚқҢңҮүҰұҲҳҺһӘәӨө',
  fractions: '½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞',
  'built fractions': '\u2044⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉',
  primes: '′″',
  signs: '×°±−÷≈≤≥≠∞⌀',
  'dashes, quotes, dots': '–—…•‘’“”‚„«»‹›',
  arrows: '←↑→↓↔↕↖↗↘↙↺↻⇄',
  money: '€£$¥₽₴₹',
  'bench marks': '■□▲△▼▽◀▶◆◇●○☐☑☒✓✗✂',
};

describe.each(Object.entries(WANTED))('%s', (_, text) => {
  test.each(WEIGHTS)('is prepared in %s', (weight) => {
    expect(needsRare([text])).toBe(false);
    expect(missing([text], FONTS)).toEqual([]);
    for (const character of text) {
      const found = runs(character, weight, FONTS).flatMap((run) => run.glyphs);
      expect(found, character).toEqual(character === '\u00ad' ? [] : [expect.any(Number)]);
      expect(found, character).not.toContain(0);
    }
  });
});

test('a character that the fonts have not is named, once, composed, by code point', () => {
  expect(missing(['字漢 and 漢', '𓀀'], FONTS)).toEqual([
    { codePoint: 0x5b57, character: '字', name: 'U+5B57' },
    { codePoint: 0x6f22, character: '漢', name: 'U+6F22' },
    { codePoint: 0x13000, character: '𓀀', name: 'U+13000' },
  ]);
  expect(missing(['Heron, 16½″ × 20″'], FONTS)).toEqual([]);
});

test('what the full fonts have is not missing but rare, and everything else is missing: all of Unicode', () => {
  for (let first = 0; first < 0x110000; first += 0x1000) {
    for (let codePoint = first; codePoint < first + 0x1000; codePoint++) {
      const character = String.fromCodePoint(codePoint);
      if (/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}]/u.test(character)) continue;
      if (character.normalize('NFC') !== character || unshapable([character]).length > 0) continue;
      const held = FULL.some(({ font }) => font.hasGlyphForCodePoint(codePoint));
      const found = missing([character], FONTS).length === 0 || needsRare([character]);
      if (found !== held) expect.fail(`U+${codePoint.toString(16)}`);
    }
  }
});

test('private characters mean nothing outside one font', () => {
  expect(FULL.some(({ font }) => font.hasGlyphForCodePoint(0xece0))).toBe(true);
  expect(missing(['\uece0'], FONTS).map((found) => found.name)).toEqual(['U+ECE0']);
});

test('rare ones are told from prepared and missing ones', () => {
  expect(needsRare(['☃'])).toBe(true);
  expect(needsRare(['Heron', 'Ա'])).toBe(true);
  expect(needsRare(['漢'])).toBe(false);
  expect(needsRare(['ش'])).toBe(false);
  expect(needsRare([])).toBe(false);
});

test('the licences of both fonts are there in full, with their notices', () => {
  const licences = readFileSync('src/fonts/LICENSES.md', 'utf8');
  for (const words of [
    'Copyright © 2017 IBM Corp. with Reserved Font Name "Plex"',
    'SIL OPEN FONT LICENSE Version 1.1 - 26 February 2007',
    'Copyright (c) 2003 by Bitstream, Inc.',
    'Copyright (c) 2006 by Tavmjong Bah.',
  ]) {
    expect(licences).toContain(words);
  }
});
