import type { Rotation } from '../../drawing/document.ts';
import { type Box, bottom, box } from '../../geometry/box.ts';
import { between, distance, minus, type Point, plus, point, times, unit } from '../../geometry/point.ts';
import type { Side } from '../../geometry/sides.ts';
import { type Block, turnedSize } from '../../text/block.ts';
import type { Candidate } from '../../text/room.ts';

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
        yield { block, rotation: 0, at: point(x, y) };
    }
  }
}

/** All places of one list after those of another. */
export function* chained(places: readonly (() => Iterable<Candidate>)[]): Generator<Candidate> {
  for (const place of places) yield* place();
}

/**
 * Places beside a straight side: along it from its middle outwards, from `gap` to `reach` mm off the line.
 */
export function* besideSide(
  block: Block,
  side: { from: Point; to: Point },
  way: Point,
  rotation: Rotation,
  gap: number,
  reach: number,
): Generator<Candidate> {
  const along = unit(minus(side.to, side.from));
  const middle = between(side.from, side.to, 0.5);
  const half = distance(side.from, side.to) / 2;
  const size = turnedSize(block, rotation);
  const across = Math.abs(way.x) * size.width + Math.abs(way.y) * size.height;
  for (let off = gap; off + across <= reach; off += 4) {
    for (let t = 0; t <= half; t += 4) {
      for (const shift of t === 0 ? [0] : [t, -t]) {
        const centre = plus(plus(middle, times(along, shift)), times(way, off + across / 2));
        yield { block, rotation, at: point(centre.x - size.width / 2, centre.y - size.height / 2) };
      }
    }
  }
}

/** Places farther and farther round a point, for words that a leader joins to their line. */
export function* around(block: Block, rotation: Rotation, at: Point, reach: number): Generator<Candidate> {
  const size = turnedSize(block, rotation);
  for (let radius = 6; radius <= reach; radius += 4) {
    const count = Math.ceil((2 * Math.PI * radius) / 6);
    for (let i = 0; i < count; i++) {
      const angle = (2 * Math.PI * i) / count;
      const centre = { x: at.x + radius * Math.cos(angle), y: at.y + radius * Math.sin(angle) };
      yield { block, rotation, at: point(centre.x - size.width / 2, centre.y - size.height / 2) };
    }
  }
}

/** Places in a box, row by row from its top left (or, `fromRight`, from its top right). */
export function* scan(block: Block, rotation: Rotation, area: Box, fromRight = false, step = 3): Generator<Candidate> {
  const size = turnedSize(block, rotation);
  for (let y = area.y; y + size.height <= area.y + area.height + 1e-9; y += step) {
    for (let x = 0; x + size.width <= area.width + 1e-9; x += step) {
      yield { block, rotation, at: point(fromRight ? area.x + area.width - size.width - x : area.x + x, y) };
    }
  }
}

/** Places near the middle of a box's upper edge, moving outwards, then down. */
export function* nearTop(block: Block, area: Box, step = 3): Generator<Candidate> {
  const middle = area.x + area.width / 2;
  for (let y = area.y; y + block.height <= area.y + area.height; y += step) {
    for (let t = 0; t <= area.width / 2; t += step) {
      for (const shift of t === 0 ? [0] : [t, -t])
        yield { block, rotation: 0, at: point(middle + shift - block.width / 2, y) };
    }
  }
}

/** The four bands between the paper's edge and the lines to cut, as seen on the drawing. */
export function bands(paper: Box, cut: Box): { upper: Box; lower: Box; left: Box; right: Box } {
  const end = { x: paper.x + paper.width, y: paper.y + paper.height };
  return {
    upper: box(paper.x, paper.y, paper.width, Math.max(0, cut.y - paper.y)),
    lower: box(paper.x, cut.y + cut.height, paper.width, Math.max(0, end.y - cut.y - cut.height)),
    left: box(paper.x, paper.y, Math.max(0, cut.x - paper.x), paper.height),
    right: box(cut.x + cut.width, paper.y, Math.max(0, end.x - cut.x - cut.width), paper.height),
  };
}

/** Places along the hinge edge, as near to it as may be: its words read along the edge. */
export function* alongHinge(block: Block, side: Side, band: ReturnType<typeof bands>): Generator<Candidate> {
  if (side === 'top' || side === 'bottom') {
    const area = side === 'top' ? band.upper : band.lower;
    const start = side === 'top' ? 0 : Math.max(0, area.height - 3 * block.height);
    yield* nearTop(block, box(area.x, area.y + start, area.width, area.height - start));
    return;
  }
  const area = side === 'left' ? band.right : band.left;
  const size = turnedSize(block, 90);
  for (let off = 0; off + size.width <= area.width; off += 2) {
    for (let t = 0; t <= area.height / 2; t += 4) {
      for (const shift of t === 0 ? [0] : [t, -t]) {
        const x = side === 'left' ? area.x + area.width - size.width - off : area.x + off;
        yield { block, rotation: 90, at: point(x, area.y + area.height / 2 + shift - size.height / 2) };
      }
    }
  }
}

/** The strip of a box that words inside an opening may use, at its upper and at its lower edge. */
export function innerStrips(inner: Box, reach: number): readonly [Box, Box] {
  const high = Math.min(inner.height, reach);
  return [box(inner.x, inner.y, inner.width, high), box(inner.x, bottom(inner) - high, inner.width, high)];
}
