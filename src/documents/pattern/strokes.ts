import type { Stroke } from '../../bench/model.ts';
import type { AvoidBox } from '../../drawing/full-scale.ts';
import type { Item, LineItem } from '../../drawing/model.ts';
import { type Box, box, grown } from '../../geometry/box.ts';
import { clipLine } from '../../geometry/clip.ts';
import { flattened } from '../../geometry/flatten.ts';
import { polygon, straightSides } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { Room } from '../../text/room.ts';
import type { Curved } from './curves.ts';
import { extended, faceLine, line, lineBox, outward, tick } from './lines.ts';

export interface Tick {
  readonly item: LineItem;
  readonly letter: 'S' | 'E';
  readonly stroke: Stroke;
  /** Towards the border. */
  readonly out: Point;
}

/** A line that a bar or a straightedge is laid on, as it is drawn. */
export interface DrawnRest {
  readonly stroke: Stroke;
  readonly item: LineItem;
}

/** `1-left`, or `1-left-2` where the opening has several sides of that name. */
export const tagOf = (s: Stroke): string => `${s.opening}-${s.side}${s.part === undefined ? '' : `-${s.part}`}`;

/**
 * The lines to follow, their face edges, straightedges and ticks; ticks and the lines of bars are given back for their words. On a crowded sheet
 * those at the ends have dashes of their own.
 */
export function drawStrokes(
  own: readonly Stroke[],
  job: Job,
  paper: Box,
  boxes: ReadonlyMap<number, Box>,
  curved: readonly Curved[],
  add: (group: string, ...items: readonly Item[]) => void,
  avoid: AvoidBox[],
  crowded = false,
): { readonly ticks: readonly Tick[]; readonly rests: readonly DrawnRest[] } {
  const rests: DrawnRest[] = [];
  const cuts = new Room();
  for (const s of own) cuts.addLine({ ...s.line, half: 0 });
  for (const part of curved.flatMap((each) => each.parts)) {
    for (const side of straightSides(polygon(flattened(part, 0.1), part.closed))) cuts.addLine({ ...side, half: 0 });
  }
  const all = own.flatMap((s) => {
    const tag = tagOf(s);
    const out = outward(s, job.bench.head.opening);
    add('cut', line('cut', s.line.from, s.line.to, `cut-${tag}`));
    const face = faceLine(s, `face-${tag}`);
    if (face !== undefined) add('face', face);
    const opening = boxes.get(s.opening)!;
    const depth = Math.abs(out.x) * opening.width + Math.abs(out.y) * opening.height;
    const ticks = (
      [
        ['S', s.start],
        ['E', s.stop],
      ] as const
    ).map(([letter, mark]): Tick => {
      const item = tick(mark, out, paper, depth, cuts, `${letter === 'S' ? 'start' : 'stop'}-${tag}`);
      add('marks', crowded && letter === 'E' ? { ...item, pen: 'end' } : item);
      avoid.push({ why: 'tick', box: grown(lineBox(item), 1) });
      return { item, letter, stroke: s, out };
    });
    for (const end of [s.line.from, s.line.to]) avoid.push({ why: 'corner', box: grown(box(end.x, end.y, 0, 0), 8) });
    rests.push(...drawRests(s, tag, paper, add));
    return ticks;
  });
  return { ticks: all, rests };
}

/** Where the straightedge or the bar lies, as far along as the paper goes. */
export function drawRests(
  s: Stroke,
  tag: string,
  paper: Box,
  add: (group: string, ...items: readonly Item[]) => void,
): readonly DrawnRest[] {
  const items: LineItem[] = [];
  if (s.straightedge !== undefined) {
    const rest = extended(s.straightedge, paper);
    items.push(line('straightedge', rest.from, rest.to, `straightedge-${tag}`));
  }
  // A bar that would lie off the board has no line.
  const rest = s.bar === undefined ? undefined : clipLine(s.bar, paper);
  if (rest !== undefined) {
    const bar = extended(rest, paper);
    items.push(line('bar', bar.from, bar.to, `bar-${tag}`));
  }
  add('straightedge', ...items);
  return items.map((item) => ({ stroke: s, item }));
}
