import { grown } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import { type Printable, printable } from '../settle/printable.ts';
import { SHEET_PENS } from './furniture/pens.ts';
import type { LayoutOptions } from './options.ts';

/** What of a layout decides where a printer can draw. */
export type Printing = Pick<LayoutOptions, 'margin' | 'printer' | 'join'>;

export type Sheet = Printable;

/** The page of a paper, upright or on its side; butted sheets end at their join lines, whose dots are to be whole. */
export function sheetOf(paper: Size, options: Printing, sideways: boolean): Sheet {
  const sheet = printable(paper, options, sideways);
  if (options.join !== 'butt') return sheet;
  return { ...sheet, area: grown(sheet.area, -SHEET_PENS.join!.width / 2) };
}
