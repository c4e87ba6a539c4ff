import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bytesOfBase64, plainBytesOfBase64 } from '../../src/fonts/base64.ts';
import { fontFor, runs } from '../../src/fonts/embed.ts';
import { textWidth } from '../../src/fonts/measure.ts';
import { tables } from '../../src/fonts/prepared/tables.ts';
import { FONTS } from './loaded.ts';
import { preparedText, weight } from './texts.ts';

test('runs spell the text, and are as wide as it is measured', () => {
  fc.assert(
    fc.property(preparedText(), weight, (text, of) => {
      const found = runs(text, of, FONTS);
      const spelled = found.flatMap(({ font, glyphs }) =>
        glyphs.map((glyph) => tables.find((table) => table.id === font)!.codePoints[glyph - 1]!),
      );
      expect(String.fromCodePoint(...spelled)).toBe(text.replaceAll('\u00ad', ''));
      for (const { font, glyphs, advance } of found) {
        const { widths } = fontFor(font, FONTS);
        expect(advance).toBeCloseTo(
          glyphs.reduce((sum, glyph) => sum + widths[glyph]! / 1000, 0),
          12,
        );
        expect(glyphs.length).toBeGreaterThan(0);
      }
      expect(found.reduce((sum, run) => sum + run.advance, 0)).toBeCloseTo(textWidth(text, of, 1, FONTS), 12);
      found.slice(1).forEach((run, i) => {
        expect(run.font).not.toBe(found[i]!.font);
      });
    }),
  );
});

test('a borrowed sign is a run of its own between the family’s', () => {
  expect(runs('a ☐ b', 'bold', FONTS).map((run) => run.font)).toEqual(['bold', 'bold-fallback', 'bold']);
  expect(runs('\u200b', 'bold', FONTS)).toEqual([]);
});

test('a font is decoded once, and an unknown one is a fault of the program', () => {
  expect(fontFor('regular', FONTS)).toBe(fontFor('regular', FONTS));
  expect(() => fontFor('italic', FONTS)).toThrow('italic');
});

test('both decoders of base64 give back what was encoded', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 100 }), (bytes) => {
      const text = Buffer.from(bytes).toString('base64');
      expect([...bytesOfBase64(text)]).toEqual([...bytes]);
      expect([...plainBytesOfBase64(text)]).toEqual([...bytes]);
    }),
  );
});
