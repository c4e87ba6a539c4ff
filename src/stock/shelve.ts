import type { Size } from '../geometry/point.ts';
import { fail, type Result, succeed } from '../problems/problem.ts';
import { type Edit, editShop } from '../shop/edit-shop.ts';
import { readShop } from '../shop/read-shop.ts';
import { showSize } from '../units/print.ts';
import { shopSection } from './jobs-words.ts';
import type { BoardLayouts } from './layouts.ts';
import type { StockShop } from './stock-job.ts';

/**
 * The shop's text as it is once a day's sheets are cut: fewer sheets where they are counted, what was used taken off the
 * shelf, what is kept put onto it. Comments stay. What is cut from boards that the shop does not list is left out.
 */
export function shelveDay(
  day: readonly BoardLayouts[],
  shop: StockShop,
  source: { readonly text: string; readonly file: string },
  date: string,
): Result<string> {
  const edits: Edit[] = [];
  const used = new Set<string>();
  const written = (size: Size): string => showSize(size, shop.shop.units).replace('×', 'x');
  const kept: Edit[] = [];
  for (const { board, layouts } of day) {
    const section = shopSection(board.material, shop);
    if (section === undefined) continue;
    const opened = new Map<number, number>();
    for (const { from, numbers, offcuts, ...size } of layouts) {
      const own = from.kind === 'fallout' ? undefined : board.shopSheets.get(from.id);
      if (own?.kind === 'sheet') opened.set(own.index, (opened.get(own.index) ?? 0) + numbers.length);
      if (own?.kind === 'offcut') used.add(own.offcut.id);
      const origin = from.kind === 'fallout' ? 'a fallout' : from.kind === 'offcut' ? from.id : written(size);
      for (const offcut of offcuts) {
        for (const id of offcut.marks) {
          const value = { id, board: board.material.id, size: written(offcut), note: `from ${origin}, ${date}` };
          kept.push({ kind: 'append', path: ['shelf'], value });
        }
      }
    }
    for (const [index, count] of opened) {
      const left = board.material.sheets[index]?.count;
      if (left === undefined) continue;
      edits.push({ kind: 'set', path: [...section, 'sheets', index], values: { count: left - count } });
    }
  }
  const places = shop.shop.shelf.flatMap(({ id }, at) => (used.has(id) ? [at] : []));
  // What is new goes to the end, and what is gone goes from there on: so the places before stay what they are.
  edits.push(...kept, ...places.reverse().map((at): Edit => ({ kind: 'remove', path: ['shelf'], at })));
  const edited = editShop(source.text, source.file, edits);
  if (!edited.ok) return edited;
  const again = readShop({ text: edited.value, file: source.file });
  return again.ok ? succeed(edited.value) : fail(again.problems);
}
