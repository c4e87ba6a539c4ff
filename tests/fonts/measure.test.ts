import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ellipsized, fitSize, metrics, textBox, textWidth } from '../../src/fonts/measure.ts';
import { bottom, right } from '../../src/geometry/box.ts';
import { FULL, fullFont, glyphOf, WEIGHTS } from './full-fonts.ts';
import { FONTS } from './loaded.ts';
import { preparedText, weight } from './texts.ts';

/** Advance as fontkit reads it from the full fonts, em: no kerning, the wider font for what the family lacks. */
function advance(text: string, of: 'regular' | 'bold'): number {
  return [...text].reduce((sum, character) => {
    const codePoint = character.codePointAt(0)!;
    const { font } = FULL.find((full) => full.weight === of && full.font.hasGlyphForCodePoint(codePoint))!;
    return sum + font.glyphForCodePoint(codePoint).advanceWidth / font.unitsPerEm;
  }, 0);
}

describe('width', () => {
  test("is fontkit's for random texts", () => {
    fc.assert(
      fc.property(preparedText(), weight, fc.double({ min: 0.5, max: 200, noNaN: true }), (text, of, size) => {
        expect(textWidth(text, of, size, FONTS)).toBeCloseTo(advance(text, of) * size, 9);
      }),
      { numRuns: 500 },
    );
  });

  test("is fontkit's for plain ASCII too", () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme-ascii', maxLength: 60 }), weight, (text, of) => {
        expect(textWidth(text, of, 12, FONTS)).toBeCloseTo(advance(text, of) * 12, 9);
      }),
      { numRuns: 500 },
    );
  });

  test('is that of the layout without kerning and ligatures', () => {
    const words = 'AVATAR To office: The heron, 16 × 20';
    const { advanceWidth } = fullFont('regular').layout(words, { kern: false, liga: false });
    expect(textWidth(words, 'regular', 1000, FONTS)).toBeCloseTo(advanceWidth, 9);
  });

  test('composed and decomposed letters are the same', () => {
    fc.assert(
      fc.property(preparedText(), weight, (text, of) => {
        expect(textWidth(text.normalize('NFD'), of, 10, FONTS)).toBe(textWidth(text, of, 10, FONTS));
      }),
    );
    expect(textWidth('e\u0301', 'regular', 10, FONTS)).toBe(textWidth('\u00e9', 'regular', 10, FONTS));
  });

  test('what has no shape takes no room', () => {
    expect(textWidth('a\u200b\u200d\u00ad\u202e\ufeff\t\n\u0000\ufe0fb', 'bold', 7, FONTS)).toBe(
      textWidth('ab', 'bold', 7, FONTS),
    );
  });

  test('figures stand in columns', () => {
    for (const of of WEIGHTS) {
      expect([...'0123456789'].map((digit) => textWidth(digit, of, 1, FONTS))).toEqual(Array(10).fill(0.6));
    }
  });

  test('a missing character takes the room of its box', () => {
    expect(textWidth('漢', 'regular', 1000, FONTS)).toBe(fullFont('regular').getGlyph(0).advanceWidth);
  });
});

describe('metrics', () => {
  test('are those of the letters', () => {
    for (const of of WEIGHTS) {
      const ink = (letter: string) => glyphOf(of, letter.charCodeAt(0)).bbox;
      const deepest = Math.min(...[...'gjpqy'].map((letter) => ink(letter).minY));
      expect(metrics(of, FONTS)).toEqual({
        ascent: 1.025,
        descent: 0.275,
        capHeight: ink('E').maxY / 1000,
        xHeight: ink('z').maxY / 1000,
        descender: -deepest / 1000,
      });
    }
  });
});

describe('box', () => {
  const at = { x: 30, y: 40 };
  const item = { text: 'Heron', at, anchor: 'start', size: 10, weight: 'regular', turn: 0 } as const;
  const wide = textWidth('Heron', 'regular', 10, FONTS);
  const { capHeight, descender } = metrics('regular', FONTS);

  test('lies from capitals to descenders, from end to end', () => {
    const found = textBox(item, FONTS);
    expect(found.x).toBe(30);
    expect(found.width).toBeCloseTo(wide, 12);
    expect(found.y).toBeCloseTo(40 - capHeight * 10, 12);
    expect(bottom(found)).toBeCloseTo(40 + descender * 10, 12);
  });

  test('hangs on its anchor', () => {
    expect(textBox({ ...item, anchor: 'middle' }, FONTS).x).toBeCloseTo(30 - wide / 2, 12);
    expect(right(textBox({ ...item, anchor: 'end' }, FONTS))).toBeCloseTo(30, 12);
  });

  test('turns clockwise as the eye sees it, y down', () => {
    const quarter = textBox({ ...item, turn: 90 }, FONTS);
    expect(quarter.y).toBe(40);
    expect(quarter.height).toBeCloseTo(wide, 12);
    expect(right(quarter)).toBeCloseTo(30 + capHeight * 10, 12);
    expect(quarter.x).toBeCloseTo(30 - descender * 10, 12);
    const threeQuarters = textBox({ ...item, turn: -90 }, FONTS);
    expect(bottom(threeQuarters)).toBe(40);
    expect(threeQuarters.x).toBeCloseTo(30 - capHeight * 10, 12);
    expect(textBox({ ...item, turn: 270 }, FONTS)).toEqual(threeQuarters);
  });

  test('of a slanted line holds all four corners and no more', () => {
    const found = textBox({ ...item, turn: 30 }, FONTS);
    const cos = Math.sqrt(3) / 2;
    expect(found.x).toBeCloseTo(30 - descender * 10 * 0.5, 9);
    expect(found.width).toBeCloseTo(wide * cos + (capHeight + descender) * 10 * 0.5, 9);
    expect(found.y).toBeCloseTo(40 - capHeight * 10 * cos, 9);
    expect(found.height).toBeCloseTo(wide * 0.5 + (capHeight + descender) * 10 * cos, 9);
  });

  test('reaches as high and as low as the ink of its own characters', () => {
    const accented = textBox({ ...item, text: 'Ǻ' }, FONTS);
    expect(accented.y).toBeCloseTo(40 - glyphOf('regular', 0x1fa).bbox.maxY / 100, 9);
    const low = textBox({ ...item, text: 'ặ Ḍ{' }, FONTS);
    expect(bottom(low)).toBeGreaterThanOrEqual(40 - glyphOf('regular', 0x7b).bbox.minY / 100 - 1e-9);
  });
});

describe('fit', () => {
  test('is the largest size that fits, between the limits', () => {
    fc.assert(
      fc.property(
        preparedText(),
        weight,
        fc.double({ min: 2, max: 50, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (text, of, size, width) => {
          const found = fitSize(text, of, size, width, 2, FONTS);
          expect(found).toBeGreaterThanOrEqual(2);
          expect(found).toBeLessThanOrEqual(size);
          if (found > 2) expect(textWidth(text, of, found, FONTS)).toBeLessThanOrEqual(width + 1e-9);
          if (found < size) expect(textWidth(text, of, found + 1e-6, FONTS)).toBeGreaterThan(width);
        },
      ),
    );
  });
});

describe('ellipsis', () => {
  test('shortens what is too wide, and only that', () => {
    fc.assert(
      fc.property(preparedText(), weight, fc.double({ min: 10, max: 150, noNaN: true }), (text, of, width) => {
        const found = ellipsized(text, of, 5, width, FONTS);
        expect(textWidth(found, of, 5, FONTS)).toBeLessThanOrEqual(width + 1e-9);
        if (textWidth(text, of, 5, FONTS) <= width) expect(found).toBe(text);
        else expect(text.startsWith(found.slice(0, -1))).toBe(true);
      }),
    );
    const text = 'Heron, linocut';
    expect(ellipsized(text, 'regular', 5, textWidth('Heron, …', 'regular', 5, FONTS) + 0.001, FONTS)).toBe('Heron,…');
  });
});
