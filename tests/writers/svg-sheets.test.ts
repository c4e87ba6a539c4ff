import fc from 'fast-check';
import { expect, test } from 'vitest';
import { renderPdfPage, renderSvg } from '../../src/dev/render.ts';
import type { LineItem } from '../../src/drawing/model.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { readPdf, visible } from '../readers/pdf-lines.ts';
import { readSvg } from '../readers/svg-elements.ts';
import { everything } from './everything.ts';
import { blockDifference } from './pixels.ts';
import { documentOf, documents, drawingOf, group, line, pageOf } from './samples.ts';
import { writePageSvg } from './svg-in-node.ts';

const TOLERANCE = 0.001;

test('a sheet is as large as its paper and says its name and size', () => {
  const read = readSvg(writePageSvg(everything, everything.pages[1]!, { fonts: FONTS }));
  expect([read.width, read.height]).toEqual(['210mm', '297mm']);
  expect(read.viewBox).toEqual([0, 0, 210, 297]);
  expect(read.titles).toEqual(['Sample for the bench, P2 (210 × 297 mm)']);
  expect(read.groups.map(({ id }) => id)).toEqual(['under', 'cut', 'curves', 'words', 'over']);
});

test('every line that the page of the PDF shows lies at the same place on the sheet', async () => {
  await fc.assert(
    fc.asyncProperty(documents, async (document) => {
      const pdf = await readPdf(await writePdf(document, { fonts: FONTS }));
      document.pages.forEach((page, i) => {
        const svg = readSvg(writePageSvg(document, page, { fonts: FONTS }));
        const seen = pdf.pages[i]!.lines.filter((found) => {
          const piece = found.shown ? visible(found) : undefined;
          if (piece === undefined) return false;
          return !found.form || Math.hypot(piece.from.x - piece.to.x, piece.from.y - piece.to.y) > TOLERANCE;
        });
        for (const { from, to } of seen) {
          const same = svg.lines.some(
            (found) =>
              Math.hypot(found.from.x - from.x, found.from.y - from.y) < 2 * TOLERANCE &&
              Math.hypot(found.to.x - to.x, found.to.y - to.y) < 2 * TOLERANCE,
          );
          expect(same).toBe(true);
        }
        const shown = document.drawing.groups.filter((g) => g.shown).flatMap((g) => g.items as readonly LineItem[]);
        expect(svg.lines.length).toBeLessThanOrEqual(shown.length + page.under.length + page.over.length);
        const { x, y, width, height } = page.part!;
        svg.clips.window!.forEach((side, k) => {
          expect(Math.abs(side - [x, y, width, height][k]!)).toBeLessThan(TOLERANCE);
        });
      });
    }),
    { numRuns: 40 },
  );
});

test('what lies wholly outside the part is left out', () => {
  const drawing = drawingOf(100, 100, [
    group('cut', [line('heavy', 10, 10, 90, 10), line('heavy', 10, 80, 90, 80)]),
    group('marks', [line('fine', 70, 0, 70, 100)]),
  ]);
  const part = { x: 0, y: 0, width: 50, height: 50, pageX: 10, pageY: 10 };
  const document = documentOf(drawing, [pageOf(1, { part })]);
  const { lines, groups } = readSvg(writePageSvg(document, document.pages[0]!, { fonts: FONTS }));
  expect(groups.map(({ id }) => id)).toEqual(['cut']);
  expect(lines.map(({ from, to }) => [from, to])).toEqual([
    [
      { x: 20, y: 20 },
      { x: 100, y: 20 },
    ],
  ]);
});

test('a sheet looks like the page of the PDF', async () => {
  const bytes = await writePdf(everything, { fonts: FONTS });
  for (const [i, page] of everything.pages.entries()) {
    const [a, b] = await Promise.all([
      renderSvg(writePageSvg(everything, page, { fonts: FONTS }), 150),
      renderPdfPage(bytes, i, 150),
    ]);
    expect(blockDifference(a, b)).toBeLessThan(0.15);
  }
});
