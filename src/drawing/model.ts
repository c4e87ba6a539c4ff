import type { Box } from '../geometry/box.ts';
import type { Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

/**
 * A Drawing is finished: plain readonly data in mm, top left at 0 0, x right, y down. It survives
 * `JSON.parse(JSON.stringify(d))`. A writer adds nothing to it and asks nothing about mats.
 */
export interface Drawing {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  /** What the sheet shows; a `back` drawing is the mirror image in x of the face. */
  readonly view: 'face' | 'back' | 'sheet';
  readonly pens: Readonly<Record<string, Pen>>;
  /** Painted in this order. */
  readonly groups: readonly Group[];
}

export interface Pen {
  /** Line width, mm. */
  readonly width: number;
  /** Grey 0 (black) to 1 (white) or `#rrggbb`. */
  readonly colour: number | string;
  /** On, off, on, off … in mm; empty is solid. */
  readonly dash: readonly number[];
  readonly cap: 'butt' | 'round';
}

/** A part that can be shown or left out on its own: `cut`, `marks`, `readings` … */
export interface Group {
  readonly name: string;
  /** What a list of layers calls it. */
  readonly label: string;
  /** Whether it is shown unless asked otherwise. */
  readonly shown: boolean;
  readonly items: readonly Item[];
}

export type Item = LineItem | PathItem | TextItem | PictureItem;

export interface LineItem {
  readonly kind: 'line';
  readonly pen: string;
  readonly from: Point;
  readonly to: Point;
  /** A name that tests and people can find it by, e.g. `cut-1-left`. */
  readonly id?: string;
}

export interface PathItem {
  readonly kind: 'path';
  /** Without a pen it is only filled. */
  readonly pen?: string;
  readonly fill?: number | string;
  /** Several subpaths are filled even-odd, unless `rule` says otherwise. */
  readonly paths: readonly Path[];
  readonly rule?: 'nonzero';
  readonly id?: string;
}

export interface TextItem {
  readonly kind: 'text';
  readonly text: string;
  /** On the base line: its start, middle or end. */
  readonly at: Point;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Em size, mm. */
  readonly size: number;
  readonly weight: 'regular' | 'bold';
  /** Degrees clockwise about `at`. */
  readonly turn: number;
  readonly colour: number | string;
  readonly id?: string;
}

export interface PictureItem {
  readonly kind: 'picture';
  readonly picture: string;
  readonly box: Box;
}
