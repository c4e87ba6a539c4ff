import type { Fact } from '../../drawing/full-scale.ts';
import type { Item, Pen } from '../../drawing/model.ts';
import { type Box, bottom, box, right } from '../../geometry/box.ts';
import { distance, type Point, point } from '../../geometry/point.ts';
import type { Room } from '../../text/room.ts';
import { printDecimal, printFraction, showLength } from '../../units/print.ts';
import { mmFromInches, type Units } from '../../units/units.ts';

/** The group that crosses to measure between stand in, and their pen: no solid line, as of everything that is not cut. */
export const CHECK_PEN: Pen = { width: 0.18, colour: 0, dash: [0.8, 0.4], cap: 'butt' };

/** Each arm of a cross. */
const ARM = 3;
/** Between a cross and any other line. */
const CLEAR = 1.6;

export interface TapeChecks {
  readonly items: readonly Item[];
  readonly facts: readonly Fact[];
}

/**
 * Crosses at the corners of the largest upright rectangle in the middle of the board whose sides are whole inches, or
 * whole times 50 mm, and whose corners lie clear of every line: a tape is read on a graduation there, and both diagonals
 * are alike. Nothing where no such rectangle is clear.
 */
export function tapeChecks(board: Box, paper: Box, units: Units, taken: Room, group: string): TapeChecks {
  const found = clearRectangle(board, paper, units === 'in' ? mmFromInches(1) : 50, taken);
  if (found === undefined) return { items: [], facts: [] };
  const [a, b, c, d] = cornersOf(found);
  const fact = (label: string, from: Point, to: Point): Fact => {
    const length = distance(from, to);
    return { label, from, to, length, shown: showLength(length, units), group };
  };
  return {
    items: [a, b, c, d].flatMap(cross),
    facts: [
      fact('across, from cross to cross', a, b),
      fact('down, from cross to cross', b, c),
      diagonals('diagonals of the crosses', found, units, group),
    ],
  };
}

/** Both diagonals of a box are alike; how long they are need only be known to the graduation of a tape. */
export function diagonals(label: string, area: Box, units: Units, group: string): Fact {
  const [from, , to] = cornersOf(area);
  const length = distance(from, to);
  const inches = `${printFraction(length, 16).text} in`;
  const mm = `${printDecimal(length, 'mm', 0).text} mm`;
  const shown = `both alike, near ${units === 'in' ? `${inches} (${mm})` : `${mm} (${inches})`}`;
  return { label, from, to, length, shown, group };
}

function cornersOf(b: Box): readonly [Point, Point, Point, Point] {
  return [point(b.x, b.y), point(right(b), b.y), point(right(b), bottom(b)), point(b.x, bottom(b))];
}

function clearRectangle(board: Box, paper: Box, step: number, taken: Room): Box | undefined {
  const most = (length: number): number => Math.floor((length - 2 * (ARM + CLEAR)) / step + 1e-9);
  const middle = point(board.x + board.width / 2, board.y + board.height / 2);
  const isFree = ({ x, y }: Point): boolean => taken.isFree(x - ARM, y - ARM, 2 * ARM, 2 * ARM, CLEAR);
  const [wide, high] = [most(paper.width), most(paper.height)];
  // As little as can be is taken off both sides together.
  for (let less = 0; less < wide + high - 1; less++) {
    for (let off = 0; off <= less; off++) {
      const [width, height] = [(wide - off) * step, (high - less + off) * step];
      if (width <= 0 || height <= 0) continue;
      const found = box(middle.x - width / 2, middle.y - height / 2, width, height);
      if (cornersOf(found).every(isFree)) return found;
    }
  }
  return undefined;
}

function cross({ x, y }: Point, i: number): readonly Item[] {
  const id = `check-${i + 1}`;
  return [
    { kind: 'line', pen: 'check', from: point(x - ARM, y), to: point(x + ARM, y), id: `${id}-level` },
    { kind: 'line', pen: 'check', from: point(x, y - ARM), to: point(x, y + ARM), id: `${id}-upright` },
  ];
}
