import { error, type Problem } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';
import type { LengthUnit } from '../units/units.ts';
import type { Given } from './givens.ts';
import { add, EMPTY, type Equation, type System } from './linear.ts';

/**
 * Givens that differ by less agree: a hundredth of a millimetre, the last digit that messages show, so that sizes
 * copied from a printed list never contradict each other and no message speaks of a difference of 0.
 */
export const AGREEMENT = 0.01;

interface Contradiction {
  readonly given: Given;
  readonly residual: number;
  readonly settledBy: readonly Equation[];
}

/** Every given that the ones before it contradict. */
function contradictions(structure: readonly Equation[], givens: readonly Given[]): readonly Contradiction[] {
  let system: System = EMPTY;
  for (const each of structure) {
    const addition = add(system, each);
    if (addition.added) system = addition.system;
  }
  const found: Contradiction[] = [];
  for (const given of givens) {
    const addition = add(system, given);
    if (addition.added) {
      system = addition.system;
    } else if (Math.abs(addition.residual) > AGREEMENT) {
      found.push({ given, residual: addition.residual, settledBy: addition.settledBy });
    }
  }
  return found;
}

/** The one given, the least trusted first, that explains all: without it the others agree, and they settle it. */
function explanation(structure: readonly Equation[], givens: readonly Given[]): Contradiction | undefined {
  for (const suspect of givens.toReversed()) {
    const found = contradictions(structure, [...givens.filter((each) => each !== suspect), suspect]);
    if (found.length === 1 && found[0]!.given === suspect) return found[0];
  }
  return undefined;
}

function problem(found: Contradiction, givens: readonly Given[], units: LengthUnit): Problem {
  const { given, residual, settledBy } = found;
  const difference = showLength(Math.abs(residual), units);
  const involved = givens.filter((each) => settledBy.includes(each)).map((each) => each.what);
  return error(
    'sizes-contradict',
    given.path,
    `${given.what} is given, but the other sizes make ${given.others(residual)} (difference ${difference})`,
    `change it or leave it out, or change one of: ${involved.join(', ')}`,
  );
}

/** One problem for each independent contradiction; a single given that explains all of them is named alone. */
export function contradictionProblems(
  structure: readonly Equation[],
  givens: readonly Given[],
  units: LengthUnit,
): readonly Problem[] {
  const found = contradictions(structure, givens);
  const single = found.length > 1 ? explanation(structure, givens) : undefined;
  return (single === undefined ? found : [single]).map((each) => problem(each, givens, units));
}
