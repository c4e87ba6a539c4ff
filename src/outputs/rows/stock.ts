import { type StockRecord, stockRecord } from '../../documents/stock/record.ts';
import { layoutPages } from '../../documents/stock/sheet.ts';
import { stockSummary } from '../../documents/stock/summary.ts';
import { tapeGraduation } from '../../documents/ticket/blanks.ts';
import { numbered } from '../../documents/ticket/tickets.ts';
import { defined } from '../../problems/defined.ts';
import { fail, succeed } from '../../problems/problem.ts';
import { PRICES } from '../../shop/prices.ts';
import { shopLocator } from '../../shop/read-shop.ts';
import { planBoards } from '../../stock/board-plans.ts';
import { planNote } from '../../stock/booking/planned.ts';
import { layOutDay } from '../../stock/layouts.ts';
import { CANCELLED } from '../cancelled.ts';
import type { Draw } from '../output.ts';
import type { Records } from '../records.ts';
import { countWords } from '../taken.ts';
import { drawnSheets } from './sheets.ts';

/**
 * How the blanks of some jobs of one shop are cut from its sheets, a summary in front; with a shop's file the plan has a
 * number, by which it is booked once it is cut. Errors: those of planning stock.
 */
export const draw: Draw<Records['stock']> = async ({ work, shop, settled }, options, { progress, signal }) => {
  const { number } = settled;
  const source = work.shop;
  const jobs = numbered(work.jobs, number);
  const located = {
    shop,
    locate: source === undefined ? <T>(problems: T) => problems : shopLocator(source.text, source.file),
  };
  const { longestStop, shortestStop } = shop.stock;
  const graduation = tapeGraduation(jobs[0]!.job);
  const tape = { units: settled.units, graduation, ...defined({ longestStop, shortestStop }) };
  const planned = planBoards({ jobs, shop: located, units: tape.units, options }, (board, done, of) => {
    // Boards in hundredths, since one may take as long as all others.
    progress?.({ output: 'stock', file: `planning ${board}`, done: Math.floor((100 * done) / of), of: 100 });
    return signal?.aborted !== true;
  });
  if (signal?.aborted === true) return fail([CANCELLED]);
  if (!planned.ok) return planned;
  const day = layOutDay(planned.value, shop);
  const plan = source === undefined ? undefined : planNote(day, jobs, located);
  const record = stockRecord(day, jobs, tape, plan);
  const setting = { paper: settled.sheet, fonts: settled.fonts, tape, ...defined({ number: plan?.number }) };
  const sheets = [
    ...stockSummary(day, record, jobs, shop.prices ?? PRICES, setting),
    ...day
      .flatMap((board) => board.layouts.map((layout) => ({ board, layout })))
      .sort((a, b) => a.layout.numbers[0]! - b.layout.numbers[0]!)
      .flatMap(({ board, layout }) => layoutPages(board, layout, jobs, setting)),
  ];
  const drawn = drawnSheets({
    name: 'stock',
    title: 'Stock plan',
    subject: 'Sheets of board, cut by cut',
    sheets,
    record,
    pages: 'numbered',
    one: 'page',
  });
  return succeed({ ...drawn, notes: record.boards.map(boardWords) }, planned.warnings);
};

function boardWords({ name, sheets, shelf, fallouts, verdict, yield: share }: StockRecord['boards'][number]): string {
  const parts = [
    countWords(sheets, 'sheet'),
    ...(shelf.length === 0 ? [] : [`${shelf.join(', ')} from the shelf`]),
    ...(fallouts === 0 ? [] : [countWords(fallouts, 'fallout')]),
  ];
  return `${name}: ${parts.join(', ')}; ${verdict}; yield ${(100 * share).toFixed(1)} %`;
}
