import { type BySide, SIDES, type Side, type SomeSides } from '../geometry/sides.ts';
import type { Problem } from '../problems/problem.ts';

/** Sides that have the same length. */
export interface SidesAlike {
  readonly sides: readonly Side[];
  readonly length: number;
}

/** Lengths that differ by less read the same in every message. */
const ALIKE = 1e-6;

/** The four lengths, those that are alike together, so that each is told of once. */
export function alike(lengths: BySide<number>): readonly SidesAlike[] {
  const groups: { sides: Side[]; length: number }[] = [];
  for (const side of SIDES) {
    const group = groups.find((each) => Math.abs(each.length - lengths[side]) <= ALIKE);
    if (group === undefined) groups.push({ sides: [side], length: lengths[side] });
    else group.sides.push(side);
  }
  return groups;
}

/** `on every side`, `at the left`, `at the top and bottom`. */
export function whereOn(sides: readonly Side[]): string {
  if (sides.length === SIDES.length) return 'on every side';
  return `at the ${sides.slice(0, -1).join(', ')}${sides.length > 1 ? ' and ' : ''}${sides.at(-1)}`;
}

/** Where those sides are given in the job: the one side, the whole map for several, `otherwise` for none. */
export function pathOf(
  given: SomeSides | undefined,
  sides: readonly Side[],
  map: Problem['path'],
  otherwise: Problem['path'],
): Problem['path'] {
  const stated = sides.filter((side) => given?.[side] !== undefined);
  if (stated.length === 0) return otherwise;
  return stated.length === 1 ? [...map, stated[0]!] : map;
}
