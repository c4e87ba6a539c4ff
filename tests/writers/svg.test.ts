import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { renderPdfPage, renderSvg } from '../../src/dev/render.ts';
import type { Item, LineItem } from '../../src/drawing/model.ts';
import { loadFonts } from '../../src/fonts/load.ts';
import { polygon } from '../../src/geometry/path.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { readSvg } from '../readers/svg-elements.ts';
import { everything } from './everything.ts';
import { blockDifference, darkSpan } from './pixels.ts';
import { documents, drawingOf, group, line, PENS, square, wholePage } from './samples.ts';
import { writeSvg } from './svg-in-node.ts';

const TOLERANCE = 0.001;
const near = (a: { x: number; y: number }, b: { x: number; y: number }): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) < TOLERANCE;

describe('the size', () => {
  test('is in mm, and the viewBox says the same numbers from 0 0', () => {
    const read = readSvg(writeSvg(drawingOf(406.4, 508, []), { fonts: FONTS }));
    expect([read.width, read.height]).toEqual(['406.4mm', '508mm']);
    expect(read.viewBox).toEqual([0, 0, 406.4, 508]);
  });

  test('stands in the one title', () => {
    expect(
      readSvg(writeSvg({ ...drawingOf(406.4, 508, []), title: 'Heron & <heron>' }, { fonts: FONTS })).titles,
    ).toEqual(['Heron & <heron> (406.4 × 508 mm)']);
  });

  test('is kept within 0.001 mm', () => {
    const read = readSvg(writeSvg(drawingOf(1000 / 3, 2000 / 3, []), { fonts: FONTS }));
    expect(Math.abs(read.viewBox[2]! - 1000 / 3)).toBeLessThan(TOLERANCE);
    expect(`${read.viewBox[3]}mm`).toBe(read.height);
  });
});

test('every line of what is shown is one line, in order, within 0.001 mm, with its pen', () => {
  fc.assert(
    fc.property(documents, ({ drawing }) => {
      const read = readSvg(writeSvg(drawing, { fonts: FONTS }));
      const shown = drawing.groups.filter((g) => g.shown);
      expect(read.groups).toEqual(shown.map(({ name, label }) => ({ id: name, label })));
      const wanted = shown.flatMap((g) => g.items.map((item) => ({ item: item as LineItem, name: g.name })));
      expect(read.lines.length).toBe(wanted.length);
      wanted.forEach(({ item, name }, i) => {
        const { from, to, attributes, groups } = read.lines[i]!;
        expect(near(from, item.from) && near(to, item.to)).toBe(true);
        expect(groups).toEqual([name]);
        const pen = PENS[item.pen as keyof typeof PENS];
        expect(attributes['stroke-width']).toBe(String(pen.width));
        expect(attributes['stroke-linecap']).toBe(pen.cap);
        expect(attributes['stroke-dasharray']).toBe(pen.dash.length === 0 ? undefined : pen.dash.join(' '));
        expect(attributes.stroke).toBe(
          { heavy: '#000000', fine: '#595959', dashed: '#204080', dotted: '#999999' }[item.pen],
        );
      });
    }),
  );
});

test('groups that are not shown are left out, unless they are asked for', () => {
  const drawing = drawingOf(10, 10, [
    group('cut', [line('heavy', 0, 0, 1, 1)]),
    group('grid', [line('fine', 0, 0, 1, 2)], false),
    group('marks', [line('fine', 0, 0, 1, 3)]),
  ]);
  const ids = (show?: readonly string[]): readonly string[] =>
    readSvg(writeSvg(drawing, { fonts: FONTS, ...(show === undefined ? {} : { show }) })).groups.map(({ id }) => id);
  expect(ids()).toEqual(['cut', 'marks']);
  expect(ids(['marks', 'grid'])).toEqual(['grid', 'marks']);
  expect(() => ids(['girds'])).toThrow('no group is named "girds"');
});

test('straight paths have every side, the closing one too, and no corner twice', () => {
  const corners = [
    { x: 10, y: 10 },
    { x: 60, y: 10 },
    { x: 60, y: 40 },
  ];
  const data = (closed: boolean): string => {
    const paths = [polygon(corners, closed)];
    return readSvg(
      writeSvg(drawingOf(99, 99, [group('cut', [{ kind: 'path', pen: 'heavy', paths }])]), { fonts: FONTS }),
    ).paths[0]!.attributes.d!;
  };
  expect(data(true)).toBe('M10 10L60 10L60 40Z');
  expect(data(false)).toBe('M10 10L60 10L60 40');
});

describe('curves', () => {
  const ringOf = (radius: number, sweep: number, clockwise: boolean): Item => {
    const centre = { x: 1000, y: 1000 };
    const end = clockwise ? sweep : -sweep;
    const to = { x: 1000 + radius * Math.cos(end), y: 1000 + radius * Math.sin(end) };
    const segments = [{ kind: 'arc', centre, to, clockwise }] as const;
    return { kind: 'path', pen: 'heavy', paths: [{ start: { x: 1000 + radius, y: 1000 }, segments, closed: false }] };
  };

  test('arcs stay arcs, and lead back to their own centre and radius', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.oneof(fc.double({ min: 0.05, max: 6.2, noNaN: true }), fc.constantFrom(Math.PI, 2 * Math.PI)),
        fc.boolean(),
        (radius, sweep, clockwise) => {
          const drawing = drawingOf(2000, 2000, [group('cut', [ringOf(radius, sweep, clockwise)])]);
          const { segments } = readSvg(writeSvg(drawing, { fonts: FONTS })).paths[0]!;
          let travelled = 0;
          for (const arc of segments) {
            if (arc.kind !== 'arc') throw new Error('it became something else');
            expect(arc.clockwise).toBe(clockwise);
            const [a, b] = [arc.from, arc.to].map((p) => Math.atan2(p.y - 1000, p.x - 1000)) as [number, number];
            const turn = ((clockwise ? b - a : a - b) + 4 * Math.PI) % (2 * Math.PI);
            travelled += turn;
            // The middle of the arc as drawn lies on the circle that was meant.
            const [ux, uy] = [arc.from.x + arc.to.x - 2 * arc.centre.x, arc.from.y + arc.to.y - 2 * arc.centre.y];
            const k = arc.radius / Math.hypot(ux, uy);
            const middle = { x: arc.centre.x + k * ux, y: arc.centre.y + k * uy };
            expect(Math.abs(Math.hypot(middle.x - 1000, middle.y - 1000) - radius)).toBeLessThan(TOLERANCE);
          }
          expect(Math.abs(travelled - sweep)).toBeLessThan(0.001);
        },
      ),
    );
  });

  test('cubics stay cubics, closed paths are closed, holes are even-odd', () => {
    const { paths } = readSvg(writeSvg(everything.drawing, { fonts: FONTS }));
    const ring = paths.find(({ attributes }) => attributes.id === 'ring')!;
    expect(ring.segments.map(({ kind }) => kind)).toEqual(['arc', 'arc', 'arc', 'arc', 'arc', 'arc', 'cubic']);
    expect([ring.closed, ring.open]).toEqual([2, 0]);
    expect(ring.attributes).toMatchObject({ fill: '#f0c040', 'fill-rule': 'evenodd', 'stroke-linejoin': 'round' });
  });
});

test('attributes are plain: no styles, no classes, no units but on the size, no live text', () => {
  const text = writeSvg(everything.drawing, { fonts: FONTS });
  const { attributes } = readSvg(text);
  expect([...attributes].sort()).toEqual(
    [
      ...['xmlns', 'version', 'width', 'height', 'viewBox', 'id', 'data-label', 'role', 'aria-label'],
      ...['x1', 'y1', 'x2', 'y2', 'd', 'fill', 'fill-rule', 'stroke', 'stroke-width', 'stroke-linecap'],
      ...['stroke-linejoin', 'stroke-miterlimit', 'stroke-dasharray'],
    ].sort(),
  );
  expect(text).not.toMatch(/px|<text|<style|NaN|Infinity|undefined|\d[eE][-+]?\d/);
});

test('an id stands once', () => {
  const twice = { ...line('heavy', 0, 0, 1, 1), id: 'cut' };
  const { groups, lines } = readSvg(writeSvg(drawingOf(10, 10, [group('cut', [twice, twice])]), { fonts: FONTS }));
  expect(groups[0]!.id).toBe('cut');
  expect(lines.map(({ attributes }) => attributes.id)).toEqual([undefined, undefined]);
});

test('words stand in a label, whatever they are, and are drawn as outlines', () => {
  const { paths } = readSvg(writeSvg(everything.drawing, { fonts: FONTS }));
  const words = paths.filter(({ attributes }) => attributes['aria-label'] !== undefined);
  expect(words.map(({ attributes }) => attributes['aria-label'])).toEqual([
    '16 ½ × 20 ⅜″, Ωμέγα, Журнал <&> "5′"',
    'TOP',
  ]);
  // One for T, two each for O and P.
  expect(words[1]!.closed).toBe(5);
  const control = { ...everything.drawing.groups[2]!.items[0]!, text: 'a\u0001b\ud800c' } as Item;
  const safe = readSvg(writeSvg(drawingOf(100, 100, [group('words', [control])]), { fonts: FONTS }));
  expect(safe.paths[0]!.attributes['aria-label']).toBe('abc');
});

test('rare characters come from fonts that are handed in', async () => {
  const snowman = { ...everything.drawing.groups[2]!.items[0]!, text: '☃' } as Item;
  const drawing = drawingOf(100, 200, [group('words', [snowman])]);
  const data = (fonts = FONTS): string => readSvg(writeSvg(drawing, { fonts })).paths[0]!.attributes.d!;
  expect(data(await loadFonts(['☃'], { outlines: true })).length).toBeGreaterThan(2 * data().length);
});

test('100 mm are 100 mm ± 1 pixel at 300 dpi', async () => {
  const drawing = drawingOf(150, 120, [group('cut', [line('heavy', 30, 50, 130, 50), line('heavy', 50, 10, 50, 110)])]);
  const raster = await renderSvg(writeSvg(drawing, { fonts: FONTS }), 300);
  expect([raster.width, raster.height]).toEqual([1772, 1417]);
  for (const along of ['x', 'y'] as const) {
    const { first, last } = darkSpan(raster, along, Math.floor((50 / 25.4) * 300))!;
    expect(Math.abs(last - first + 1 - (100 / 25.4) * 300)).toBeLessThanOrEqual(1);
  }
});

test('the picture is that of the PDF', async () => {
  const shown = {
    ...everything.drawing,
    groups: [...everything.drawing.groups, group('block', [square(250, 150, 30)])],
  };
  const [a, b] = await Promise.all([
    renderSvg(writeSvg(shown, { fonts: FONTS }), 150),
    writePdf(wholePage(shown), { fonts: FONTS }).then((bytes) => renderPdfPage(bytes, 0, 150)),
  ]);
  expect(blockDifference(a, b)).toBeLessThan(0.15);
  // It sees a thing that has moved by a millimetre.
  const moved = { ...shown, groups: [...everything.drawing.groups, group('block', [square(251, 150, 30)])] };
  expect(blockDifference(await renderSvg(writeSvg(moved, { fonts: FONTS }), 150), b)).toBeGreaterThan(0.15);
});
