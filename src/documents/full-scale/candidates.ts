import type { Rotation } from '../../drawing/document.ts';
import { type Box, bottom, box } from '../../geometry/box.ts';
import type { Line } from '../../geometry/clip.ts';
import { between, distance, minus, type Point, point, type Size, unit } from '../../geometry/point.ts';
import type { Side } from '../../geometry/sides.ts';
import { type Block, turnedSize } from '../../text/block.ts';
import type { Places } from '../../text/places.ts';

/** The extent of a box along a direction. */
export const across = (b: Box, way: Point): number => Math.abs(way.x) * b.width + Math.abs(way.y) * b.height;

/** The point of a box that is nearest to another point. */
export const nearestOf = (area: Box, to: Point): Point =>
  point(Math.min(Math.max(to.x, area.x), area.x + area.width), Math.min(Math.max(to.y, area.y), area.y + area.height));

/** Places from just beside a point outwards, within a box. */
export function closeTo(block: Block, at: Point, within: Box, reach = 40): Places {
  const { width, height } = block;
  const [toX, toY] = [within.x + within.width, bottom(within)];
  return {
    block,
    rotation: 0,
    spots: (isTaken) => {
      const isSo = (x: number, y: number): boolean =>
        x >= within.x && y >= within.y && x + width <= toX && y + height <= toY && isTaken(x, y);
      for (let off = 3; off <= reach; off += 3) {
        if (
          isSo(at.x - width / 2, at.y + off) ||
          isSo(at.x - width / 2, at.y - off - height) ||
          isSo(at.x + off, at.y - height / 2) ||
          isSo(at.x - off - width, at.y - height / 2) ||
          isSo(at.x + off, at.y + off) ||
          isSo(at.x - off - width, at.y - off - height)
        )
          return true;
      }
      return false;
    },
  };
}

/** One list of places after the other, each made when the one before it is through. */
export function* chained(lists: readonly (() => Places)[]): Generator<Places> {
  for (const list of lists) yield list();
}

/** The same places but for those that something speaks against. */
export const unless = (
  { block, rotation, spots }: Places,
  isWrong: (x: number, y: number, size: Size) => boolean,
): Places => {
  const size = turnedSize(block, rotation);
  return { block, rotation, spots: (isTaken) => spots((x, y) => !isWrong(x, y, size) && isTaken(x, y)) };
};

/** So much nearer to its own line than to another does a word stand that says whose it is, mm. */
const NEARER = 1.4;

/** The same places but for those where a word's middle is no nearer to its own line than to another of the kind. */
export const nearestTo = (own: Line, others: readonly Line[], places: Places): Places =>
  others.length === 0
    ? places
    : unless(places, (x, y, { width, height }) => {
        const [mx, my] = [x + width / 2, y + height / 2];
        const off = toLine(mx, my, own);
        return others.some((other) => toLine(mx, my, other) <= off + NEARER);
      });

/** Asked of every place beside every line: it makes nothing. */
function toLine(x: number, y: number, { from, to }: Line): number {
  const ax = to.x - from.x;
  const ay = to.y - from.y;
  const k = Math.min(1, Math.max(0, ((x - from.x) * ax + (y - from.y) * ay) / (ax * ax + ay * ay)));
  return Math.hypot(x - (from.x + ax * k), y - (from.y + ay * k));
}

/** How far off the middle, to one hand and the other, up to `half`. */
function outwards(half: number, step: number, isTaken: (shift: number) => boolean): boolean {
  for (let t = 0; t <= half; t += step) if (isTaken(t) || (t > 0 && isTaken(-t))) return true;
  return false;
}

/**
 * Places beside a straight side: along it from its middle outwards, from `gap` to `reach` mm off the line.
 */
export function besideSide(
  block: Block,
  side: Line,
  way: Point,
  rotation: Rotation,
  gap: number,
  reach: number,
): Places {
  const along = unit(minus(side.to, side.from));
  const middle = between(side.from, side.to, 0.5);
  const half = distance(side.from, side.to) / 2;
  const { width, height } = turnedSize(block, rotation);
  const across = Math.abs(way.x) * width + Math.abs(way.y) * height;
  return {
    block,
    rotation,
    spots: (isTaken) => {
      for (let off = gap; off + across <= reach; off += 4) {
        const aside = off + across / 2;
        const isSo = (shift: number): boolean =>
          isTaken(
            middle.x + along.x * shift + way.x * aside - width / 2,
            middle.y + along.y * shift + way.y * aside - height / 2,
          );
        if (outwards(half, 4, isSo)) return true;
      }
      return false;
    },
  };
}

/** Places farther and farther round a point, for words that a leader joins to their line. */
export function around(block: Block, rotation: Rotation, at: Point, reach: number): Places {
  const { width, height } = turnedSize(block, rotation);
  return {
    block,
    rotation,
    spots: (isTaken) => {
      for (let radius = 6; radius <= reach; radius += 4) {
        const count = Math.ceil((2 * Math.PI * radius) / 6);
        for (let i = 0; i < count; i++) {
          const angle = (2 * Math.PI * i) / count;
          if (isTaken(at.x + radius * Math.cos(angle) - width / 2, at.y + radius * Math.sin(angle) - height / 2))
            return true;
        }
      }
      return false;
    },
  };
}

/** Places in a box, row by row from its top left (or, `fromRight`, from its top right). */
export function scan(block: Block, rotation: Rotation, area: Box, fromRight = false, step = 3): Places {
  const { width, height } = turnedSize(block, rotation);
  return {
    block,
    rotation,
    spots: (isTaken) => {
      for (let y = area.y; y + height <= area.y + area.height + 1e-9; y += step) {
        for (let x = 0; x + width <= area.width + 1e-9; x += step)
          if (isTaken(fromRight ? area.x + area.width - width - x : area.x + x, y)) return true;
      }
      return false;
    },
  };
}

/** Places near the middle of a box's upper edge, moving outwards, then down. */
export function nearTop(block: Block, area: Box, step = 3): Places {
  const middle = area.x + area.width / 2;
  return {
    block,
    rotation: 0,
    spots: (isTaken) => {
      for (let y = area.y; y + block.height <= area.y + area.height; y += step)
        if (outwards(area.width / 2, step, (shift) => isTaken(middle + shift - block.width / 2, y))) return true;
      return false;
    },
  };
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
export function alongHinge(block: Block, side: Side, band: ReturnType<typeof bands>): Places {
  if (side === 'top' || side === 'bottom') {
    const area = side === 'top' ? band.upper : band.lower;
    const start = side === 'top' ? 0 : Math.max(0, area.height - 3 * block.height);
    return nearTop(block, box(area.x, area.y + start, area.width, area.height - start));
  }
  const area = side === 'left' ? band.right : band.left;
  const { width, height } = turnedSize(block, 90);
  return {
    block,
    rotation: 90,
    spots: (isTaken) => {
      for (let off = 0; off + width <= area.width; off += 2) {
        const x = side === 'left' ? area.x + area.width - width - off : area.x + off;
        if (outwards(area.height / 2, 4, (shift) => isTaken(x, area.y + area.height / 2 + shift - height / 2)))
          return true;
      }
      return false;
    },
  };
}

/** The strip of a box that words inside an opening may use, at its upper and at its lower edge. */
export function innerStrips(inner: Box, reach: number): readonly [Box, Box] {
  const high = Math.min(inner.height, reach);
  return [box(inner.x, inner.y, inner.width, high), box(inner.x, bottom(inner) - high, inner.width, high)];
}
