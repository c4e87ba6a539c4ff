import { pathBox } from '../geometry/extent.ts';
import { signedArea } from '../geometry/measure.ts';
import { selfCrossing } from '../geometry/meetings.ts';
import { type Path, placedSegment, reversed, type Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { type ReadPath, type Refused, readPathData } from './path-data.ts';

export type ReadOutline = { readonly ok: true; readonly path: Path } | ({ readonly ok: false } & Refused);

/** Points nearer than this are one, mm. */
const SAME = 1e-6;

/**
 * A free outline from SVG path data or a list of corners, `unit` mm for each 1 in the text. It comes out closed and
 * clockwise as the eye sees it; one that crosses itself, or encloses nothing, is refused.
 */
export function readOutline(text: string, unit: number): ReadOutline {
  const read = readPathData(text);
  if ('message' in read) return { ok: false, ...read };
  const path = closed(read, unit);
  if (path.segments.length < 2) {
    return { ok: false, message: 'the outline encloses nothing', hint: 'give at least three corners, or a curve' };
  }
  const crossing = selfCrossing(path);
  if (crossing !== undefined) {
    const at = `${Number((crossing.x / unit).toFixed(3))} ${Number((crossing.y / unit).toFixed(3))}`;
    return {
      ok: false,
      message: `the outline crosses or touches itself near ${at}`,
      hint: 'draw it so that it runs once round, without a loop or a point that comes twice',
    };
  }
  const { width, height } = pathBox(path);
  const area = signedArea(path);
  if (!(Math.abs(area) > 1e-6 * width * height)) {
    return { ok: false, message: 'the outline encloses nothing', hint: 'give at least three corners, or a curve' };
  }
  return { ok: true, path: area > 0 ? path : reversed(path) };
}

function closed({ start, segments }: ReadPath, unit: number): Path {
  const scale = (p: Point): Point => ({ x: p.x * unit, y: p.y * unit });
  const near = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y) < SAME;
  const begin = scale(start);
  let at = begin;
  const kept: Segment[] = [];
  const all: readonly Segment[] = [...segments, { kind: 'line', to: start }];
  for (const segment of all) {
    const made = placedSegment(segment, scale);
    // A line of no length is left out; a curve of none may still be a loop.
    if (made.kind === 'line' && near(made.to, at)) continue;
    kept.push(made);
    at = made.to;
  }
  const last = kept.at(-1);
  if (last !== undefined) kept[kept.length - 1] = { ...last, to: begin };
  return { start: begin, segments: kept, closed: true };
}
