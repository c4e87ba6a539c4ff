import type { PathItem } from '../../drawing/model.ts';
import { flattened } from '../../geometry/flatten.ts';
import { type Path, polygon } from '../../geometry/path.ts';
import { type Point, point } from '../../geometry/point.ts';
import { slope } from './shades.ts';

/** How far curves may lie from the chords that their slopes are made of, mm on the sheet. */
const CHORD = 0.02;
/** Slopes go on this far under the board, so that its edge lies over them without a seam. */
const UNDER = 0.12;

/**
 * The slope between an outline (clockwise as the eye sees it) and its parallel `width` inwards, as one facet for each
 * stretch of it, mitred, each in the shade that the light gives it; `rising` where it goes up towards the inside.
 */
export function facets(
  outline: Path,
  width: number,
  colour: string,
  under = UNDER,
  rising = false,
): readonly PathItem[] {
  const corners = flattened(outline, CHORD);
  const sides = corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    return length < 1e-6 ? [] : [{ from, to, out: point((to.y - from.y) / length, (from.x - to.x) / length) }];
  });
  // Along its mitre a corner moves so that both of its sides move by one.
  const mitres = sides.map(({ out }, i) => {
    const before = sides[(i + sides.length - 1) % sides.length]!.out;
    const share = 1 / Math.max(0.2, 1 + before.x * out.x + before.y * out.y);
    return point((before.x + out.x) * share, (before.y + out.y) * share);
  });
  const moved = (p: Point, way: Point, by: number): Point => point(p.x + way.x * by, p.y + way.y * by);
  const facetOf = ({ from, to, out }: (typeof sides)[number], i: number): PathItem => {
    const [start, end] = [mitres[i]!, mitres[(i + 1) % mitres.length]!];
    const quad = [moved(from, start, under), moved(to, end, under), moved(to, end, -width), moved(from, start, -width)];
    return { kind: 'path', paths: [polygon(quad)], fill: slope(colour, rising ? point(-out.x, -out.y) : out) };
  };
  return sides.map(facetOf);
}
