import type { Box } from '../geometry/box.ts';
import type { Path } from '../geometry/path.ts';
import type { Size } from '../geometry/point.ts';
import type { BySide } from '../geometry/sides.ts';
import type { Bevel } from '../job/layer.ts';
import type { ShapeKind } from '../shapes/shapes.ts';
import type { Board } from '../shop/board.ts';

/**
 * The solved mat: every length known, in mm, in the face view (origin at the outer edge's top left).
 * Nothing here knows of heads, paper or files.
 */
export interface Mat {
  readonly outer: Size;
  /** Width + height, in inches. */
  readonly unitedInches: number;
  readonly glazing: Size;
  readonly backing: Size;
  /** How much of the mat the frame's lip hides on each side; 0 without a frame. */
  readonly lip: number;
  /** Outer edge to the face opening of the top mat. */
  readonly border: BySide<number>;
  /** Top mat first. */
  readonly layers: readonly MatLayer[];
  readonly openings: readonly MatOpening[];
  /** Texts cut through the top mat. */
  readonly lettering?: readonly MatLettering[];
  /** Settings that snapping moved, in words for the user. */
  readonly moved: readonly Moved[];
  /** The mat as it was planned, where something was cut otherwise. */
  readonly planned?: Mat;
  /** What is not as it was planned. */
  readonly changed?: readonly Moved[];
}

/** A text in windows, in the top mat alone: what lies below shows through. */
export interface MatLettering {
  readonly text: string;
  /** Round all letters, on the face. */
  readonly box: Box;
  /** True where it is cut upright, whatever the bevel of the board. */
  readonly square: boolean;
  /** How many hold islands, and how wide they are. */
  readonly bridges: number;
  readonly bridge: number;
  readonly parts: readonly LetterPart[];
}

/** One window: a letter, or a part of one that bridges cut off. */
export interface LetterPart {
  readonly letter: string;
  readonly face: Path;
  readonly back: Path;
}

export interface Moved {
  /** e.g. `left border`. */
  readonly what: string;
  /** mm. */
  readonly from: number;
  readonly to: number;
}

export interface MatLayer {
  /** `top mat`, `under mat 1` … */
  readonly name: string;
  readonly board: Board;
  readonly bevel: Bevel;
  /** Thickness × cot(angle): the bevel's width seen from the front. */
  readonly setback: number;
  /** Thickness ÷ sin(angle): the bevel's own width. */
  readonly bevelFace: number;
  /** The board as it is trimmed before the openings are cut. */
  readonly blank: Size;
  readonly trimBack: number;
  /** Where that blank lies over the top mat, in the face view. */
  readonly blankBox: Box;
}

export interface MatOpening {
  readonly name: string;
  readonly shape: ShapeKind;
  readonly artwork?: Artwork;
  /** What is seen through the innermost edge of all. */
  readonly sight: Box;
  /** One for each layer of the mat, same order. */
  readonly layers: readonly OpeningLayer[];
}

export interface Artwork {
  readonly size: Size;
  readonly box: Box;
  /** Real overlap of the mat at the sight, per side; negative is the float that shows. */
  readonly overlap: BySide<number>;
  readonly floated: boolean;
}

export interface OpeningLayer {
  /** True where the opening shows nothing of this layer: it is cut back behind the layer above. */
  readonly hidden?: true;
  /** True where the job says that it is cut already. */
  readonly cut?: true;
  readonly face: Path;
  readonly back: Path;
  readonly faceBox: Box;
  readonly backBox: Box;
  /** Outer edge to this layer's face line. */
  readonly border: BySide<number>;
  /** Face edge of the layer above to this face edge; 0 on the top mat. */
  readonly reveal: BySide<number>;
  /** Colour of this layer that is seen beyond the bevel of the layer above; the border on the top mat. */
  readonly strip: BySide<number>;
}
