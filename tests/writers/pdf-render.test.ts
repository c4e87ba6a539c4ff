import { describe, expect, test } from 'vitest';
import { type Raster, renderPdfPage } from '../../src/dev/render.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { OTHER_READERS } from './other-readers.ts';
import { darknessAt, darkSpan } from './pixels.ts';
import { documentOf, drawingOf, group, line, pageOf, square, wholePage } from './samples.ts';

const DPI = 300;
const px = (mm: number): number => (mm * DPI) / 25.4;

/** From the outermost dark pixels; their own width counts. */
function lengthOf(raster: Raster, along: 'x' | 'y', atMm: number): number {
  const span = darkSpan(raster, along, Math.floor(px(atMm)));
  if (span === undefined) throw new Error('nothing dark there');
  return span.last - span.first + 1;
}

/** A cross of two 100 mm lines, wide enough to be dark all through. */
const drawing = drawingOf(180, 180, [group('cut', [line('heavy', 30, 50, 130, 50), line('heavy', 50, 30, 50, 130)])]);

describe('100 mm are 100 mm ± 1 pixel at 300 dpi', () => {
  test('however the drawing is turned', async () => {
    const part = { x: 0, y: 0, width: 180, height: 180, pageX: 10, pageY: 20 };
    for (const [rotation, x, y] of [
      [0, 60, 70],
      [90, 140, 70],
      [180, 140, 150],
      [270, 60, 150],
    ] as const) {
      const raster = await renderPdfPage(
        await writePdf(documentOf(drawing, [pageOf(1, { part, rotation })]), { fonts: FONTS }),
        0,
        DPI,
      );
      expect([raster.width, raster.height]).toEqual([2480, 3508]);
      expect(Math.abs(lengthOf(raster, 'x', y) - px(100))).toBeLessThanOrEqual(1);
      expect(Math.abs(lengthOf(raster, 'y', x) - px(100))).toBeLessThanOrEqual(1);
    }
  });

  test('corrected for a printer that is 0.35 % short in x and 0.2 % long in y', async () => {
    const part = { x: 0, y: 0, width: 180, height: 180, pageX: 10, pageY: 20 };
    const page = pageOf(1, { part, scale: { x: 0.9965, y: 1.002 }, over: [line('heavy', 80, 280, 180, 280)] });
    const raster = await renderPdfPage(await writePdf(documentOf(drawing, [page]), { fonts: FONTS }), 0, DPI);
    expect(Math.abs(lengthOf(raster, 'x', 70 / 1.002) - px(100 / 0.9965))).toBeLessThanOrEqual(1);
    expect(Math.abs(lengthOf(raster, 'y', 60 / 0.9965) - px(100 / 1.002))).toBeLessThanOrEqual(1);
    expect(Math.abs(lengthOf(raster, 'x', 280 / 1.002) - px(100 / 0.9965))).toBeLessThanOrEqual(1);
  });

  for (const { name, installed, render } of OTHER_READERS) {
    test.skipIf(!installed)(`in ${name} too (skipped where it is not installed)`, async () => {
      const raster = render(await writePdf(wholePage(drawing), { fonts: FONTS }), DPI);
      expect(Math.abs(lengthOf(raster, 'x', 50) - px(100))).toBeLessThanOrEqual(1);
      expect(Math.abs(lengthOf(raster, 'y', 50) - px(100))).toBeLessThanOrEqual(1);
    });
  }
});

test('nothing of the drawing is seen outside its part', async () => {
  const black = drawingOf(100, 100, [group('cut', [square(0, 0, 100)])]);
  const part = { x: 20, y: 30, width: 50, height: 25, pageX: 40, pageY: 60 };
  for (const [rotation, width, height] of [
    [0, 50, 25],
    [90, 25, 50],
    [180, 50, 25],
    [270, 25, 50],
  ] as const) {
    const bytes = await writePdf(documentOf(black, [pageOf(1, { part, rotation })]), { fonts: FONTS });
    const raster = await renderPdfPage(bytes, 0, DPI);
    const across = darkSpan(raster, 'x', Math.floor(px(65)))!;
    expect(Math.abs(across.first - px(40))).toBeLessThanOrEqual(1);
    expect(Math.abs(across.last + 1 - px(40 + width))).toBeLessThanOrEqual(1);
    const down = darkSpan(raster, 'y', Math.floor(px(45)))!;
    expect(Math.abs(down.first - px(60))).toBeLessThanOrEqual(1);
    expect(Math.abs(down.last + 1 - px(60 + height))).toBeLessThanOrEqual(1);
  }
});

test('subpaths are filled even-odd, and what is under lies under', async () => {
  const ring = (radius: number) => ({
    start: { x: 50 + radius, y: 50 },
    closed: true,
    segments: [{ kind: 'arc', centre: { x: 50, y: 50 }, to: { x: 50 + radius, y: 50 }, clockwise: true }] as const,
  });
  const rings = drawingOf(100, 100, [group('cut', [{ kind: 'path', fill: 0, paths: [ring(40), ring(20)] }])]);
  const part = { x: 0, y: 0, width: 100, height: 100, pageX: 0, pageY: 0 };
  const page = pageOf(1, { part, under: [square(0, 40, 20, 0.6)], over: [square(80, 40, 20, 1)] });
  const raster = await renderPdfPage(await writePdf(documentOf(rings, [page]), { fonts: FONTS }), 0, DPI);
  expect(darknessAt(raster, DPI, 50, 50)).toBe(0);
  expect(darknessAt(raster, DPI, 50, 80)).toBe(1);
  expect(darknessAt(raster, DPI, 15, 50)).toBe(1);
  expect(darknessAt(raster, DPI, 5, 50)).toBeCloseTo(0.4, 2);
  expect(darknessAt(raster, DPI, 85, 50)).toBe(0);
  const hole = darkSpan(raster, 'y', Math.floor(px(50)))!;
  expect(Math.abs(hole.last - hole.first + 1 - px(80))).toBeLessThanOrEqual(1);
});
