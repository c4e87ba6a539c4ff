import type { BySide } from '../geometry/sides.ts';
import type { Board } from '../shop/board.ts';

export interface LayerRequest {
  readonly board: Board;
  readonly bevel: Bevel;
  /** Face edge of the layer above to the face edge of this one; undefined on the top mat, or where it is derived. */
  readonly reveal?: number;
  /** Reveals that differ by side; then `reveal` is undefined. */
  readonly reveals?: BySide<number>;
  /** Lifts this layer off the one above. */
  readonly spacer?: number;
  /** Taken off each edge of an under mat. */
  readonly trimBack: number;
}

/** Degrees between the bevel and the face of the board, 90 being square. `reverse`: the face opening is the smaller. */
export interface Bevel {
  readonly angle: number;
  readonly reverse: boolean;
}
