import type { Equation } from '../sizes/linear.ts';
import { isSum, type Rule, type Summand } from '../sizes/sum-equation.ts';

/** What a size is made of. */
export interface Sum {
  readonly summands: readonly Summand[];
  readonly rules: readonly Rule[];
}

/** Below this a share of a length is the rounding of the arithmetic. */
const NOTHING = 1e-9;

/** Several sums, each as often as it is taken; what stands in more than one of them is counted together. */
export function together(taken: readonly { readonly sum: Sum; readonly times: number }[]): Sum {
  const summands = new Map<string, Summand>();
  const rules = new Map<string, Rule>();
  for (const { sum, times } of taken) {
    for (const part of sum.summands) {
      const key = `${part.kind} ${part.what} ${part.length} ${part.path?.join(' ')}`;
      const known = summands.get(key)?.times ?? 0;
      summands.set(key, { ...part, times: known + times * part.times });
    }
    for (const rule of sum.rules) rules.set(`${rule.what} ${rule.path?.join(' ')}`, rule);
  }
  return {
    summands: [...summands.values()].filter(({ times }) => Math.abs(times) > NOTHING),
    rules: [...rules.values()],
  };
}

/** The summands and rules of equations, each as often as it is taken. */
export const sumOf = (equations: ReadonlyMap<Equation, number>): Sum =>
  together(
    [...equations].flatMap(([each, times]) =>
      isSum(each)
        ? [{ sum: { summands: each.summands, rules: each.rule === undefined ? [] : [each.rule] }, times }]
        : [],
    ),
  );

export const lengthOf = ({ summands }: Sum): number =>
  summands.reduce((total, { length, times }) => total + length * times, 0);
