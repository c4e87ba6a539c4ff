import { type Box, box, grown } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { BySide } from '../geometry/sides.ts';
import { SHEET_PENS } from './furniture/pens.ts';
import type { LayoutOptions } from './options.ts';

/** What of a layout decides where a printer can draw. */
export type Printing = Pick<LayoutOptions, 'margin' | 'printer' | 'join'>;

/** A page as it is seen, and what of it can be drawn on. */
export interface Sheet {
  readonly paper: Size;
  /** Where ink may go, page mm, before the printer's correction: what lies in it stays off the margins after it too. */
  readonly area: Box;
  /** The wider of the wished and the printer's own. */
  readonly margin: BySide<number>;
  /** The printer's measured length over nominal, in x and y of this page. */
  readonly scale: { readonly x: number; readonly y: number };
  /** True where the page is the paper laid on its side. */
  readonly sideways: boolean;
}

/**
 * The page of a paper, upright or on its side. The wished margins are those of the page as it is seen; the printer's
 * margins and correction are those of the paper as it was given, since that is how they were measured. Which way a
 * printer turns a page on its side is not known, so the wider one of two opposite margins then counts for both.
 */
export function sheetOf(paper: Size, options: Printing, sideways: boolean): Sheet {
  const { printer } = options;
  const size = sideways ? { width: paper.height, height: paper.width } : { width: paper.width, height: paper.height };
  const hard = printer?.margin ?? { top: 0, right: 0, bottom: 0, left: 0 };
  const across = Math.max(hard.left, hard.right);
  const along = Math.max(hard.top, hard.bottom);
  const unprintable = sideways ? { top: across, bottom: across, left: along, right: along } : hard;
  const margin: BySide<number> = {
    top: Math.max(options.margin.top, unprintable.top),
    right: Math.max(options.margin.right, unprintable.right),
    bottom: Math.max(options.margin.bottom, unprintable.bottom),
    left: Math.max(options.margin.left, unprintable.left),
  };
  const given = { x: printer?.x ?? 1, y: printer?.y ?? 1 };
  const scale = sideways ? { x: given.y, y: given.x } : given;
  // A point at c is sent to the printer as c/scale and comes out at c: both must keep the margins.
  const left = margin.left * Math.max(1, scale.x);
  const top = margin.top * Math.max(1, scale.y);
  const right = (size.width - margin.right) * Math.min(1, scale.x);
  const bottom = (size.height - margin.bottom) * Math.min(1, scale.y);
  // Butted sheets end at their join lines, whose dots are to be whole.
  const inset = options.join === 'butt' ? SHEET_PENS.join!.width / 2 : 0;
  const area = grown(box(left, top, right - left, bottom - top), -inset);
  return { paper: size, area, margin, scale, sideways };
}
