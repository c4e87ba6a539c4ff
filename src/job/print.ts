import type { BySide } from '../geometry/sides.ts';
import type { Printer } from '../shop/printer.ts';

export interface PrintRequest {
  /** A paper's id, `W x H`, `fit` or `roll:W`. */
  readonly paper: string;
  readonly margin: BySide<number>;
  readonly lap: number;
  readonly join: 'lap' | 'butt';
  readonly transfer: 'prick' | 'cut-through';
  /** Thickness of the pattern's paper, which counts where it is cut through. */
  readonly paperThickness: number;
  readonly printer?: Printer;
}
