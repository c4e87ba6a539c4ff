import type { BySide } from '../geometry/sides.ts';

/** Measured length over nominal, in x and y of the page; unprintable margins. */
export interface Printer {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly margin: BySide<number>;
}
