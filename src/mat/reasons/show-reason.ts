import { showLength } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import type { Summand } from '../sizes/sum-equation.ts';
import type { Reason } from './reason.ts';

/** Shares of weightings are shown with so many digits. */
const DIGITS = 4;
/** Halves come of two alike sides, thirds and quarters of gaps. */
const DIVISORS = [1, 2, 3, 4, 6, 8, 12];

const isWhole = (times: number): boolean => Math.abs(times - Math.round(times)) < 1e-9;

/** `16 in − 2 × 2 3/4 in`, `(16 in − 10 in) / 2`: what a size follows from, as a sum. */
export function showReason({ from }: Pick<Reason, 'from'>, units: LengthUnit): string {
  const divisor = DIVISORS.find((by) => from.every(({ times }) => isWhole(times * by))) ?? 1;
  const ordered = [...from.filter(({ times }) => times > 0), ...from.filter(({ times }) => times < 0)];
  const sum = ordered.map((part, at) => shown(part, part.times * divisor, at === 0, units)).join(' ');
  return divisor === 1 ? sum : `(${sum}) / ${divisor}`;
}

function shown({ length }: Summand, times: number, first: boolean, units: LengthUnit): string {
  const negative = times < 0 !== length < 0;
  const often = Math.abs(times);
  const count = Math.abs(often - 1) < 1e-9 ? '' : `${Number(often.toFixed(DIGITS))} × `;
  const sign = first ? (negative ? '−' : '') : negative ? '− ' : '+ ';
  return `${sign}${count}${showLength(Math.abs(length), units)}`;
}
