import type { Size } from '../geometry/point.ts';
import type { SheetSize } from '../shop/board.ts';
import type { Rate } from '../shop/rate.ts';
import { mmFromInches } from '../units/units.ts';
import type { Material } from './blanks.ts';

const SQUARE = { squareFoot: mmFromInches(12) ** 2, squareMetre: 1e6 } as const;

/** A price by area, for a size. */
export const byArea = (amount: number, per: keyof typeof SQUARE, { width, height }: Size): number =>
  (amount * width * height) / SQUARE[per];

const isByArea = (per: Rate['per']): per is keyof typeof SQUARE => per in SQUARE;

/** What one sheet costs: its own price, that of the board by area, or that of any sheet of the board. */
export function priceOfSheet(size: SheetSize, { price, areaPrice }: Material): number | undefined {
  if (size.price !== undefined) return size.price;
  if (areaPrice !== undefined && isByArea(areaPrice.per)) return byArea(areaPrice.amount, areaPrice.per, size);
  return price;
}
