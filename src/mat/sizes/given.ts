import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import { showLength } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import { type SumEquation, type Summand, sumEquation } from './sum-equation.ts';

/** A size or a rule that the job states, as an equation whose residual is a length. */
export interface Given extends SumEquation {
  readonly path: Problem['path'];
  /** In words, with its length: `left border 3 in`. */
  readonly what: string;
  /** The same without it, and the length itself; a rule has none. */
  readonly name: string;
  readonly length?: number;
  /** Where the same stands for openings that are alike. */
  readonly also: readonly Problem['path'][];
  /** What one length in the text is called that was written for several sides; they change together. */
  readonly shared?: string;
  /** What the other sizes make of it, in words, where they leave that residual: `3 1/2 in`. */
  readonly others: (residual: number) => string;
  /** True for the sizes of the whole mat. */
  readonly whole: boolean;
  /** True where it can be changed, but not left out. */
  readonly fixed?: true;
}

export type Terms = Readonly<Record<string, number>>;

interface Stated {
  readonly path: Problem['path'];
  /** e.g. `left border`. */
  readonly what: string;
  readonly terms: Terms;
  /** As it was written, mm. */
  readonly length: number;
  /** What the terms sum up to beside the length. */
  readonly more?: readonly Summand[];
  readonly whole?: boolean;
  readonly also?: readonly Problem['path'][];
  readonly shared?: string;
  readonly fixed?: boolean;
}

export function given(units: LengthUnit, stated: Stated): Given {
  const { path, what, terms, length, more = [], whole = false, also = [], shared, fixed } = stated;
  return {
    ...sumEquation(terms, [{ kind: 'given', what: shared ?? what, path, length, times: 1 }, ...more]),
    path,
    get what() {
      return `${what} ${showLength(length, units)}`;
    },
    name: what,
    length,
    others: (residual) => showLength(length - residual, units),
    whole,
    also,
    ...defined({ shared, fixed: fixed || undefined }),
  };
}
