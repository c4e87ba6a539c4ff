import type { Box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { Problem } from '../problems/problem.ts';

/** Rows from the top, three bytes a pixel: red, green, blue in sRGB. */
export interface Pixels extends Size {
  readonly rgb: Uint8Array;
}

/** A picture as documents carry it: a baseline JPEG, grey where the picture is. */
export interface PreparedPicture extends Size {
  readonly jpeg: Uint8Array;
  readonly channels: 1 | 3;
}

/** Pictures by the names that a drawing's items give them. */
export type Pictures = Readonly<Record<string, PreparedPicture>>;

/**
 * How a camera held the picture: the values of the tag Orientation of Exif (JEITA CP-3451, 4.6.4 A; in the TIFF 6.0
 * specification too). 1 is upright; 5 to 8 swap width and height.
 */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** What the head of a file tells, before any pixel is read. Width and height are those of the file, not yet upright. */
export interface Head extends Size {
  readonly orientation: Orientation;
  /** Anything odd that does not keep it from being read. */
  readonly notes: readonly Note[];
}

export type Note = 'profile';

/** Takes the rows of a picture from the top, each `width` pixels of red, green and blue, and may leave some out. */
export interface Rows {
  /** From the first to the one behind the last that are wanted. */
  readonly from: number;
  readonly to: number;
  take(row: number, rgb: Uint8Array): void;
}

/** Why a file cannot be read; a reader throws it and `picture.ts` makes a problem of it. */
export class Unreadable extends Error {
  readonly code: string;
  readonly hint: string;

  constructor(code: string, message: string, hint: string) {
    super(message);
    this.code = code;
    this.hint = hint;
  }
}

/** A picture that was opened: its head is good, its pixels are not yet read. */
export interface OpenPicture {
  /** Upright, in pixels. */
  readonly size: Size;
  readonly warnings: readonly Problem[];
  /**
   * The part `crop` (in pixels of the upright picture) in at most `most.width` × `most.height` pixels, averaged in
   * linear light. Errors as of `openPicture`.
   */
  readonly read: (crop: Box, most: Size) => Promise<Pixels>;
}
