import type { Drawing, Group, Item } from '../../drawing/model.ts';
import { type Problem, warning } from '../../problems/problem.ts';
import type { PlacedLabel } from './label.ts';
import type { LabelSetter } from './label-setter.ts';

export const GROUPS: readonly (readonly [string, string])[] = [
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

/** Lines and then words, in the order of the groups; groups of nothing are left out. */
export function groupsOf(
  lines: ReadonlyMap<string, readonly Item[]>,
  placed: readonly PlacedLabel[],
): readonly Group[] {
  const all = new Map(GROUPS.map(([name]) => [name, [...(lines.get(name) ?? [])]]));
  for (const { block, leader } of placed) {
    if (leader !== undefined) all.get('leaders')!.push(leader);
    const { items, groups = [] } = block;
    items.forEach((item, i) => {
      all.get(groups[i]!)!.push(item);
    });
  }
  return GROUPS.flatMap(([name, label]): Group[] => {
    const items = all.get(name)!;
    return items.length === 0 ? [] : [{ name, label, shown: true, items }];
  });
}

/** What found no room, in one warning where it is much. */
export function noRoom(name: string, { unplaced, short }: LabelSetter): readonly Problem[] {
  const hint = 'it stands on sheet 1 and in the check command instead';
  const told =
    unplaced.length > 6 ? [`${unplaced.length} words, among them ${unplaced.slice(0, 3).join(', ')}`] : unplaced;
  const numbers =
    short === 0
      ? []
      : [
          warning(
            'label-number-alone',
            ['mat'],
            `${short} sides on ${name} show their number alone`,
            'their settings stand by these numbers on the ticket and in the check command',
          ),
        ];
  return [
    ...told.map((what) => warning('label-without-room', ['mat'], `no room on ${name} for: ${what}`, hint)),
    ...numbers,
  ];
}

export const usesPen = (pen: string, { groups }: Drawing): boolean =>
  groups.some(({ items }) => items.some((item) => (item.kind === 'line' || item.kind === 'path') && item.pen === pen));
