import type { Box } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';
import type { Problem } from '../problems/problem.ts';
import type { Drawing } from './model.ts';

/** A drawing that is laid on paper at full scale, with what only paper needs to know of it. */
export interface FullScale {
  readonly drawing: Drawing;
  /** The board, where the drawing is laid on one. */
  readonly board?: Box;
  /** Where the seams of sheets had better not run, worst first. */
  readonly avoid: readonly AvoidBox[];
  /** What the assembly map states and its reader verifies with a tape measure. */
  readonly facts: readonly Fact[];
  /** What each kind of line means, for the first sheet. */
  readonly legend: readonly LegendEntry[];
  /** Steps for the first sheet: how it is used, after those about printing and taping; the usual ones where left out. */
  readonly instructions?: readonly string[];
  /** What the first sheet warns of. */
  readonly warnings: readonly Problem[];
}

export interface AvoidBox {
  readonly box: Box;
  readonly why: 'corner' | 'tick' | 'reading' | 'text';
}

export interface Fact {
  readonly label: string;
  readonly from: Point;
  readonly to: Point;
  /** mm; the distance between the two. */
  readonly length: number;
  /** As the map prints it, in the job's units. */
  readonly shown: string;
}

export interface LegendEntry {
  readonly pen: string;
  readonly text: string;
}
