import { arcCubics } from '../../geometry/arc-cubics.ts';
import type { Segment } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { broken } from './markup.ts';

/** a b c d e f, as SVG 2 (section 8.5) has it: x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [number, number, number, number, number, number];

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];

export const placedBy =
  ([a, b, c, d, e, f]: Matrix) =>
  ({ x, y }: Point): Point => ({ x: a * x + c * y + e, y: b * x + d * y + f });

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

const MAKING: Readonly<Record<string, (n: readonly number[]) => Matrix | undefined>> = {
  matrix: (n) => (n.length === 6 ? [n[0]!, n[1]!, n[2]!, n[3]!, n[4]!, n[5]!] : undefined),
  translate: (n) => (n.length === 1 || n.length === 2 ? [1, 0, 0, 1, n[0]!, n[1] ?? 0] : undefined),
  scale: (n) => (n.length === 1 || n.length === 2 ? [n[0]!, 0, 0, n[1] ?? n[0]!, 0, 0] : undefined),
  skewX: (n) => (n.length === 1 ? [1, 0, Math.tan(radians(n[0]!)), 1, 0, 0] : undefined),
  skewY: (n) => (n.length === 1 ? [1, Math.tan(radians(n[0]!)), 0, 1, 0, 0] : undefined),
  rotate: (n) => {
    if (n.length !== 1 && n.length !== 3) return undefined;
    const [cos, sin] = [Math.cos(radians(n[0]!)), Math.sin(radians(n[0]!))];
    const [x, y] = [n[1] ?? 0, n[2] ?? 0];
    return [cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y];
  },
};

const LONGEST = 500;

/** An element's own transform within that of the one around it. Throws `mark-svg`. */
export function transformed(outer: Matrix, text: string | undefined, line: number): Matrix {
  let matrix = outer;
  if ((text ?? '').length > LONGEST) throw broken(line, 'a transform is too long', 'apply it in the drawing program');
  const rest = (text ?? '').replace(/(\w+)\s*\(([^)]*)\)[\s,]*/g, (whole, name: string, given: string) => {
    const numbers = given
      .split(/[\s,]+/)
      .filter((part) => part !== '')
      .map(Number);
    const made = numbers.every(Number.isFinite) ? MAKING[name]?.(numbers) : undefined;
    if (made === undefined) return whole;
    matrix = times(matrix, made);
    return '';
  });
  if (rest.trim() !== '' && rest.trim() !== 'none')
    throw broken(line, `the transform ${rest.trim().slice(0, 40)} cannot be read`, 'apply it in the drawing program');
  return matrix;
}

/** Relative to the size of its arc: a transform may make an ellipse of a circle, so arcs become curves first. */
const FINE = 1e-4;

export function withoutArcs(start: Point, segments: readonly Segment[]): readonly Segment[] {
  let from = start;
  return segments.flatMap((segment): readonly Segment[] => {
    const made = segment.kind === 'arc' ? arcCubics(from, segment, FINE * radius(from, segment.centre)) : [segment];
    from = segment.to;
    return made;
  });
}

const radius = (from: Point, centre: Point): number => Math.max(1e-9, Math.hypot(from.x - centre.x, from.y - centre.y));
