import type { AvoidBox } from '../../drawing/full-scale.ts';
import type { Group, Item } from '../../drawing/model.ts';
import { once } from '../../drawing/once.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box } from '../../geometry/box.ts';
import type { Line } from '../../geometry/clip.ts';
import { between, distance, type Point, point } from '../../geometry/point.ts';
import { type Problem, warning } from '../../problems/problem.ts';
import { labelBlock, turnedBlock } from '../../text/block.ts';
import { type Candidate, type Found, Room } from '../../text/room.ts';
import { LEAD_IN, stepsDown } from '../../text/styles.ts';
import { around } from './labels.ts';
import { line, PENS } from './lines.ts';
import { chained, closeTo, linesOf, nearestOf } from './places.ts';

/** Words farther from their place than this are led to it. */
const STANDS_OFF = 30;

const GROUPS: readonly (readonly [string, string])[] = [
  ['board', "Board's edge, tabs and trim line"],
  ['cut', 'Lines to cut'],
  ['curves', 'Axes, centres and pins of curves'],
  ['decor', 'Grooves and ink lines of the face'],
  ['face', 'Face edges'],
  ['leaders', 'Leaders from words to lines'],
  ['marks', 'Start and stop marks'],
  ['strokes', 'Stroke arrows and numbers'],
  ['readings', 'Guide readings'],
  ['straightedge', 'Straightedge and bar lines'],
  ['centre', 'Centres of the edges'],
  ['hinge', 'Hinge edge'],
  ['notes', 'BACK, TOP, job, head'],
];

/** A full-scale sheet while it is drawn: first lines, then words where nothing else lies. */
export class PatternSheet {
  /** Where words may stand. */
  readonly paper: Box;
  readonly fonts: Fonts;
  readonly avoid: AvoidBox[] = [];
  /** What found no room. */
  readonly unplaced: string[] = [];
  /** Sides that show their number alone. */
  keyed = 0;
  readonly room = new Room();
  private readonly items = new Map<string, Item[]>(GROUPS.map(([name]) => [name, []]));

  constructor(paper: Box, fonts: Fonts) {
    this.paper = paper;
    this.fonts = fonts;
  }

  readonly add = (group: string, ...items: readonly Item[]): void => {
    this.items.get(group)!.push(...items);
  };

  /** All lines are drawn: from now on words keep clear of them. */
  endOfLines(): void {
    for (const each of [...this.items.values()].flat().flatMap(linesOf)) this.room.addLine(each);
  }

  /** As `attempt`; what finds no room is remembered. */
  set(
    what: string,
    candidates: Iterable<Candidate>,
    why: AvoidBox['why'],
    target?: Point,
    farther: Iterable<Candidate> = [],
  ): void {
    if (!this.attempt(candidates, why, target, farther)) this.unplaced.push(what);
  }

  /** Beside its place, or farther off with a leader to it; `target` is that place, for words that may stand off. */
  attempt(
    candidates: Iterable<Candidate>,
    why: AvoidBox['why'],
    target?: Point,
    farther: Iterable<Candidate> = [],
  ): boolean {
    const found = this.room.firstFree(candidates, this.paper);
    if (found !== undefined) {
      if (target !== undefined && distance(nearestOf(found.box, target), target) > STANDS_OFF)
        this.lead(found.box, target);
      this.keep(found, why);
      return true;
    }
    for (const candidate of farther) {
      const free = this.room.firstFree([candidate], this.paper);
      if (free === undefined || !this.lead(free.box, target!)) continue;
      this.keep(free, why);
      return true;
    }
    return false;
  }

  /** Lines of words as near to a point as there is room, else led to it. */
  setWords(what: string, group: string, lines: readonly string[], at: Point): void {
    const blocks = stepsDown(LEAD_IN).map((style) =>
      once(() =>
        labelBlock(
          lines.map((text) => ({ group, text, style })),
          this.fonts,
        ),
      ),
    );
    const far = blocks.map((block) => () => around(block(), 0, at, 200));
    const near = blocks.map((block) => () => closeTo(block(), at, this.paper, 60));
    this.set(what, chained(near), 'text', at, chained(far));
  }

  groups(): readonly Group[] {
    return GROUPS.flatMap(([name, label]): Group[] => {
      const items = this.items.get(name)!;
      return items.length === 0 ? [] : [{ name, label, shown: true, items }];
    });
  }

  usesPen(pen: string): boolean {
    return [...this.items.values()].some((items) =>
      items.some((item) => (item.kind === 'line' || item.kind === 'path') && item.pen === pen),
    );
  }

  /** What found no room, in one warning where it is much. */
  noRoom(name: string): readonly Problem[] {
    const hint = 'it stands on sheet 1 and in the check command instead';
    const { unplaced } = this;
    const told =
      unplaced.length > 6 ? [`${unplaced.length} words, among them ${unplaced.slice(0, 3).join(', ')}`] : unplaced;
    const keyed =
      this.keyed === 0
        ? []
        : [
            warning(
              'label-number-alone',
              ['mat'],
              `${this.keyed} sides on ${name} show their number alone`,
              'their settings stand by these numbers on the ticket and in the check command',
            ),
          ];
    return [
      ...told.map((what) => warning('label-without-room', ['mat'], `no room on ${name} for: ${what}`, hint)),
      ...keyed,
    ];
  }

  private keep({ candidate, box }: Found, why: AvoidBox['why']): void {
    const { items, groups = [] } = turnedBlock(candidate.block, candidate.quarter, candidate.at);
    items.forEach((item, i) => {
      this.add(groups[i]!, item);
    });
    this.room.take(box);
    this.avoid.push({ why, box });
  }

  /** A leader from words to where they belong, unless other words stand in its way. */
  private lead(area: Box, target: Point): boolean {
    const near = nearestOf(area, target);
    const gap = 0.6 / Math.max(1.2, distance(target, near));
    const leader: Line = { from: between(near, target, gap), to: between(target, near, gap) };
    if (this.room.crossesWords(leader)) return false;
    this.add('leaders', line('leader', leader.from, leader.to));
    this.room.addLine({ ...leader, half: PENS.leader!.width / 2 });
    return true;
  }
}

/** A box's middle at its lower edge. */
export const foot = (area: Box): Point => point(area.x + area.width / 2, bottom(area));

/** The strip of a box that words inside an opening may use, at its upper and at its lower edge. */
export function innerStrips(inner: Box, reach: number): readonly [Box, Box] {
  const high = Math.min(inner.height, reach);
  return [box(inner.x, inner.y, inner.width, high), box(inner.x, bottom(inner) - high, inner.width, high)];
}
