import { describe, expect, it } from 'vitest';
import { parallelOf } from '../../src/geometry/parallel.ts';
import type { Path } from '../../src/geometry/path.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { writeDxf } from '../../src/writers/dxf/dxf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { chainPoints, readDxf } from '../readers/dxf.ts';
import { Near } from '../simulate/near.ts';

interface P {
  readonly x: number;
  readonly y: number;
}

/** A quarter of a circle of radius 100 drawn as one cubic in the usual way, which is 0.027 mm off the circle. */
const [from, c1, c2, to] = [
  { x: 0, y: 100 },
  { x: 0, y: 100 - 55.2284749831 },
  { x: 100 - 55.2284749831, y: 0 },
  { x: 100, y: 0 },
];
const QUARTER: Path = {
  start: from,
  closed: true,
  segments: [
    { kind: 'cubic', c1, c2, to },
    { kind: 'line', to: { x: 100, y: 100 } },
    { kind: 'line', to: from },
  ],
};

const mix = (a: number, b: number, c: number, d: number, t: number): number =>
  a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * c * t * t * (1 - t) + d * t ** 3;

/** The true parallel of the cubic, point by point along its normals, which no fitting made. */
function truth(by: number, count = 40_000): P[] {
  return Array.from({ length: count + 1 }, (_, i) => {
    const t = i / count;
    const d = (k: 'x' | 'y'): number =>
      3 * ((1 - t) ** 2 * (c1[k] - from[k]) + 2 * t * (1 - t) * (c2[k] - c1[k]) + t * t * (to[k] - c2[k]));
    const long = Math.hypot(d('x'), d('y'));
    return {
      x: mix(from.x, c1.x, c2.x, to.x, t) + (by * d('y')) / long,
      y: mix(from.y, c1.y, c2.y, to.y, t) - (by * d('x')) / long,
    };
  });
}

function farthest(path: Path, of: readonly P[], count = 400): number {
  const near = new Near(1).chain(of, false);
  let start = path.start;
  let worst = 0;
  for (const segment of path.segments) {
    if (segment.kind === 'cubic')
      for (let i = 0; i <= count; i++) {
        const { c1: a, c2: b, to: end } = segment;
        const p = { x: mix(start.x, a.x, b.x, end.x, i / count), y: mix(start.y, a.y, b.y, end.y, i / count) };
        worst = Math.max(worst, near.distance(p));
      }
    start = segment.to;
  }
  return worst;
}

describe('curves that stand in for others', () => {
  it.each([-3, -1.4, 1.4, 12])('are within 0.0002 mm of the true parallel, %f mm away', (by) => {
    const moved = parallelOf(QUARTER, by);
    if (typeof moved === 'string') throw new Error(moved);
    // Beyond its ends the curve is drawn on to meet the sides: what stands there is looked at elsewhere.
    const worst = farthest(inside(moved, by), truth(by));
    expect(worst).toBeLessThan(0.00022);
  });

  it('an ellipse is within 0.0002 mm of the true one, and so is what lies 3 mm inside of it', () => {
    const frame = { x: 0, y: 0, width: 200, height: 100 };
    for (const by of [0, -3]) {
      const path = shapeOf('oval').parallel(frame, by, {})!;
      const dense = Array.from({ length: 80_001 }, (_, i): P => {
        const t = (2 * Math.PI * i) / 80_000;
        const k = by / Math.hypot(50 * Math.sin(t), 100 * Math.cos(t));
        return { x: 100 + (100 + k * 50) * Math.sin(t), y: 50 - (50 + k * 100) * Math.cos(t) };
      });
      expect(farthest(path, dense)).toBeLessThan(0.00022);
    }
  });

  it('arcs in a file are within 0.01 mm, unless it is asked for otherwise', () => {
    const oval = shapeOf('oval').outline({ x: 10, y: 10, width: 200, height: 100 }, {});
    const drawing = {
      title: 'Oval',
      width: 300,
      height: 200,
      view: 'back' as const,
      pens: { cut: { width: 0.1, colour: '#000000', dash: [], cap: 'butt' as const } },
      groups: [
        { name: 'CUT', label: 'Cut', shown: true, items: [{ kind: 'path' as const, pen: 'cut', paths: [oval] }] },
      ],
    };
    const off = (tolerance?: number): number => {
      const read = readDxf(writeDxf(drawing, { fonts: FONTS, ...(tolerance === undefined ? {} : { tolerance }) }));
      const true_ = Array.from({ length: 40_001 }, (_, i): P => {
        const t = (2 * Math.PI * i) / 40_000;
        return { x: 110 + 100 * Math.sin(t), y: 200 - (60 - 50 * Math.cos(t)) };
      });
      const near = new Near(1).chain(true_, false);
      return Math.max(...chainPoints(read.polylines[0]!, 0.2).map((p) => near.distance(p)));
    };
    expect(off()).toBeLessThan(0.0101);
    // It uses what it is allowed: with ten times as much it is farther off.
    expect(off(0.1)).toBeGreaterThan(0.02);
  });
});

/** Of a moved quarter the cubics whose ends lie between the ends of the true parallel. */
function inside(path: Path, by: number): Path {
  const ends = truth(by, 1);
  const [low, high] = [Math.min(...ends.map(({ x }) => x)), Math.max(...ends.map(({ x }) => x))];
  const segments: Path['segments'][number][] = [];
  let start: P | undefined;
  let at = path.start;
  for (const segment of path.segments) {
    const held = [at, segment.to].every(({ x }) => x > low - 1e-6 && x < high + 1e-6);
    if (segment.kind === 'cubic' && held) {
      start ??= at;
      segments.push(segment);
    }
    at = segment.to;
  }
  if (start === undefined) throw new Error('nothing of the curve is left');
  return { start, segments, closed: false };
}
