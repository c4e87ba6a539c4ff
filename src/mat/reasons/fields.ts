import { showPath } from '../../problems/show.ts';
import { showLength } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import type { Given } from '../sizes/given.ts';
import { type SumEquation, sumEquation } from '../sizes/sum-equation.ts';

/** What a job states, with each length that was written for several sides as one given. */
export interface Fields {
  readonly links: readonly SumEquation[];
  readonly givens: readonly Given[];
}

/**
 * A length that was written once for several sides can only be changed for all of them: it is an unknown of its own, which
 * the sides are tied to and which is given once, where the first of them stood.
 */
export function fielded(givens: readonly Given[], units: LengthUnit): Fields {
  const links: SumEquation[] = [];
  const made = new Set<string>();
  const kept = givens.map((each): Given | undefined => {
    const { shared, length } = each;
    if (shared === undefined || length === undefined) return each;
    const name = `field.${showPath(each.path)}`;
    links.push(sumEquation({ ...Object.fromEntries(each.terms), [name]: -1 }, []));
    if (made.has(name)) return undefined;
    made.add(name);
    const part = { kind: 'given', what: shared, path: each.path, length, times: 1 } as const;
    const what = `${shared} ${showLength(length, units)}`;
    return { ...each, ...sumEquation({ [name]: 1 }, [part]), name: shared, what };
  });
  return { links, givens: kept.filter((each) => each !== undefined) };
}
