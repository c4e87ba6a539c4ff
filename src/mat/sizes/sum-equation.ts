import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import { type Equation, equation } from './linear.ts';

/** A length that a size is made of. */
export interface Summand {
  /** Stated in the job, the usual one of a job that says nothing, what a bevel takes, or what a shape reaches further. */
  readonly kind: 'given' | 'usual' | 'bevel' | 'shape';
  /** e.g. `left border`. */
  readonly what: string;
  /** Where the job says it; of a bevel, its board. */
  readonly path?: Problem['path'];
  /** mm. */
  readonly length: number;
  readonly times: number;
}

/** How sizes hang together where no length says it: a weighting, a proportion, or a habit, which has no path. */
export interface Rule {
  readonly what: string;
  readonly path?: Problem['path'];
}

/** An equation that says what it was made from: its value is the sum of `times × length` of its summands. */
export interface SumEquation extends Equation {
  readonly summands: readonly Summand[];
  readonly rule?: Rule;
}

export const isSum = (each: Equation): each is SumEquation => 'summands' in each;

export function sumEquation(
  terms: Readonly<Record<string, number>>,
  summands: readonly Summand[],
  rule?: Rule,
): SumEquation {
  const value = summands.reduce((sum, { length, times }) => sum + times * length, 0);
  return { ...equation(terms, value), summands, ...defined({ rule }) };
}

/** The bevel of a layer, as often as it is counted. */
export const bevelSummand = (layer: number, name: string, length: number, times: number): readonly Summand[] =>
  length === 0
    ? []
    : [{ kind: 'bevel', what: `bevel of ${name}`, path: ['mat', 'layers', layer, 'board'], length, times }];
