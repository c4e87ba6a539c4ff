import { describe, expect, test } from 'vitest';
import { type Raster, renderPdfPage } from '../../src/dev/render.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { openObjects } from '../readers/pdf-objects.ts';
import { OTHER_READERS } from './other-readers.ts';
import { darknessAt } from './pixels.ts';
import { documentOf, drawingOf, group, line, pageOf, square, wholePage } from './samples.ts';

const STATES = [
  ['cut', true],
  ['marks', false],
  ['readings', true],
  ['grid', false],
] as const;
const DPI = 72;

/** A black square for each group, side by side, 10 mm apart. */
const drawing = drawingOf(
  40,
  10,
  STATES.map(([name, shown], i) =>
    group(name, [square(10 * i + 2, 2, 6), line('heavy', 10 * i, 9, 10 * i + 9, 9)], shown),
  ),
);

function seen(raster: Raster): readonly boolean[] {
  return STATES.map((_, i) => {
    const darkness = darknessAt(raster, DPI, 10 * i + 5, 5);
    expect(darkness === 0 || darkness === 1).toBe(true);
    return darkness === 1;
  });
}

const AT_FIRST = STATES.map(([, shown]) => shown);

describe('optional layers are on and off at first as the drawing says', () => {
  test('in pdf.js', async () => {
    const { layers, pages } = await readPdf(await writePdf(wholePage(drawing), { fonts: FONTS }));
    expect(layers).toEqual(STATES.map(([name, shown]) => ({ name: `All of ${name}`, shown })));
    expect(pages[0]!.lines.filter(({ fill }) => fill === undefined).map(({ shown }) => shown)).toEqual(AT_FIRST);
  });

  test('in PDFium', async () => {
    expect(seen(await renderPdfPage(await writePdf(wholePage(drawing), { fonts: FONTS }), 0, DPI))).toEqual(AT_FIRST);
  });

  for (const { name, installed, render } of OTHER_READERS) {
    test.skipIf(!installed)(`in ${name} (skipped where it is not installed)`, async () => {
      expect(seen(render(await writePdf(wholePage(drawing), { fonts: FONTS }), DPI))).toEqual(AT_FIRST);
    });
  }

  test('by the default configuration alone, since a usage would make readers disagree', async () => {
    const { catalog } = await openObjects(await writePdf(wholePage(drawing), { fonts: FONTS }));
    const layer = { Type: '/OCG', Name: expect.any(String) };
    expect(catalog.OCProperties).toEqual({
      OCGs: [layer, layer, layer, layer],
      D: { Name: expect.any(String), BaseState: '/ON', OFF: [layer, layer], Order: [layer, layer, layer, layer] },
    });
  });

  test('furniture belongs to no layer', async () => {
    const part = { x: 0, y: 0, width: 40, height: 10, pageX: 20, pageY: 20 };
    const page = pageOf(1, { part, under: [line('fine', 0, 0, 5, 5)], over: [line('fine', 0, 5, 5, 5)] });
    const { lines } = (await readPdf(await writePdf(documentOf(drawing, [page]), { fonts: FONTS }))).pages[0]!;
    expect(lines.filter(({ form }) => !form).map(({ layer, shown }) => [layer, shown])).toEqual([
      [undefined, true],
      [undefined, true],
    ]);
  });
});

describe('a flattened file', () => {
  test('holds the groups asked for, in the order of the drawing, and no layers', async () => {
    const bytes = await writePdf(wholePage(drawing), { fonts: FONTS, show: ['grid', 'cut'] });
    expect(seen(await renderPdfPage(bytes, 0, DPI))).toEqual([true, false, false, true]);
    const { layers, pages } = await readPdf(bytes);
    expect(layers).toEqual([]);
    expect(pages[0]!.lines.filter(({ fill }) => fill === undefined).map(({ from }) => Math.round(from.x))).toEqual([
      0, 30,
    ]);
    const { catalog, contents } = await openObjects(bytes);
    expect(Object.keys(catalog)).not.toContain('OCProperties');
    expect(contents.join()).not.toContain('BDC');
  });

  test('of nothing is empty', async () => {
    const bytes = await writePdf(wholePage(drawing), { fonts: FONTS, show: [] });
    expect(seen(await renderPdfPage(bytes, 0, DPI))).toEqual([false, false, false, false]);
  });

  test('of a group that the drawing does not have is a mistake of the program', async () => {
    await expect(writePdf(wholePage(drawing), { fonts: FONTS, show: ['cuts'] })).rejects.toThrow(
      'no group is named "cuts"',
    );
  });
});
