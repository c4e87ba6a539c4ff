import { expect, test } from 'vitest';
import { missing } from '../../src/fonts/coverage.ts';
import { runs } from '../../src/fonts/embed.ts';
import { unshapable } from '../../src/fonts/shaping.ts';
import { FONTS } from './loaded.ts';

test.each([
  ['שלום', 'Hebrew'],
  ['سلام', 'Arabic'],
  ['नमस्ते', 'Devanagari'],
  ['สวัสดี', 'Thai'],
  ['བོད', 'Tibetan'],
  ['မြန်မာ', 'Myanmar'],
  ['தமிழ்', 'Tamil'],
  ['ខ្មែរ', 'Khmer'],
  ['ߒߞߏ', 'Nko'],
])('%s is %s, which cannot be shown properly', (text, script) => {
  const found = unshapable(['Heron', text, text]);
  expect(found.map((entry) => entry.script)).toEqual([script]);
  expect(found[0]!.characters.map(({ character }) => character)).toEqual([...new Set(text)].sort());
  expect(missing([text], FONTS)).toEqual([]);
  expect(runs(text, 'regular', FONTS)).toEqual([
    expect.objectContaining({ font: 'regular', glyphs: [...text].map(() => 0) }),
  ]);
});

test('several scripts come in the order of their first use', () => {
  expect(unshapable(['ab שa', 'م ש']).map((entry) => entry.script)).toEqual(['Hebrew', 'Arabic']);
});

test('a mark that composes is fine, one that is left over is named', () => {
  expect(unshapable(['e\u0301', 'Việt'.normalize('NFD')])).toEqual([]);
  expect(unshapable(['q\u0301'])).toEqual([
    { script: 'combining marks', characters: [{ codePoint: 0x301, character: '\u0301', name: 'U+0301' }] },
  ]);
});

test('left-to-right scripts of single letters are left alone', () => {
  expect(unshapable(['Latin Ελληνικά Кириллица Հայերեն ქართული 漢字 16½″ ☐ →'])).toEqual([]);
});
