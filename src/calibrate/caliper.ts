import { error, type Problem, warning } from '../problems/problem.ts';
import { printDecimal } from '../units/print.ts';
import { mean, standardDeviation, standingOut } from './statistics.ts';

/** What a caliper reads is good to this, mm. Common practice, no source. */
const CALIPER = 0.02;

export interface Averaged {
  readonly mean: number;
  /** Of one reading; the caliper's own where there is one reading alone. */
  readonly deviation: number;
  readonly count: number;
}

/** The mean of what stands out of nothing; problems where a reading is no length, or none is given. */
export function averaged(path: readonly string[], values: readonly number[], problems: Problem[]): Averaged {
  const key = path.join('.');
  if (values.length === 0 || values.some((value) => !(Number.isFinite(value) && value > 0))) {
    const message = `${key} needs readings, each a length over 0`;
    problems.push(error('coupon-reading-unusable', path, message, 'measure with a caliper, several times'));
    return { mean: Number.NaN, deviation: Number.NaN, count: 0 };
  }
  const out = standingOut(values, CALIPER);
  const kept = values.filter((_, i) => !out[i]);
  for (const [i, value] of values.entries()) {
    if (!out[i]) continue;
    const message = `${printDecimal(value, 'mm', 3).text} mm stands out of the readings of ${key} and does not count`;
    problems.push(warning('coupon-reading-stands-out', [...path, i], message, 'measure it again'));
  }
  const deviation = Math.max(standardDeviation(kept) ?? CALIPER, CALIPER / 2);
  return { mean: mean(kept), deviation, count: kept.length };
}

/** Of a mean. */
export const errorOf = ({ deviation, count }: Averaged): number => deviation / Math.sqrt(count);
