import type { Stroke } from '../../bench/model.ts';
import { once } from '../../drawing/once.ts';
import type { Quarter } from '../../drawing/turned.ts';
import { type Box, bottom, box, right } from '../../geometry/box.ts';
import { between, distance, type Point, plus, times } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { FINE_BOLD, LARGE_BOLD, SIGN, type Style, stepsDown } from '../../text/styles.ts';
import {
  around,
  besideSide,
  numberBlock,
  SMALL_STEPS,
  STROKE_STEPS,
  smallBlock,
  strokeBlock,
  uprightFor,
} from './labels.ts';
import { outward } from './lines.ts';
import { across, chained, letterPlaces } from './places.ts';
import type { PatternSheet } from './sheet.ts';
import type { Tick } from './strokes.ts';

/** Labels inside an opening stay this near to its lines, so that the middle is blank. */
export const REACH_INSIDE = 52;

/** The letters at both ends of every tick; at one end alone, and only where there is room, on a crowded sheet. */
export function tickLetters(
  sheet: PatternSheet,
  ticks: readonly Tick[],
  crowded: boolean,
  styles: readonly Style[] = stepsDown(crowded ? LARGE_BOLD : SIGN),
): void {
  for (const t of ticks) {
    const name = `${t.letter} of stroke ${t.stroke.order}`;
    const places = letterPlaces(t.item.from, t.out, t, styles, sheet.fonts);
    if (crowded) {
      // Where letters find no room, the dashes tell a start from an end.
      sheet.attempt(places, 'tick');
      continue;
    }
    sheet.set(name, places, 'tick');
    if (distance(t.item.to, t.letter === 'S' ? t.stroke.start : t.stroke.stop) > 12)
      sheet.set(name, letterPlaces(t.item.to, times(t.out, -1), t, styles, sheet.fonts), 'tick');
  }
}

/** How far words can reach off a level or upright side without leaving the paper; unbounded off a slanting one. */
function toEdge(paper: Box, from: Point, { x, y }: Point): number {
  if (Math.abs(y) < 1e-9) return x > 0 ? right(paper) - from.x : from.x - paper.x;
  if (Math.abs(x) < 1e-9) return y > 0 ? bottom(paper) - from.y : from.y - paper.y;
  return Number.POSITIVE_INFINITY;
}

/** Arrow, number and reading beside every side; `alone` where the whole border belongs to one opening. */
export function strokeWords(
  sheet: PatternSheet,
  own: readonly Stroke[],
  job: Job,
  board: Box,
  boxes: ReadonlyMap<number, Box>,
  { crowded, alone, view }: { readonly crowded: boolean; readonly alone: boolean; readonly view: 'face' | 'back' },
): void {
  for (const s of own) {
    const out = outward(s, job.bench.head.opening);
    const upright = uprightFor(s.direction);
    const along = ((upright + 3) % 4) as Quarter;
    const middle = between(s.line.from, s.line.to, 0.5);
    const clear = Math.min(across(board, out), sheet.room.clearance(plus(middle, times(out, 0.2)), out, 400));
    const reach = Math.min(alone ? across(board, out) : clear, toEdge(sheet.paper, middle, out));
    const depth = Math.min(REACH_INSIDE, across(boxes.get(s.opening) ?? box(0, 0, 0, 0), out));
    const places = (crowded ? [] : STROKE_STEPS).flatMap((styles) => {
      const standing = once(() => strokeBlock(s, styles, true, view, sheet.fonts));
      const lying = once(() => strokeBlock(s, styles, false, view, sheet.fonts));
      return [
        () => besideSide(standing(), s.line, out, upright, 4, reach),
        () => besideSide(lying(), s.line, out, along, 4, reach),
        () => besideSide(standing(), s.line, times(out, -1), upright, 4, depth),
        () => besideSide(lying(), s.line, times(out, -1), along, 4, depth),
      ];
    });
    const small = SMALL_STEPS.map((styles) => once(() => smallBlock(s, styles, sheet.fonts)));
    places.push(
      ...small.flatMap((block) => [
        () => besideSide(block(), s.line, times(out, -1), upright, 2, depth),
        () => besideSide(block(), s.line, times(out, -1), along, 2, depth),
        () => besideSide(block(), s.line, out, upright, 2, Math.min(reach, 60)),
        () => besideSide(block(), s.line, out, along, 2, Math.min(reach, 60)),
      ]),
    );
    const far = small.slice(1).map((block) => () => around(block(), upright, middle, 140));
    const what = `number and reading of stroke ${s.order}`;
    if (!crowded) {
      sheet.set(what, chained(places), 'reading', middle, chained(far));
      continue;
    }
    if (sheet.attempt(chained(places), 'reading', middle, chained(far.slice(-1)))) continue;
    const number = once(() => numberBlock(s, FINE_BOLD, sheet.fonts));
    const beside = [times(out, -1), out].map((way) => () => besideSide(number(), s.line, way, upright, 1.5, 30));
    const round = () => around(number(), upright, middle, 140);
    if (sheet.attempt(chained(beside), 'reading', middle, round())) sheet.keyed++;
    else sheet.unplaced.push(what);
  }
}
