import { type Box, box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { BySide } from '../geometry/sides.ts';
import type { Printer } from '../shop/printer.ts';

/** What decides where a printer can draw. */
export interface Printing {
  /** Wished. */
  readonly margin: BySide<number>;
  readonly printer?: Printer;
}

/** A page as it is seen, and what of it can be drawn on. */
export interface Printable {
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

/** A printer that only keeps its margins: what is not drawn at full scale is never scaled. */
export const unscaled = ({ margin, printer }: Printing): Printing => ({
  margin,
  ...(printer === undefined ? {} : { printer: { ...printer, x: 1, y: 1 } }),
});

/**
 * The page of a paper, upright or on its side. The wished margins are those of the page as it is seen; the printer's
 * margins and correction are those of the paper as it was given, since that is how they were measured. Which way a
 * printer turns a page on its side is not known, so the wider one of two opposite margins then counts for both.
 */
export function printable(paper: Size, { margin: wished, printer }: Printing, sideways = false): Printable {
  const size = sideways ? { width: paper.height, height: paper.width } : { width: paper.width, height: paper.height };
  const hard = printer?.margin ?? { top: 0, right: 0, bottom: 0, left: 0 };
  const across = Math.max(hard.left, hard.right);
  const along = Math.max(hard.top, hard.bottom);
  const unprintable = sideways ? { top: across, bottom: across, left: along, right: along } : hard;
  const margin: BySide<number> = {
    top: Math.max(wished.top, unprintable.top),
    right: Math.max(wished.right, unprintable.right),
    bottom: Math.max(wished.bottom, unprintable.bottom),
    left: Math.max(wished.left, unprintable.left),
  };
  const given = { x: printer?.x ?? 1, y: printer?.y ?? 1 };
  const scale = sideways ? { x: given.y, y: given.x } : given;
  // A point at c is sent to the printer as c/scale and comes out at c: both must keep the margins.
  const left = margin.left * Math.max(1, scale.x);
  const top = margin.top * Math.max(1, scale.y);
  const right = (size.width - margin.right) * Math.min(1, scale.x);
  const bottom = (size.height - margin.bottom) * Math.min(1, scale.y);
  return { paper: size, area: box(left, top, right - left, bottom - top), margin, scale, sideways };
}
