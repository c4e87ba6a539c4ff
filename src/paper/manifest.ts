import type { Page, Rotation } from '../drawing/document.ts';
import type { Box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import type { LaidDocument, LaidPage } from './model.ts';

/**
 * One page of a printed file, so that an outsider can lay the pages together. `x, y, width, height` is the part of the
 * drawing that it shows, before turning; `pageX, pageY` is where the turned part's top left lies, from the page's top
 * left, before the printer's correction. All mm. Pages that show no part leave the last six out.
 */
export interface PageRecord extends Partial<Box> {
  readonly file: string;
  /** The page of that file, from 1. */
  readonly number: number;
  readonly name: string;
  readonly paper: Size;
  /** Degrees clockwise that the drawing is turned on the page. */
  readonly rotation: Rotation;
  readonly pageX?: number;
  readonly pageY?: number;
  readonly scale: Page['scale'];
}

export interface DocumentRecord {
  readonly pages: readonly PageRecord[];
  /** Where the board lies in the drawing, mm; left out where there is none. */
  readonly board?: Box;
}

export function documentRecord(file: string, { board, pages }: LaidDocument): DocumentRecord {
  return {
    pages: pages.map((page, i) => pageRecord(file, i + 1, page)),
    ...defined({ board }),
  };
}

function pageRecord(file: string, number: number, { name, paper, rotation, part, scale }: LaidPage): PageRecord {
  return {
    file,
    number,
    name,
    paper: { width: paper.width, height: paper.height },
    rotation,
    ...(part === undefined ? {} : part),
    scale,
  };
}
