import type { Equation } from './linear.ts';
import { isSourced, type Part, type Rule } from './parts.ts';

/** What a size is made of. */
export interface Sum {
  readonly parts: readonly Part[];
  readonly rules: readonly Rule[];
}

/** Below this a share of a length is the rounding of the arithmetic. */
const NOTHING = 1e-9;

/** Several sums, each as often as it is taken; what stands in more than one of them is counted together. */
export function together(taken: readonly { readonly sum: Sum; readonly times: number }[]): Sum {
  const parts = new Map<string, Part>();
  const rules = new Map<string, Rule>();
  for (const { sum, times } of taken) {
    for (const part of sum.parts) {
      const key = `${part.kind} ${part.what} ${part.length} ${part.path?.join(' ')}`;
      const known = parts.get(key)?.times ?? 0;
      parts.set(key, { ...part, times: known + times * part.times });
    }
    for (const rule of sum.rules) rules.set(`${rule.what} ${rule.path?.join(' ')}`, rule);
  }
  return { parts: [...parts.values()].filter(({ times }) => Math.abs(times) > NOTHING), rules: [...rules.values()] };
}

/** The parts and rules of equations, each as often as it is taken. */
export const sumOf = (equations: ReadonlyMap<Equation, number>): Sum =>
  together(
    [...equations].flatMap(([each, times]) =>
      isSourced(each) ? [{ sum: { parts: each.parts, rules: each.rule === undefined ? [] : [each.rule] }, times }] : [],
    ),
  );

export const lengthOf = ({ parts }: Sum): number =>
  parts.reduce((total, { length, times }) => total + length * times, 0);
