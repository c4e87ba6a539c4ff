import type { Size } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import type { Shop } from '../../shop/shop.ts';
import { showSize } from '../../units/print.ts';
import { type JobToCut, jobName } from '../blanks.ts';
import { shopSection } from '../jobs-words.ts';
import type { BoardLayouts } from '../layouts.ts';
import type { StockShop } from '../stock-job.ts';
import { numberOf } from './number.ts';
import type { NewOffcut, NewPlan, OpenedSheets, StockChange, UsedOffcut } from './plan-note.ts';

/** As a shop's file writes it. */
export const written = (size: Size, { units }: Shop): string => showSize(size, units).replace('×', 'x');

/** A day's plan with its number: the same jobs, sheets and shelf always have the same, others another. */
export function planNote(day: readonly BoardLayouts[], jobs: readonly JobToCut[], shop: StockShop): NewPlan {
  const change = changeOf(day, shop);
  const names = jobs.map((_, i) => jobName(jobs, i));
  const boards = day.map(({ board: { material }, layouts }) => ({
    board: material.id,
    name: material.name,
    thickness: material.thickness,
    // Once it is booked fewer are left: the same cuts another day are another plan.
    left: material.sheets.map(({ count }) => count ?? -1),
    layouts: layouts.map(({ numbers, from, tree, offcuts, width, height }) => ({
      numbers,
      from: [from.kind, from.kind === 'fallout' ? from.piece : from.id],
      width,
      height,
      tree,
      marks: offcuts.map(({ marks }) => marks),
    })),
  }));
  return { number: numberOf(JSON.stringify({ names, boards })), jobs: names, change, idle: isIdle(change, shop.shop) };
}

/** What is cut from boards that the shop does not list is left out. */
function changeOf(day: readonly BoardLayouts[], shop: StockShop): StockChange {
  const [sheets, used, kept]: [OpenedSheets[], UsedOffcut[], NewOffcut[]] = [[], [], []];
  for (const { board, layouts } of day) {
    const { material, shopSheets } = board;
    if (shopSection(material, shop) === undefined) continue;
    const opened = new Map<number, number>();
    for (const { from, numbers, offcuts, width, height } of layouts) {
      const own = from.kind === 'fallout' ? undefined : shopSheets.get(from.id);
      if (own?.kind === 'sheet') opened.set(own.index, (opened.get(own.index) ?? 0) + numbers.length);
      if (own?.kind === 'offcut') {
        const { id, note } = own.offcut;
        used.push({ id, board: material.id, width, height, ...defined({ note }) });
      }
      const origin =
        from.kind === 'fallout'
          ? 'a fallout'
          : from.kind === 'offcut'
            ? from.id
            : written({ width, height }, shop.shop);
      for (const { marks, width: w, height: h } of offcuts)
        for (const id of marks) kept.push({ id, board: material.id, width: w, height: h, from: origin });
    }
    for (const [index, count] of opened) {
      const size = material.sheets[index];
      if (size === undefined) continue;
      const { width, height } = size;
      sheets.push({ kind: material.kind, board: material.id, index, width, height, count });
    }
  }
  return { sheets, used, kept };
}

function isIdle({ sheets, used, kept }: StockChange, shop: Shop): boolean {
  const counted = sheets.some(({ kind, board, index }) => {
    const listed = (kind === 'board' ? shop.boards : shop.backing).get(board)?.sheets ?? [];
    return listed[index]?.count !== undefined;
  });
  return !counted && used.length === 0 && kept.length === 0;
}
