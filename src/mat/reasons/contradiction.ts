import { type Clashing, error, type Problem } from '../../problems/problem.ts';
import { showLength } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import type { Given } from '../sizes/given.ts';
import { type Equation, type System, systemFrom } from '../sizes/linear.ts';
import { isSum } from '../sizes/sum-equation.ts';
import { fielded } from './fields.ts';

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
  const system = base.grown();
  const contradictions: Contradiction[] = [];
  const agreeing: Contradiction[] = [];
  for (const given of givens) {
    const addition = system.add(given);
    if (addition.added) continue;
    const { residual, taken } = addition;
    (Math.abs(residual) > AGREEMENT ? contradictions : agreeing).push({ given, residual, taken });
  }
  return { contradictions, agreeing };
}

/**
 * The one given, the least trusted first, that explains all: without it the others agree, and they settle it. It has a
 * part in every contradiction.
 */
function explanation(
  base: System,
  givens: readonly Given[],
  found: readonly Contradiction[],
): Contradiction | undefined {
  const suspects = givens.filter((given) => found.every(({ taken }) => taken.has(given)));
  for (const suspect of suspects.toReversed()) {
    const left = checked(base, [...givens.filter((each) => each !== suspect), suspect]).contradictions;
    if (left.length === 1 && left[0]!.given === suspect) return left[0];
  }
  return undefined;
}

/** Where a size was stated in more ways than one, the shortest way to say what each does not go with. */
function shortest(
  base: System,
  givens: readonly Given[],
  found: readonly Contradiction[],
  agreeing: readonly Given[],
): readonly Contradiction[] {
  const named = found.map(({ given }) => given);
  const others = givens.filter((each) => !named.includes(each));
  const involved = ({ taken }: Contradiction): number => givens.filter((given) => taken.has(given)).length;
  const ways = agreeing.map((first) => {
    const order = [first, ...others.filter((each) => each !== first), ...named.filter((each) => each !== first)];
    return checked(base, order).contradictions;
  });
  return found.map((each) =>
    ways
      .flatMap((way) => way.filter(({ given }) => given === each.given))
      .reduce((best, way) => (involved(way) < involved(best) ? way : best), each),
  );
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
    if (!isSum(source) || 'others' in source) continue;
    for (const { kind, what, path, length, times } of source.summands) {
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
  const fixed = [...structure, ...links];
  if (checked(systemFrom(fixed), givens).contradictions.length === 0) return [];
  const base = systemFrom(fixed, { traced: true });
  const { contradictions, agreeing } = checked(base, givens);
  const single = contradictions.length > 1 ? explanation(base, givens, contradictions) : undefined;
  const spare = agreeing.slice(0, MOST_WAYS).map(({ given }) => given);
  const told = single === undefined ? contradictions : [single];
  return shortest(base, givens, told, spare).map((each) => problem(each, givens, units));
}
