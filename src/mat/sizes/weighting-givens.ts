import type { Job } from '../../job/job.ts';
import { showLength } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import type { Given, Terms } from './given.ts';
import { type Summand, sumEquation } from './sum-equation.ts';
import { border } from './unknowns.ts';

const WEIGHTING = ['mat', 'weighting'];

function weightingRule(name: string, terms: Terms, more: number, others: Given['others']): Given {
  const rule = { what: name, path: WEIGHTING };
  const summands: Summand[] =
    more === 0 ? [] : [{ kind: 'given', what: 'weighting', path: WEIGHTING, length: more, times: 1 }];
  return {
    ...sumEquation(terms, summands, rule),
    path: WEIGHTING,
    what: name,
    name,
    others,
    whole: false,
    also: [],
  };
}

/** `bottom = times × top + more`, the times being 1 or the more 0. */
function bottomRule(units: LengthUnit, said: string, times: number, more: number): Given {
  const others = (residual: number): string => {
    if (times === 1) return `bottom = top + ${showLength(more - residual, units)}`;
    return `the bottom border ${showLength(Math.abs(residual), units)} ${residual < 0 ? 'wider' : 'narrower'} than that`;
  };
  return weightingRule(`weighting ${said}`, { [border('bottom')]: 1, [border('top')]: -times }, more, others);
}

function centredRule(units: LengthUnit): Given {
  const terms = { [border('right')]: 1, [border('left')]: -1 };
  return weightingRule('weighting diagonal (left = right)', terms, 0, (residual) => {
    return `right = left + ${showLength(-residual, units)}`;
  });
}

/** The diagonal's top border is a share of top and bottom together that hangs on the widths (`diagonal.ts`). */
export function weightingGivens(job: Job, share: number | undefined): Given[] {
  const { units } = job;
  const { weighting } = job.mat;
  switch (weighting?.kind) {
    case undefined:
      return [];
    case 'none':
      return [bottomRule(units, 'none (bottom = top)', 1, 0)];
    case 'add': {
      const { length } = weighting;
      return [bottomRule(units, `(bottom = top + ${showLength(length, units)})`, 1, length)];
    }
    case 'ratio':
      return [bottomRule(units, `(bottom = ${Number(weighting.ratio.toFixed(4))} × top)`, weighting.ratio, 0)];
    case 'diagonal':
      return share === undefined
        ? [centredRule(units)]
        : [centredRule(units), bottomRule(units, 'diagonal', (1 - share) / share, 0)];
    default: {
      const never: never = weighting;
      return never;
    }
  }
}
