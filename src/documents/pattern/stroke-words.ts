import type { Stroke } from '../../bench/model.ts';
import type { Rotation } from '../../drawing/document.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, contains, right } from '../../geometry/box.ts';
import { clipLine, type Line } from '../../geometry/clip.ts';
import { between, distance, type Point, plus, times } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { once } from '../../problems/once.ts';
import type { Places } from '../../text/places.ts';
import type { Room } from '../../text/room.ts';
import { BOLD, FINE_BOLD, LARGE_BOLD, SIGN, type Style, stepsDown } from '../../text/styles.ts';
import { across, around, besideSide, chained, nearestTo } from '../full-scale/candidates.ts';
import type { Label, Try } from '../full-scale/label.ts';
import type { View } from '../full-scale/words-on-sheets.ts';
import {
  arrowAndNumber,
  numberBlock,
  SMALL_STEPS,
  STROKE_STEPS,
  smallBlock,
  standingFor,
  strokeBlock,
  uprightFor,
} from './labels.ts';
import { letterPlaces } from './letter-places.ts';
import { outward } from './lines.ts';
import type { Tick } from './strokes.ts';

/** Labels inside an opening stay this near to its lines, so that the middle is blank. */
export const REACH_INSIDE = 52;

/** The letters at both ends of every tick; at one end alone, and only where there is room, on a crowded sheet. */
export function* tickLetters(
  ticks: readonly Tick[],
  { area, whole }: View,
  crowded: boolean,
  fonts: Fonts,
  styles: readonly Style[] = stepsDown(crowded ? LARGE_BOLD : SIGN),
): Generator<Label> {
  const inView = (p: Point): boolean => whole || contains(area, box(p.x, p.y, 0, 0));
  for (const t of ticks) {
    const what = `${t.letter} of stroke ${t.stroke.order}`;
    const label = (end: Point, way: Point): Label => ({
      what,
      why: 'tick',
      instead: 'the arrow beside the number of a stroke runs from its S to its E',
      // Where ticks lie side by side a smaller letter that is plainly its own tick's is better than a large one in between.
      tries: [
        { places: () => plainly(t, neighbours(ticks, t, end), letterPlaces(end, way, t, styles, fonts)) },
        { places: () => letterPlaces(end, way, t, styles, fonts) },
      ],
      // Where letters find no room, the dashes of a crowded sheet tell a start from an end.
      optional: crowded,
    });
    if (inView(t.item.from)) yield label(t.item.from, t.out);
    if (crowded) continue;
    const long = distance(t.item.to, t.letter === 'S' ? t.stroke.start : t.stroke.stop) > 12;
    if (long && inView(t.item.to)) yield label(t.item.to, times(t.out, -1));
  }
}

function* plainly({ item }: Tick, others: readonly Line[], all: Iterable<Places>): Generator<Places> {
  for (const places of all) yield nearestTo(item, others, places);
}

/** Farther than that from an end nothing is nearer to its letters than their own tick. */
const FAR_OFF = 60;

/** The other ticks that come near to an end of one. */
function neighbours(ticks: readonly Tick[], own: Tick, { x, y }: Point): readonly Line[] {
  const found: Line[] = [];
  for (const tick of ticks) {
    const { from, to } = tick.item;
    const isNear =
      Math.min(from.x, to.x) < x + FAR_OFF &&
      Math.max(from.x, to.x) > x - FAR_OFF &&
      Math.min(from.y, to.y) < y + FAR_OFF &&
      Math.max(from.y, to.y) > y - FAR_OFF;
    if (isNear && tick !== own) found.push(tick.item);
  }
  return found;
}

/** How far words can reach off a level or upright side without leaving the paper; unbounded off a slanting one. */
function toEdge(paper: Box, from: Point, { x, y }: Point): number {
  if (Math.abs(y) < 1e-9) return x > 0 ? right(paper) - from.x : from.x - paper.x;
  if (Math.abs(x) < 1e-9) return y > 0 ? bottom(paper) - from.y : from.y - paper.y;
  return Number.POSITIVE_INFINITY;
}

export interface StrokeSetting {
  readonly job: Job;
  readonly board: Box;
  /** Where words may stand. */
  readonly paper: Box;
  /** The lines to follow of each opening. */
  readonly boxes: ReadonlyMap<number, Box>;
  readonly crowded: boolean;
  /** The whole border belongs to one opening. */
  readonly alone: boolean;
  readonly view: 'face' | 'back';
  readonly fonts: Fonts;
}

/** A shorter piece of a stroke than this shows nothing of it. */
const SHOWN = 5;

/** Arrow, number and reading beside every side, as far as it is seen. */
export function* strokeWords(
  own: readonly Stroke[],
  setting: StrokeSetting,
  { area, whole }: View,
  taken: Room,
): Generator<Label> {
  for (const s of own) {
    const seen = whole ? s.line : clipLine(s.line, area);
    if (seen === undefined || distance(seen.from, seen.to) < SHOWN) continue;
    yield strokeLabel(s, seen, setting, taken, whole);
  }
}

function strokeLabel(
  s: Stroke,
  seen: Line,
  { job, board, paper, boxes, crowded, alone, view, fonts }: StrokeSetting,
  taken: Room,
  whole: boolean,
): Label {
  const out = outward(s, job.bench.head.opening);
  const upright = uprightFor(s.direction);
  const along = ((upright + 270) % 360) as Rotation;
  const how = standingFor(upright);
  const middle = between(seen.from, seen.to, 0.5);
  const clear = Math.min(across(board, out), taken.clearance(plus(middle, times(out, 0.2)), out, 400));
  const reach = Math.min(alone ? across(board, out) : clear, toEdge(paper, middle, out));
  const depth = Math.min(REACH_INSIDE, across(boxes.get(s.opening) ?? box(0, 0, 0, 0), out));
  const inwards = times(out, -1);
  const places = (crowded ? [] : STROKE_STEPS).flatMap((styles) => {
    const standing = once(() => strokeBlock(s, styles, whole ? 'standing' : how, view, fonts));
    const lying = once(() => strokeBlock(s, styles, 'lying', view, fonts));
    return [
      () => besideSide(standing(), seen, out, upright, 4, reach),
      () => besideSide(lying(), seen, out, along, 4, reach),
      () => besideSide(standing(), seen, inwards, upright, 4, depth),
      () => besideSide(lying(), seen, inwards, along, 4, depth),
    ];
  });
  const small = SMALL_STEPS.map((styles) => once(() => smallBlock(s, styles, how, view, fonts)));
  const smallLying = SMALL_STEPS.map((styles) => once(() => smallBlock(s, styles, 'lying', view, fonts)));
  places.push(
    ...small.flatMap((block, i) => [
      () => besideSide(block(), seen, inwards, upright, 2, depth),
      () => besideSide(smallLying[i]!(), seen, inwards, along, 2, depth),
      () => besideSide(block(), seen, out, upright, 2, Math.min(reach, 60)),
      () => besideSide(smallLying[i]!(), seen, out, along, 2, Math.min(reach, 60)),
    ]),
  );
  const far = small.slice(1).map((block) => () => around(block(), upright, middle, 140));
  const tries: Try[] = [{ places: () => chained(places), farther: () => chained(crowded ? far.slice(-1) : far) }];
  if (crowded || !whole) {
    const number = once(() => (crowded ? numberBlock(s, FINE_BOLD, fonts) : arrowAndNumber(s, BOLD, how, fonts)));
    const beside = [inwards, out].map((way) => () => besideSide(number(), seen, way, upright, 1.5, 30));
    const round = () => [around(number(), upright, middle, 140)];
    tries.push({ places: () => chained(beside), farther: round, short: true });
  }
  return { what: `number and reading of stroke ${s.order}`, why: 'reading', target: middle, alongLine: true, tries };
}
