import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { textWidth } from '../../src/fonts/measure.ts';
import { wrap } from '../../src/text/wrap.ts';
import { FONTS } from '../fonts/loaded.ts';
import { prose, weight } from '../fonts/texts.ts';

const wrapped = (text: string, of: 'regular' | 'bold', size: number, width: number, fonts: typeof FONTS) =>
  wrap(text, width, (part) => textWidth(part, of, size, fonts));

describe('wrap', () => {
  const blank = /[ \t]+/g;

  test('no line is wider than allowed, nothing is lost, and no line could take the next word', () => {
    fc.assert(
      fc.property(prose, weight, fc.double({ min: 12, max: 120, noNaN: true }), (text, of, width) => {
        const lines = wrapped(text, of, 4, width, FONTS);
        for (const line of lines) {
          expect(textWidth(line, of, 4, FONTS)).toBeLessThanOrEqual(width + 1e-9);
          expect(line).not.toMatch(/^ | $|\n/);
        }
        expect(lines.join('').replace(blank, '')).toBe(text.normalize('NFC').replace(/[ \n]+/g, ''));
      }),
      { numRuns: 500 },
    );
  });

  test('each line is as full as it can be', () => {
    const words = 'one two three four five six seven eight nine ten';
    const lines = wrapped(words, 'regular', 5, 40, FONTS);
    expect(lines.join(' ')).toBe(words);
    expect(lines.length).toBeGreaterThan(2);
    for (const [i, line] of lines.slice(0, -1).entries()) {
      expect(textWidth(`${line} ${lines[i + 1]!.split(' ')[0]}`, 'regular', 5, FONTS)).toBeGreaterThan(40);
    }
  });

  test('keeps line breaks, breaks after hyphens between letters but not in 16-1/2, and never at a no-break space', () => {
    const narrow = textWidth('lino-', 'regular', 5, FONTS) + 0.001;
    expect(wrapped('lino-cut', 'regular', 5, narrow, FONTS)).toEqual(['lino-', 'cut']);
    expect(wrapped('a 16-1/2', 'regular', 5, textWidth('16-1/2', 'regular', 5, FONTS) + 0.001, FONTS)).toEqual([
      'a',
      '16-1/2',
    ]);
    expect(wrapped('a 16\u00a0mm', 'regular', 5, textWidth('16 mm', 'regular', 5, FONTS) + 0.001, FONTS)).toEqual([
      'a',
      '16\u00a0mm',
    ]);
    expect(wrapped('a\n\nb\r\nc', 'regular', 5, 100, FONTS)).toEqual(['a', '', 'b', 'c']);
    expect(wrapped('', 'regular', 5, 100, FONTS)).toEqual(['']);
  });

  test('no size is broken, unless it is wider than a line', () => {
    const as = (text: string, longest: string) =>
      wrapped(text, 'regular', 5, textWidth(longest, 'regular', 5, FONTS) + 0.001, FONTS);
    expect(as('blank of 15 3/4 × 19 3/4 in, two', '15 3/4 × 19 3/4 in,')).toEqual([
      'blank of',
      '15 3/4 × 19 3/4 in,',
      'two',
    ]);
    expect(as('sides 2¾, bottom 3½ in', 'sides 2¾, bottom 3½')).toEqual(['sides 2¾, bottom', '3½ in']);
    expect(as('by 5⁄₁₆ in all round', 'by 5⁄₁₆ in')).toEqual(['by 5⁄₁₆ in', 'all', 'round']);
    expect(as('9 inside, 3 mmx', '9 inside, 3')).toEqual(['9 inside, 3', 'mmx']);
    expect(as('400 × 500 mm', '400 ×')).toEqual(['400 ×', '500', 'mm']);
  });

  test('a word wider than a line is broken inside, a character wider than it stands alone', () => {
    expect(wrapped('mmmm', 'bold', 5, textWidth('mm', 'bold', 5, FONTS) + 0.001, FONTS)).toEqual(['mm', 'mm']);
    expect(wrapped('mi m', 'bold', 5, 1, FONTS)).toEqual(['m', 'i', 'm']);
  });

  test('a hundred thousand characters without a space take their time once', () => {
    const lines = wrapped('x'.repeat(100_000), 'regular', 4, 60, FONTS);
    expect(lines.join('').length).toBe(100_000);
  });
});
