import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LineItem } from '../../src/drawing/model.ts';
import { polygon } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Part } from '../../src/paper/model.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { type ReadLine, readPdf } from '../readers/pdf-lines.ts';
import { openObjects } from '../readers/pdf-objects.ts';
import { documentOf, documents, drawingOf, group, line, PENS, pageOf, type SamplePage, wholePage } from './samples.ts';

const TOLERANCE = 0.001;
const POINT = 25.4 / 72;

/** Where a point of the drawing lies on the page, worked out here and not by the engine. */
function onPage({ x, y }: Point, part: Part, { rotation, scale }: SamplePage): Point {
  const [u, v] = [x - part.x, y - part.y];
  const [du, dv] = {
    0: [u, v],
    90: [part.height - v, u],
    180: [part.width - u, part.height - v],
    270: [v, part.width - u],
  }[rotation] as [number, number];
  return { x: (part.pageX + du) / scale.x, y: (part.pageY + dv) / scale.y };
}

function expectNear(read: Point, wanted: Point): void {
  expect(Math.hypot(read.x - wanted.x, read.y - wanted.y)).toBeLessThan(TOLERANCE);
}

function expectLine(
  read: ReadLine | undefined,
  item: LineItem,
  place: (p: Point) => Point,
  scale: SamplePage['scale'],
): void {
  if (read === undefined) throw new Error('a line is missing');
  expectNear(read.from, place(item.from));
  expectNear(read.to, place(item.to));
  const pen = PENS[item.pen as keyof typeof PENS];
  const k = 1 / Math.sqrt(scale.x * scale.y);
  expect(Math.abs(read.widthPt * POINT - pen.width * k)).toBeLessThan(TOLERANCE);
  expect(read.dash.length).toBe(pen.dash.length);
  read.dash.forEach((part, i) => {
    expect(Math.abs(part - pen.dash[i]! * k)).toBeLessThan(TOLERANCE);
  });
  expect(read.cap).toBe(pen.cap);
  expect(read.fill).toBeUndefined();
}

test('every line is read back on every page, once and in order, within 0.001 mm, with its pen', async () => {
  await fc.assert(
    fc.asyncProperty(documents, async (document) => {
      const read = await readPdf(await writePdf(document, { fonts: FONTS }));
      expect(read.pages.length).toBe(document.pages.length);
      const drawn = document.drawing.groups.flatMap((g) => g.items.map((item) => ({ item: item as LineItem, of: g })));
      for (const [i, page] of document.pages.entries()) {
        const { lines } = read.pages[i]!;
        const inForm = lines.filter((found) => found.form);
        expect(inForm.length).toBe(drawn.length);
        drawn.forEach(({ item, of }, n) => {
          expectLine(inForm[n], item, (p) => onPage(p, page.part!, page), page.scale);
          expect(inForm[n]!.layer).toBe(of.label);
          expect(inForm[n]!.shown).toBe(of.shown);
        });
        const furniture = lines.filter((found) => !found.form);
        const wanted = [...page.under, ...page.over] as LineItem[];
        expect(furniture.length).toBe(wanted.length);
        const { scale } = page;
        wanted.forEach((item, n) => {
          expectLine(furniture[n], item, (p) => ({ x: p.x / scale.x, y: p.y / scale.y }), scale);
          expect(furniture[n]!.layer).toBeUndefined();
        });
      }
    }),
    { numRuns: 60 },
  );
});

test('a page shows its part and no more: the clip is the turned part at its place', async () => {
  await fc.assert(
    fc.asyncProperty(documents, async (document) => {
      const read = await readPdf(await writePdf(document, { fonts: FONTS }));
      for (const [i, page] of document.pages.entries()) {
        const { part, paper } = page;
        const inForm = read.pages[i]!.lines.find((found) => found.form);
        if (inForm === undefined) continue;
        const ends = [part!, { x: part!.x + part!.width, y: part!.y + part!.height }].map((p) =>
          onPage(p, part!, page),
        );
        const left = Math.max(0, Math.min(ends[0]!.x, ends[1]!.x));
        const top = Math.max(0, Math.min(ends[0]!.y, ends[1]!.y));
        const right = Math.min(paper.width, Math.max(ends[0]!.x, ends[1]!.x));
        const bottom = Math.min(paper.height, Math.max(ends[0]!.y, ends[1]!.y));
        const { clip } = inForm;
        if (right <= left || bottom <= top) {
          expect(clip.width * clip.height).toBeLessThan(TOLERANCE);
          continue;
        }
        expectNear(clip, { x: left, y: top });
        expectNear({ x: clip.x + clip.width, y: clip.y + clip.height }, { x: right, y: bottom });
      }
    }),
    { numRuns: 60 },
  );
});

test('colours and greys are told apart, and said again after the drawing', async () => {
  const drawing = drawingOf(100, 100, [group('cut', [line('dashed', 0, 0, 100, 100), line('heavy', 0, 50, 100, 50)])]);
  const part = { x: 0, y: 0, width: 100, height: 100, pageX: 5, pageY: 5 };
  const page = pageOf(1, { part, under: [line('heavy', 0, 1, 9, 1)], over: [line('heavy', 0, 2, 9, 2)] });
  const { lines } = (await readPdf(await writePdf(documentOf(drawing, [page]), { fonts: FONTS }))).pages[0]!;
  expect(lines.map((found) => [found.stroke, found.dash.length, found.form])).toEqual([
    ['#000000', 0, false],
    ['#204080', 2, true],
    ['#000000', 0, true],
    ['#000000', 0, false],
  ]);
});

test('paths have every side once, the closing one too, and no corner twice', async () => {
  const corners = [
    { x: 10, y: 10 },
    { x: 60, y: 10 },
    { x: 60, y: 40 },
  ];
  for (const [closed, sides] of [
    [true, 3],
    [false, 2],
  ] as const) {
    const drawing = drawingOf(100, 100, [
      group('cut', [{ kind: 'path', pen: 'heavy', paths: [polygon(corners, closed)] }]),
    ]);
    const bytes = await writePdf(wholePage(drawing), { fonts: FONTS });
    const { lines } = (await readPdf(bytes)).pages[0]!;
    expect(lines.length).toBe(sides);
    lines.forEach(({ from, to, path }, i) => {
      expectNear(from, corners[i]!);
      expectNear(to, corners[(i + 1) % 3]!);
      expect(path).toBe(lines[0]!.path);
    });
    const [form] = (await openObjects(bytes)).contents;
    expect(form!.match(/ l(?= )/g)!.length).toBe(2);
    expect(/ h(?= )/.test(form!)).toBe(closed);
  }
});

test('numbers are plain: no exponent, no minus zero, at most five digits after the point', async () => {
  const tiny = drawingOf(1000, 1000, [group('cut', [line('fine', 1e-9, 1e-7, 1 / 3, 999.9999999)])]);
  const part = { x: 0, y: 0, width: 1000, height: 1000, pageX: 0, pageY: 0 };
  const page = pageOf(1, { rotation: 90, part, under: [line('fine', 1e-9, 297, -1e-9, 1e-10)] });
  const { contents } = await openObjects(await writePdf(documentOf(tiny, [page]), { fonts: FONTS }));
  expect(contents.length).toBe(2);
  for (const content of contents) {
    expect(content).toMatch(/ [ml] /);
    expect(content).not.toMatch(/\d[eE]|(?<![\d.])-0(?![.\d])|\.\d{6}/);
  }
});
