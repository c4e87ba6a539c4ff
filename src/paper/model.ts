import type { Document, Page, Rotation } from '../drawing/document.ts';
import type { Drawing } from '../drawing/model.ts';
import type { Box } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';

/** A page on which something was laid, with what its manifest says and its neighbours share; a writer needs none of it. */
export interface LaidPage extends Page {
  /** Degrees clockwise that the drawing is turned on the page. */
  readonly rotation: Rotation;
  readonly part?: Part;
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

/** One drawing over several pages. */
export interface LaidDocument extends Document {
  readonly drawing: Drawing;
  /** Where the board lies in the drawing, mm; left out where there is none. */
  readonly board?: Box;
  readonly pages: readonly LaidPage[];
}
