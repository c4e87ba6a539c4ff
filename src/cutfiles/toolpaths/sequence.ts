import { pathLength } from '../../geometry/measure.ts';
import { reversed } from '../../geometry/path.ts';
import { distance, type Point } from '../../geometry/point.ts';
import type { Machine } from '../../shop/machine.ts';
import type { Operation } from '../../shop/operation.ts';
import type { Toolpath } from '../model.ts';
import { shortTravel } from './order.ts';

/** What is done first; within an operation nothing hangs on the order, so that the shortest way decides. */
const FIRST_TO_LAST: readonly Operation[] = ['registration', 'mark', 'ink', 'score', 'inner', 'bevel', 'outer', 'note'];

/** Where the tool goes before it lies on the board. */
const end = (path: Toolpath['path']): Point => path.segments.at(-1)!.to;

/** Every toolpath once, in the order in which they are to be cut, with short ways between them. */
export function inOrder(toolpaths: readonly Toolpath[], from: Point): readonly Toolpath[] {
  const found: Toolpath[] = [];
  let at = from;
  for (const operation of FIRST_TO_LAST) {
    const own = toolpaths.filter((each) => each.operation === operation);
    const stretches = own.map(({ path, reversible }) => ({ start: path.start, end: end(path), reversible }));
    for (const { index, backwards } of shortTravel(stretches, at)) {
      const each = own[index]!;
      found.push(backwards ? { ...each, path: reversed(each.path) } : each);
    }
    const last = found.at(-1);
    if (last !== undefined) at = end(last.path);
  }
  return found;
}

/** The way with the tool up, from `from` through all of them. */
function travelLength(toolpaths: readonly Toolpath[], from: Point): number {
  let at = from;
  return toolpaths.reduce((sum, { path }) => {
    const way = distance(at, path.start);
    at = end(path);
    return sum + way;
  }, 0);
}

export interface Time {
  readonly travel: number;
  /** By operation, null where its speed is not known. */
  readonly cutting: ReadonlyMap<Operation, number | null>;
  readonly total: number | null;
}

/** Lengths over speeds; how a machine gathers speed in corners is not known here. */
export function timeOf(toolpaths: readonly Toolpath[], machine: Machine, from: Point): Time {
  const travel = travelLength(toolpaths, from);
  const cutting = new Map<Operation, number | null>();
  for (const { operation, path } of toolpaths) {
    const { speed } = machine.operations[operation];
    const before = cutting.get(operation) ?? 0;
    cutting.set(operation, speed === undefined || before === null ? null : before + pathLength(path) / speed);
  }
  const cut = [...cutting.values()].reduce<number | null>((sum, t) => (sum === null || t === null ? null : sum + t), 0);
  const total =
    cut === null || machine.travel === undefined
      ? null
      : cut + travel / machine.travel + toolpaths.length * machine.lift;
  return { travel, cutting, total };
}
