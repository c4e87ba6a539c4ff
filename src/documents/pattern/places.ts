import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box } from '../../geometry/box.ts';
import type { Line } from '../../geometry/clip.ts';
import { flattened } from '../../geometry/flatten.ts';
import { type Path, polygon, straightSides } from '../../geometry/path.ts';
import { type Point, plus, point, times } from '../../geometry/point.ts';
import { type Block, beside, labelBlock } from '../../text/block.ts';
import { type Candidate, GAP, type InkedLine } from '../../text/room.ts';
import { type Style, stepsDown } from '../../text/styles.ts';
import { numeral, uprightFor } from './labels.ts';
import { CROWDED_PENS } from './lines.ts';
import type { Tick } from './strokes.ts';

/** The extent of a box along a direction. */
export const across = (b: Box, way: Point): number => Math.abs(way.x) * b.width + Math.abs(way.y) * b.height;

/** The point of a box that is nearest to another point. */
export const nearestOf = (area: Box, to: Point): Point =>
  point(Math.min(Math.max(to.x, area.x), area.x + area.width), Math.min(Math.max(to.y, area.y), area.y + area.height));

/** Places from just beside a point outwards, within a box. */
export function* closeTo(block: Block, at: Point, within: Box, reach = 40): Generator<Candidate> {
  for (let off = 3; off <= reach; off += 3) {
    for (const [x, y] of [
      [at.x - block.width / 2, at.y + off],
      [at.x - block.width / 2, at.y - off - block.height],
      [at.x + off, at.y - block.height / 2],
      [at.x - off - block.width, at.y - block.height / 2],
      [at.x + off, at.y + off],
      [at.x - off - block.width, at.y - off - block.height],
    ] as const) {
      if (
        x >= within.x &&
        y >= within.y &&
        x + block.width <= within.x + within.width &&
        y + block.height <= bottom(within)
      )
        yield { block, quarter: 0, at: point(x, y) };
    }
  }
}

/** A tick's letter with its stroke's number; in the smallest sizes alone. */
export function* letterPlaces(
  end: Point,
  way: Point,
  { letter, stroke }: Tick,
  styles: readonly Style[],
  fonts: Fonts,
): Generator<Candidate> {
  const quarter = uprightFor(stroke.direction);
  const along = stroke.direction;
  for (const style of styles) {
    const sign = labelBlock([{ group: 'marks', text: letter, style }], fonts);
    const small = stepsDown(style)[2];
    const block =
      small === undefined
        ? sign
        : beside(
            sign,
            numeral(String(stroke.order), { ...small, weight: 'regular' }, 'marks', fonts),
            0.08 * style.size,
          );
    const [w, h] = quarter % 2 === 0 ? [block.width, block.height] : [block.height, block.width];
    const [over, aside] = [across(box(0, 0, w, h), way) / 2, across(box(0, 0, w, h), along) / 2];
    const outwards = letter === 'S' ? -1 : 1;
    const centres = [
      plus(end, times(way, over + GAP + 0.4)),
      ...[0, 4, 8, 12, 18, 24].flatMap((back) =>
        [outwards, -outwards].map((hand) =>
          plus(plus(end, times(way, -over - back)), times(along, hand * (aside + GAP + 0.4))),
        ),
      ),
    ];
    for (const c of centres) yield { block, quarter, at: point(c.x - w / 2, c.y - h / 2) };
  }
}

export function* chained(places: readonly (() => Iterable<Candidate>)[]): Generator<Candidate> {
  for (const place of places) yield* place();
}

/** The lines of an item that words must keep clear of, curves as chords. */
export function linesOf(item: Item): readonly InkedLine[] {
  const half =
    (item.kind === 'line' || item.kind === 'path') && item.pen !== undefined ? CROWDED_PENS[item.pen]!.width / 2 : 0;
  if (item.kind === 'line') return [{ from: item.from, to: item.to, half }];
  return item.kind === 'path' ? item.paths.flatMap(chords).map((side) => ({ ...side, half: half + CHORD })) : [];
}

/** Farthest that a chord lies from its curve. */
const CHORD = 0.1;

function chords(path: Path): readonly Line[] {
  if (path.segments.every((segment) => segment.kind === 'line')) return straightSides(path);
  return straightSides(polygon(flattened(path, CHORD), path.closed));
}
