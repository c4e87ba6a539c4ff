import type { BySide, Side } from '../../geometry/sides.ts';
import type { SideLengths, StockOptions, StockSheet } from './model.ts';

/** What comes off each side of a sheet: its own trim, else none of an offcut, else that of the options. */
export function trimOf(sheet: StockSheet, options: StockOptions): BySide<number> {
  const trim: number | SideLengths = sheet.trim ?? (sheet.offcut === true ? 0 : (options.trim ?? 0));
  const side = (name: Side): number => (typeof trim === 'number' ? trim : (trim[name] ?? 0));
  return { top: side('top'), right: side('right'), bottom: side('bottom'), left: side('left') };
}

export const NO_TRIM: BySide<number> = { top: 0, right: 0, bottom: 0, left: 0 };
