import type { Size } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { type Problem, warning } from '../../problems/problem.ts';
import { WIDEST_BOARD } from '../../shop/board.ts';
import { printDecimal, showSize } from '../../units/print.ts';

/** A mat that no board holds: whoever writes 120 x 170 of a print on paper means millimetres. */
export function largeProblems({ units }: Job, outer: Size): readonly Problem[] {
  if (units === 'mm' || Math.min(outer.width, outer.height) <= WIDEST_BOARD) return [];
  const metres = (mm: number): string => printDecimal(mm / 1000, 'mm', 1).text;
  const large = `${metres(outer.width)} × ${metres(outer.height)} m`;
  const message = `the mat is ${showSize(outer, units)}, ${large}, and no board is as large; did you mean mm?`;
  return [warning('size-large', ['mat'], message, 'write units: mm into the job, or the unit behind its sizes')];
}
