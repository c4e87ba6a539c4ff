import type { Shop } from '../../shop/shop.ts';
import { showSize } from '../../units/print.ts';
import type { StockChange } from './plan-note.ts';

/** What booking changed in the shop's file, or taking it back, a sentence each. */
export function changeWords({ sheets, used, kept }: StockChange, shop: Shop, back = false): readonly string[] {
  const marks = (list: readonly { readonly id: string }[]): string => list.map(({ id }) => id).join(', ');
  const [on, off] = back ? [used, kept] : [kept, used];
  return [
    ...sheets.map(({ kind, board, index, count, ...size }) => {
      const known = kind === 'board' ? shop.boards.get(board) : shop.backing.get(board);
      const left = known?.sheets?.[index]?.count;
      const now = left === undefined ? '' : `; ${left} are left`;
      return `${known?.name ?? board}, ${showSize(size, shop.units)}: ${count} ${back ? 'more' : 'fewer'}${now}`;
    }),
    ...(off.length === 0 ? [] : [`off the shelf: ${marks(off)}`]),
    ...(on.length === 0 ? [] : [`onto the shelf: ${marks(on)}`]),
  ];
}
