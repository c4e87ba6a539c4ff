import type { AvoidBox, Words } from '../../drawing/full-scale.ts';
import type { Drawing, Item } from '../../drawing/model.ts';
import { type Box, bottom, box } from '../../geometry/box.ts';
import { type Point, point } from '../../geometry/point.ts';
import type { Problem } from '../../problems/problem.ts';
import { Room } from '../../text/room.ts';
import { GROUPS, groupsOf, noRoom } from './groups.ts';
import { LabelSetter } from './label-setter.ts';
import { linesOf } from './places.ts';
import { type LabelsOf, wordsOnSheets } from './words-on-sheets.ts';

type Head = Omit<Drawing, 'groups'>;

/** A full-scale sheet while it is drawn: first lines, then words where nothing else lies. */
export class PatternSheet {
  /** Where words may stand. */
  readonly paper: Box;
  readonly avoid: AvoidBox[] = [];
  private readonly items = new Map<string, Item[]>(GROUPS.map(([name]) => [name, []]));

  constructor(paper: Box) {
    this.paper = paper;
  }

  readonly add = (group: string, ...items: readonly Item[]): void => {
    this.items.get(group)!.push(...items);
  };

  /** All lines are drawn: the words of the whole, and how they are set on sheets. */
  withWords(head: Head, name: string, labelsOf: LabelsOf): WithWords {
    const inked = [...this.items.values()].flat().flatMap(linesOf);
    const takenLines = (): Room => {
      const taken = new Room();
      for (const each of inked) taken.addLine(each);
      return taken;
    };
    const setter = new LabelSetter(takenLines(), [this.paper], true);
    for (const label of labelsOf({ area: this.paper, whole: true }, setter.room)) setter.set(label);
    this.avoid.push(...setter.placed.map(({ label, box: area }): AvoidBox => ({ why: label.why, box: area })));
    const lines = { ...head, groups: groupsOf(this.items, []) };
    return {
      drawing: { ...head, groups: groupsOf(this.items, setter.placed) },
      words: wordsOnSheets({ lines, placed: setter.placed, paper: this.paper, takenLines, labelsOf, name }),
      warnings: noRoom(name, setter),
    };
  }
}

interface WithWords {
  readonly drawing: Drawing;
  readonly words: Words;
  readonly warnings: readonly Problem[];
}

/** A box's middle at its lower edge. */
export const foot = (area: Box): Point => point(area.x + area.width / 2, bottom(area));

/** The strip of a box that words inside an opening may use, at its upper and at its lower edge. */
export function innerStrips(inner: Box, reach: number): readonly [Box, Box] {
  const high = Math.min(inner.height, reach);
  return [box(inner.x, inner.y, inner.width, high), box(inner.x, bottom(inner) - high, inner.width, high)];
}
