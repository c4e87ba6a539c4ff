import type { AvoidBox, Words } from '../../drawing/full-scale.ts';
import type { Drawing, Item } from '../../drawing/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Problem } from '../../problems/problem.ts';
import { type InkedLine, Room } from '../../text/room.ts';
import { type GroupList, groupsOf } from './groups.ts';
import { linesOf } from './inked-lines.ts';
import { LabelSetter } from './label-setter.ts';
import { type LabelsOf, type Missing, wordsOnSheets } from './words-on-sheets.ts';

type Head = Omit<Drawing, 'groups'>;

/** A full-scale drawing while it is made: first lines, then words where nothing else lies. */
export class FullScaleSheet {
  /** Where words may stand. */
  readonly paper: Box;
  readonly avoid: AvoidBox[] = [];
  private readonly groups: GroupList;
  private readonly items: ReadonlyMap<string, Item[]>;

  constructor(paper: Box, groups: GroupList) {
    this.paper = paper;
    this.groups = groups;
    this.items = new Map(groups.map(([name]) => [name, []]));
  }

  readonly add = (group: string, ...items: readonly Item[]): void => {
    this.items.get(group)!.push(...items);
  };

  /** What is free of the lines that are drawn so far. */
  clearOf = (pens: Drawing['pens']): Room => roomWithout(this.inked(pens));

  private inked(pens: Drawing['pens']): readonly InkedLine[] {
    return [...this.items.values()].flat().flatMap((item) => linesOf(item, pens));
  }

  /** All lines are drawn: the words of the whole, and how they are set on sheets. */
  withWords(head: Head, missing: Missing, labelsOf: LabelsOf): WithWords {
    const inked = this.inked(head.pens);
    const takenLines = (): Room => roomWithout(inked);
    const setter = new LabelSetter(takenLines(), [this.paper], true);
    for (const label of labelsOf({ area: this.paper, whole: true }, setter.room)) setter.set(label);
    this.avoid.push(...setter.placed.map(({ label, box: area }): AvoidBox => ({ why: label.why, box: area })));
    const lines = { ...head, groups: groupsOf(this.groups, this.items, []) };
    return {
      drawing: { ...head, groups: groupsOf(this.groups, this.items, setter.placed) },
      words: wordsOnSheets({
        lines,
        groups: this.groups,
        placed: setter.placed,
        paper: this.paper,
        takenLines,
        labelsOf,
        missing,
      }),
      warnings: missing('', setter),
    };
  }
}

interface WithWords {
  readonly drawing: Drawing;
  readonly words: Words;
  readonly warnings: readonly Problem[];
}

function roomWithout(lines: readonly InkedLine[]): Room {
  const taken = new Room();
  for (const each of lines) taken.addLine(each);
  return taken;
}
