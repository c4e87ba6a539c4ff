import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { textWidth } from '../../src/fonts/measure.ts';
import { textOutline } from '../../src/fonts/outlines.ts';
import { tables } from '../../src/fonts/prepared/tables.ts';
import type { Path, Segment } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import { commandsOf, fullFont, WEIGHTS } from './full-fonts.ts';
import { FONTS } from './loaded.ts';
import { preparedText, weight } from './texts.ts';

/** Points of a segment, ends and a fine row between; Bernstein form. */
function pointsOn(from: Point, segment: Segment): Point[] {
  if (segment.kind === 'line') return [segment.to];
  if (segment.kind === 'arc') throw new RangeError('no arcs in letters');
  const { c1, c2, to } = segment;
  return Array.from({ length: 64 }, (_, i) => {
    const t = (i + 1) / 64;
    const u = 1 - t;
    const at = (axis: 'x' | 'y') =>
      u ** 3 * from[axis] + 3 * u * u * t * c1[axis] + 3 * u * t * t * c2[axis] + t ** 3 * to[axis];
    return { x: at('x'), y: at('y') };
  });
}

function pointsOf(path: Path): Point[] {
  const points = [path.start];
  for (const segment of path.segments) points.push(...pointsOn(points.at(-1)!, segment));
  return points;
}

/** The curves of a path, each with the point that it starts from. */
function cubicsOf(path: Path): { from: Point; c1: Point; c2: Point; to: Point }[] {
  const starts = [path.start, ...path.segments.map((segment) => segment.to)];
  return path.segments.flatMap((segment, i) => (segment.kind === 'cubic' ? [{ from: starts[i]!, ...segment }] : []));
}

describe.each(WEIGHTS)('%s', (of) => {
  const every = tables
    .filter((table) => table.weight === of)
    .flatMap((table) => table.codePoints.map((codePoint) => ({ table, codePoint })));

  test('every prepared character is bounded as fontkit bounds it', () => {
    for (const { table, codePoint } of every) {
      const { bbox } = fullFont(table.id).glyphForCodePoint(codePoint);
      const size = table.unitsPerEm;
      const points = textOutline(String.fromCodePoint(codePoint), of, size, FONTS).flatMap(pointsOf);
      if (points.length === 0) {
        expect(Number.isFinite(bbox.width) ? bbox.width : 0).toBe(0);
        continue;
      }
      const xs = points.map((p) => p.x);
      const ys = points.map((p) => -p.y);
      const found = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
      // A row of 64 points misses the turn of a curve by a little, and always inwards.
      [bbox.minX, bbox.minY, bbox.maxX, bbox.maxY].forEach((value, i) => {
        const inwards = i < 2 ? found[i]! - value : value - found[i]!;
        expect(inwards, `U+${codePoint.toString(16)} ${i}`).toBeGreaterThan(-1e-6);
        expect(inwards, `U+${codePoint.toString(16)} ${i}`).toBeLessThan(size / 5000);
      });
    }
  });

  test("every curve is the font's own, in cubic form", () => {
    for (const { table, codePoint } of every) {
      const cubics = textOutline(String.fromCodePoint(codePoint), of, table.unitsPerEm, FONTS).flatMap(cubicsOf);
      const quadratics = commandsOf(fullFont(table.id).glyphForCodePoint(codePoint)).filter(
        ({ command }) => command === 'quadraticCurveTo',
      );
      // A cubic of raised degree: its handles, seen from either end, point to the one handle of the quadratic.
      const handles = cubics.map(({ from, c1, c2, to }) => [
        [(3 * c1.x - from.x) / 2, -(3 * c1.y - from.y) / 2, to.x, -to.y],
        [(3 * c2.x - to.x) / 2, -(3 * c2.y - to.y) / 2, to.x, -to.y],
      ]);
      expect(handles.length).toBe(quadratics.length);
      quadratics.forEach(({ args }, i) => {
        for (const back of handles[i]!) {
          args.forEach((value, axis) => {
            expect(back[axis]).toBeCloseTo(value, 6);
          });
        }
      });
    }
  });
});

test('letters follow each other by their widths, at any size', () => {
  fc.assert(
    fc.property(preparedText(12), preparedText(12), weight, fc.integer({ min: 1, max: 60 }), (a, b, of, size) => {
      fc.pre((a + b).normalize('NFC') === a + b);
      const shift = textWidth(a, of, size, FONTS);
      const tail = textOutline(b, of, size, FONTS).map((path) => ({ x: path.start.x + shift, y: path.start.y }));
      const whole = textOutline(a + b, of, size, FONTS);
      expect(whole.length).toBe(textOutline(a, of, size, FONTS).length + tail.length);
      whole.slice(whole.length - tail.length).forEach((path, i) => {
        expect(path.start.x).toBeCloseTo(tail[i]!.x, 9);
        expect(path.start.y).toBeCloseTo(tail[i]!.y, 9);
      });
    }),
  );
});

test('every contour is closed and ends where it starts', () => {
  const paths = textOutline('8&%@ Ǻệ ☑ 漢', 'bold', 12, FONTS);
  expect(paths.length).toBeGreaterThan(12);
  for (const path of paths) {
    expect(path.closed).toBe(true);
    expect(path.segments.at(-1)!.to).toEqual(path.start);
  }
});
