import { assumptions } from './assumptions.ts';
import type { Given } from './given.ts';
import { type Equation, type System, systemFrom } from './linear.ts';
import { type Plan, structure, unknowns } from './structure.ts';

/**
 * The system that the givens make, with the assumptions where they leave something open. The sizes of the whole mat
 * come first: among givens that agree but for a rounding, they are kept to the digit.
 */
export function systemOf(plan: Plan, givens: readonly Given[], more: readonly Equation[] = [], traced = false): System {
  const whole = givens.filter((each) => each.whole);
  const others = givens.filter((each) => !each.whole);
  return systemFrom([...structure(plan), ...whole, ...others, ...more, ...assumptions(plan)], { traced });
}

/** Below this a solved length and a given one differ by the rounding of the arithmetic alone. */
const ROUNDING = 1e-9;

/** The lengths that givens state outright, so that they come back without the arithmetic's rounding. */
function stated(givens: readonly Given[]): ReadonlyMap<string, number> {
  const lengths = new Map<string, number>();
  for (const given of givens) {
    const [only, ...others] = given.terms;
    if (only !== undefined && others.length === 0) lengths.set(only[0], given.value / only[1]);
  }
  return lengths;
}

/** Every unknown's length, or undefined where one of them is left open. */
export function lengthsIn(
  plan: Plan,
  system: System,
  givens: readonly Given[],
): ReadonlyMap<string, number> | undefined {
  const outright = stated(givens);
  const lengths = new Map<string, number>();
  for (const name of unknowns(plan)) {
    const solved = system.value(name);
    if (solved === undefined) return undefined;
    const written = outright.get(name);
    lengths.set(name, written !== undefined && Math.abs(written - solved) < ROUNDING ? written : solved);
  }
  return lengths;
}
