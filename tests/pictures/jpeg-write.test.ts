import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { codeBook } from '../../src/pictures/jpeg-codes.ts';
import { writeJpeg } from '../../src/pictures/jpeg-write.ts';
import { differences, rgbOf } from './made.ts';

const pixels = (width: number, height: number) => ({ width, height, rgb: new Uint8Array(rgbOf(width, height)) });

describe('writing a JPEG', () => {
  it.each([
    [1, 1],
    [8, 8],
    [9, 17],
    [61, 43],
    [300, 200],
  ])('%i × %i pixels are read back by another library', async (width, height) => {
    const made = pixels(width, height);
    const { jpeg, channels } = writeJpeg(made);
    const { data, info } = await sharp(jpeg).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height, info.channels, channels]).toEqual([width, height, 3, 3]);
    const { most, mean } = differences(data, made.rgb);
    expect(most).toBeLessThan(24);
    expect(mean).toBeLessThan(2);
  });

  it('a grey picture is written in one component', async () => {
    const { rgb } = pixels(61, 43);
    for (let i = 0; i < rgb.length; i += 3) rgb[i + 1] = rgb[i + 2] = rgb[i]!;
    const { jpeg, channels } = writeJpeg({ width: 61, height: 43, rgb });
    expect(channels).toBe(1);
    expect((await sharp(jpeg).metadata()).channels).toBe(1);
  });

  it('noise of the worst kind is read back too, and the same pixels give the same bytes', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ minLength: 16 * 16 * 3, maxLength: 16 * 16 * 3 }), async (rgb) => {
        const made = { width: 16, height: 16, rgb };
        const { jpeg } = writeJpeg(made);
        expect(writeJpeg(made).jpeg).toEqual(jpeg);
        const { data } = await sharp(jpeg).toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });
        expect(data.length === rgb.length ? differences(data, rgb).mean : 0).toBeLessThan(12);
      }),
      { numRuns: 40 },
    );
  });
});

describe('codes', () => {
  it('are prefix-free, no longer than 16 bits, never of ones alone, shorter for what comes more often', () => {
    const frequencies = fc.array(fc.oneof(fc.constant(0), fc.nat({ max: 9 }), fc.nat({ max: 1e9 })), {
      minLength: 256,
      maxLength: 256,
    });
    fc.assert(
      fc.property(frequencies, (counts) => {
        const book = codeBook(counts);
        const used = counts.flatMap((count, value) => (count > 0 ? [value] : []));
        expect(book.values.length).toBe(used.length);
        expect([...book.values].sort((a, b) => a - b)).toEqual(used);
        let room = 0;
        for (const value of used) {
          const length = book.lengths[value]!;
          expect(length).toBeGreaterThan(0);
          expect(length).toBeLessThanOrEqual(16);
          room += 2 ** -length;
          expect(book.codes[value]!).toBeLessThan(2 ** length - 1);
        }
        expect(room).toBeLessThan(1);
        const bits = (value: number): string => book.codes[value]!.toString(2).padStart(book.lengths[value]!, '0');
        const codes = used.map(bits).sort();
        expect(codes.filter((code, i) => codes[i + 1]?.startsWith(code) === true)).toEqual([]);
      }),
      { numRuns: 60 },
    );
    // Fibonacci's numbers make the longest codes that there are.
    const worst = Array.from({ length: 256 }, (_, i) => (i < 40 ? Math.round(1.618 ** i) : 0));
    expect(Math.max(...codeBook(worst).lengths)).toBe(16);
  });
});
