import type { Group, Item } from '../../drawing/model.ts';
import type { PlacedLabel } from './label.ts';

/** The groups of a drawing, in the order of painting, each with what a list of layers calls it. */
export type GroupList = readonly (readonly [name: string, label: string])[];

/** Lines and then words, in the order of the groups; groups of nothing are left out. */
export function groupsOf(
  list: GroupList,
  lines: ReadonlyMap<string, readonly Item[]>,
  placed: readonly PlacedLabel[],
): readonly Group[] {
  const all = new Map(list.map(([name]) => [name, [...(lines.get(name) ?? [])]]));
  for (const { block, leader } of placed) {
    if (leader !== undefined) all.get('leaders')!.push(leader);
    const { items, groups = [] } = block;
    items.forEach((item, i) => {
      all.get(groups[i]!)!.push(item);
    });
  }
  return list.flatMap(([name, label]): Group[] => {
    const items = all.get(name)!;
    return items.length === 0 ? [] : [{ name, label, shown: true, items }];
  });
}
