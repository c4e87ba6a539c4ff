import type { SheetArea, Words, WordsOnSheets } from '../../drawing/full-scale.ts';
import type { Drawing } from '../../drawing/model.ts';
import { type Box, bottom, common, contains, overlaps, right, union } from '../../geometry/box.ts';
import { meetsBox } from '../../geometry/clip.ts';
import type { Room } from '../../text/room.ts';
import { type GroupList, groupsOf } from './groups.ts';
import type { Label, PlacedLabel } from './label.ts';
import { LabelSetter } from './label-setter.ts';

/** What words are set for. */
export interface View {
  /** What is looked at; words may stand elsewhere only on other sheets. */
  readonly area: Box;
  /** The whole drawing, or sheets that lie on a corner of the board by themselves. */
  readonly whole: boolean;
}

/** The words of a view in the order in which they choose their places; `taken` is what they then find there. */
export type LabelsOf = (view: View, taken: Room) => Iterable<Label>;

/** What is told of words without room, on `sheets` or on `corner sheets` of the drawing, or on the whole of it. */
export type Missing = (on: '' | 'sheets' | 'corner sheets', set: LabelSetter) => WordsOnSheets['warnings'];

interface Setting {
  readonly lines: Drawing;
  readonly groups: GroupList;
  /** The words of the whole. */
  readonly placed: readonly PlacedLabel[];
  /** Where words may stand. */
  readonly paper: Box;
  /** All lines, anew each time. */
  readonly takenLines: () => Room;
  readonly labelsOf: LabelsOf;
  readonly missing: Missing;
}

export function wordsOnSheets(setting: Setting): Words {
  const { lines, groups, placed, paper, takenLines, labelsOf, missing } = setting;
  return {
    lines,
    joined: (sheets) => {
      const stays = placed.filter((each) => homeOf(each, sheets) !== undefined);
      if (stays.length === placed.length) return onSheets(lines, groups, sheets, placed, []);
      const taken = withCrosses(takenLines(), sheets);
      for (const { box: area } of stays) taken.take(area);
      const setter = new LabelSetter(taken, keptAreas(sheets, paper), false);
      for (const each of placed) if (!stays.includes(each)) setter.set(each.label);
      return onSheets(lines, groups, sheets, [...stays, ...setter.placed], missing('sheets', setter));
    },
    onCorner: (sheets) => {
      const kept = keptAreas(sheets, paper);
      const setter = new LabelSetter(withCrosses(takenLines(), sheets), kept, false);
      const view: View = { area: union(kept), whole: false };
      for (const label of labelsOf(view, setter.room)) setter.set(label);
      return onSheets(lines, groups, sheets, setter.placed, missing('corner sheets', setter));
    },
  };
}

/** The sheet that words stand on, where no seam and no cross meets them. */
const homeOf = ({ box: area }: PlacedLabel, sheets: readonly SheetArea[]): SheetArea | undefined =>
  sheets.find(({ kept, taken }) => contains(kept, area) && !taken.some((each) => overlaps(each, area)));

function withCrosses(taken: Room, sheets: readonly SheetArea[]): Room {
  for (const area of sheets.flatMap((sheet) => sheet.taken)) taken.take(area);
  return taken;
}

/** What of the sheets is in sight and on the paper that stays on the board. */
const keptAreas = (sheets: readonly SheetArea[], paper: Box): readonly Box[] =>
  sheets.flatMap(({ kept }) => common(kept, paper) ?? []);

/** Every label on the one sheet that holds it, its leader on every sheet that it runs over. */
function onSheets(
  lines: Drawing,
  groups: GroupList,
  sheets: readonly SheetArea[],
  placed: readonly PlacedLabel[],
  warnings: WordsOnSheets['warnings'],
): WordsOnSheets {
  const homes = placed.map((each) => homeOf(each, sheets));
  return {
    warnings,
    sheets: sheets.map((sheet) => {
      const own = placed.flatMap((each, i): readonly PlacedLabel[] => {
        if (homes[i] === sheet) return [each];
        const { leader } = each;
        const { x, y } = sheet.kept;
        const seen = leader !== undefined && meetsBox(leader, x, y, right(sheet.kept), bottom(sheet.kept));
        return seen ? [{ ...each, block: { ...each.block, items: [], groups: [] } }] : [];
      });
      return { ...lines, groups: groupsOf(groups, new Map(), own) };
    }),
  };
}
