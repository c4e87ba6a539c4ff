import { type Clashing, error, type Problem } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';
import type { LengthUnit } from '../units/units.ts';
import { fielded } from './fields.ts';
import type { Given } from './given.ts';
import { add, addAll, EMPTY, type Equation, type System } from './linear.ts';
import { isSourced } from './parts.ts';

/**
 * Givens that differ by less agree: a hundredth of a millimetre, the last digit that messages show, so that sizes
 * copied from a printed list never contradict each other and no message speaks of a difference of 0.
 */
export const AGREEMENT = 0.01;

/** A given, with those that it does not go with. */
export interface Contradiction {
  readonly given: Given;
  readonly residual: number;
  /** How often each is taken, the given itself once: their left sides cancel out. No smaller set of them does. */
  readonly taken: ReadonlyMap<Equation, number>;
}

interface Checked {
  readonly contradictions: readonly Contradiction[];
  /** Those that say nothing new and agree. */
  readonly agreeing: readonly Contradiction[];
}

/** Every given that the ones before it contradict, or say already. */
export function checked(base: System, givens: readonly Given[]): Checked {
  let system = base;
  const contradictions: Contradiction[] = [];
  const agreeing: Contradiction[] = [];
  for (const given of givens) {
    const addition = add(system, given);
    if (addition.added) {
      system = addition.system;
      continue;
    }
    const { residual, taken } = addition;
    (Math.abs(residual) > AGREEMENT ? contradictions : agreeing).push({ given, residual, taken });
  }
  return { contradictions, agreeing };
}

/** The one given, the least trusted first, that explains all: without it the others agree, and they settle it. */
function explanation(base: System, givens: readonly Given[]): Contradiction | undefined {
  for (const suspect of givens.toReversed()) {
    const found = checked(base, [...givens.filter((each) => each !== suspect), suspect]).contradictions;
    if (found.length === 1 && found[0]!.given === suspect) return found[0];
  }
  return undefined;
}

/** Where a size was stated in more ways than one, the shortest way to say what it does not go with. */
function shortest(base: System, givens: readonly Given[], found: Contradiction, agreeing: readonly Given[]) {
  const others = givens.filter((each) => each !== found.given);
  const involved = (each: Contradiction): number => givens.filter((given) => each.taken.has(given)).length;
  return agreeing.reduce((best, first) => {
    const rest = others.filter((each) => each !== first);
    const again = checked(base, [first, ...rest, found.given]).contradictions.find(
      ({ given }) => given === found.given,
    );
    return again !== undefined && involved(again) < involved(best) ? again : best;
  }, found);
}

/** Of many sizes that are stated twice, so many are tried as another way to say it. */
const MOST_WAYS = 12;

function clashing(given: Given, { residual, taken }: Contradiction, units: LengthUnit): Clashing {
  const { path, also, name, length, fixed } = given;
  return {
    path,
    also,
    what: name,
    ...(length === undefined ? {} : { value: length, shown: showLength(length, units) }),
    ...insteadOf(length, residual / taken.get(given)!, units),
    ...(fixed === true ? { fixed } : {}),
  };
}

/** Reveals that are stated by side, and rules, which stand in the structure itself. */
function built({ taken, residual }: Contradiction, units: LengthUnit): readonly Clashing[] {
  const found = new Map<string, { readonly each: Clashing; times: number }>();
  const put = (each: Clashing, times: number): void => {
    const key = `${each.path.join(' ')} ${each.what}`;
    const known = found.get(key);
    if (known === undefined) found.set(key, { each, times });
    else known.times += times;
  };
  for (const [source, count] of taken) {
    if (!isSourced(source) || 'others' in source) continue;
    for (const { kind, what, path, length, times } of source.parts) {
      if (kind !== 'given' || path === undefined) continue;
      // A layer's reveals are worked out only where none is stated.
      const ofLayer = path[0] === 'mat';
      const more = ofLayer ? {} : ({ fixed: true } as const);
      const at = ofLayer ? path.slice(0, -1) : path;
      // It is left out with its other sides, and so not changed by itself.
      const often = ofLayer ? 0 : times * count;
      put({ path: at, also: [], what, value: length, shown: showLength(length, units), ...more }, often);
    }
    const { rule } = source;
    const more = rule?.path?.[0] === 'arrange' ? {} : ({ fixed: true } as const);
    if (rule?.path !== undefined) put({ path: rule.path, also: [], what: rule.what, ...more }, 0);
  }
  return [...found.values()].map(({ each, times }) => ({ ...each, ...insteadOf(each.value, residual / times, units) }));
}

/** What would go with the others; a length of nothing or less is none. */
function insteadOf(length: number | undefined, off: number, units: LengthUnit): Partial<Clashing> {
  const instead = length === undefined ? Number.NaN : length - off;
  if (!(instead > 0 && Number.isFinite(instead))) return {};
  return { instead, insteadShown: showLength(instead, units) };
}

function problem(found: Contradiction, givens: readonly Given[], units: LengthUnit): Problem {
  const { given, residual, taken } = found;
  const difference = showLength(Math.abs(residual), units);
  const involved = givens.filter((each) => each !== given && taken.has(each));
  const change = given.fixed === true ? 'change it' : 'change it or leave it out';
  const hint = `${change}, or change one of: ${involved.map((each) => each.what).join(', ')}`;
  return {
    ...error(
      'sizes-contradict',
      given.path,
      `${given.what} is given, but the other sizes make ${given.others(residual)} (difference ${difference})`,
      hint,
    ),
    clash: [...[given, ...involved].map((each) => clashing(each, found, units)), ...built(found, units)],
  };
}

/** One problem for each independent contradiction; a single given that explains all of them is named alone. */
export function contradictionProblems(
  structure: readonly Equation[],
  stated: readonly Given[],
  units: LengthUnit,
): readonly Problem[] {
  const { links, givens } = fielded(stated, units);
  const base = addAll(EMPTY, [...structure, ...links]);
  const { contradictions, agreeing } = checked(base, givens);
  if (contradictions.length === 0) return [];
  const single = contradictions.length > 1 ? explanation(base, givens) : undefined;
  const spare = agreeing.slice(0, MOST_WAYS).map(({ given }) => given);
  return (single === undefined ? contradictions : [single]).map((each) =>
    problem(shortest(base, givens, each, spare), givens, units),
  );
}
