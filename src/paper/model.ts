import type { Drawing, Item, Pen } from '../drawing/model.ts';
import type { Box } from '../geometry/box.ts';
import type { Point, Size } from '../geometry/point.ts';

/**
 * One printed page. `part` is shown clipped; the page's own furniture (crosses, join lines, rulers, names)
 * is in page mm from the page's top left. Everything on the page, furniture too, is multiplied by
 * 1/scale about the page's top left by the writer, except pages that measure the printer.
 */
export interface Page {
  /** From 1, in the order of the file. */
  readonly number: number;
  /** `B2`, `check`, `map` … */
  readonly name: string;
  readonly paper: Size;
  /** Degrees clockwise that the drawing is turned on the page. */
  readonly rotation: 0 | 90 | 180 | 270;
  readonly part?: Part;
  /** The printer's measured length over nominal, in x and y of the page. */
  readonly scale: { readonly x: number; readonly y: number };
  readonly under: readonly Item[];
  readonly over: readonly Item[];
  readonly pens: Readonly<Record<string, Pen>>;
  /** Registration crosses on this page; a neighbour's page has one of the same name at the same place of the drawing. */
  readonly crosses?: readonly CrossMark[];
  /** The names of the pages on the other side of its seams. */
  readonly neighbours?: Readonly<Partial<Record<'top' | 'right' | 'bottom' | 'left', string>>>;
}

export interface CrossMark {
  /** `A1|A2 b`. */
  readonly name: string;
  /** On the page, before the printer's correction. */
  readonly onPage: Point;
  readonly inDrawing: Point;
}

/** `x, y, width, height` in the drawing before turning; `pageX, pageY` is the turned part's top left on the page. */
export interface Part extends Box {
  readonly pageX: number;
  readonly pageY: number;
}

/** What a PDF is made of: every page shows a part of the one drawing, or none of it. */
export interface Document {
  readonly title: string;
  readonly subject: string;
  readonly language: string;
  readonly drawing: Drawing;
  readonly pages: readonly Page[];
}
