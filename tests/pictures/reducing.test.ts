import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '../../src/geometry/box.ts';
import type { Size } from '../../src/geometry/point.ts';
import type { Pixels } from '../../src/pictures/model.ts';
import { openPicture, readPart } from '../../src/pictures/picture.ts';
import { Reducer } from '../../src/pictures/reducer.ts';
import { base, differences, whole } from './made.ts';

function reduced(pixels: Pixels, crop: Box, size: Size): Pixels {
  const reducer = new Reducer(pixels, crop, size);
  for (let y = 0; y < pixels.height; y++) {
    reducer.take(y, pixels.rgb.subarray(y * pixels.width * 3, (y + 1) * pixels.width * 3));
  }
  return reducer.finish();
}

/** IEC 61966-2-1, written out here. */
const light = (v: number): number => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
const value = (l: number): number => 255 * (l <= 0.0031308 ? 12.92 * l : 1.055 * l ** (1 / 2.4) - 0.055);

const pictures = fc
  .record({ width: fc.integer({ min: 1, max: 12 }), height: fc.integer({ min: 1, max: 12 }) })
  .chain(({ width, height }) =>
    fc
      .uint8Array({ minLength: width * height * 3, maxLength: width * height * 3 })
      .map((rgb): Pixels => ({ width, height, rgb })),
  );

describe('reducing', () => {
  it('leaves a picture of its own size as it is', () => {
    fc.assert(
      fc.property(pictures, (pixels) => {
        const { width, height } = pixels;
        expect(reduced(pixels, { x: 0, y: 0, width, height }, pixels).rgb).toEqual(pixels.rgb);
      }),
    );
  });

  it('gives every pixel the mean light of exactly what it covers', () => {
    fc.assert(
      fc.property(
        pictures,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (pixels, a, b) => {
          const crop = { x: a * 0.4 * pixels.width, y: b * 0.4 * pixels.height, width: 0, height: 0 };
          crop.width = Math.max(0.5, (pixels.width - crop.x) * (0.5 + b / 2));
          crop.height = Math.max(0.5, (pixels.height - crop.y) * (0.5 + a / 2));
          const size = {
            width: Math.max(1, Math.floor(crop.width * (0.3 + 0.7 * a))),
            height: Math.max(1, Math.floor(crop.height * (0.3 + 0.7 * b))),
          };
          const made = reduced(pixels, crop, size);
          const covered = (at: number, i: number, from: number, step: number): number =>
            Math.max(0, Math.min(from + step * (i + 1), at + 1) - Math.max(from + step * i, at));
          const [sx, sy] = [crop.width / size.width, crop.height / size.height];
          for (let y = 0; y < size.height; y++) {
            for (let x = 0; x < size.width; x++) {
              for (let c = 0; c < 3; c++) {
                let sum = 0;
                for (let v = 0; v < pixels.height; v++) {
                  for (let u = 0; u < pixels.width; u++) {
                    const share = covered(u, x, crop.x, sx) * covered(v, y, crop.y, sy);
                    sum += share * light(pixels.rgb[(v * pixels.width + u) * 3 + c]!);
                  }
                }
                const wanted = value(sum / (sx * sy));
                expect(Math.abs(made.rgb[(y * size.width + x) * 3 + c]! - wanted)).toBeLessThan(0.52);
              }
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('black and white hatching becomes the grey of half the light, not of half the number', () => {
    const rgb = Uint8Array.from({ length: 8 * 8 * 3 }, (_, i) => (Math.floor(i / 3) % 2 === 0 ? 0 : 255));
    const made = reduced({ width: 8, height: 8, rgb }, { x: 0, y: 0, width: 8, height: 8 }, { width: 1, height: 1 });
    expect([...made.rgb]).toEqual([188, 188, 188]);
  });

  it('a JPEG decoded smaller shows what the whole one shows, reduced', async () => {
    const bytes = await base(640, 480).jpeg({ quality: 97, chromaSubsampling: '4:4:4' }).toBuffer();
    const full = await whole(bytes);
    const opened = openPicture(bytes, 'made.jpg', []);
    if (!opened.ok) throw new Error('not read');
    for (const [width, height] of [
      [320, 240],
      [160, 120],
      [80, 60],
      [70, 50],
      [200, 150],
    ] as const) {
      const crop = { x: 64, y: 48, width: 512, height: 384 };
      const part = await readPart(opened.value, crop, { width, height }, []);
      if (!part.ok) throw new Error('not read');
      expect(part.value.width).toBeLessThanOrEqual(width);
      expect(part.value.height).toBeLessThanOrEqual(height);
      expect(Math.max(part.value.width / width, part.value.height / height)).toBeGreaterThan(0.99);
      const found = differences(part.value.rgb, reduced(full, crop, part.value).rgb);
      expect(found.mean).toBeLessThan(0.8);
    }
  });
});
