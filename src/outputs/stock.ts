import { type StockRecord, stockRecord } from '../documents/stock/record.ts';
import { layoutPages } from '../documents/stock/sheet.ts';
import { stockSummary } from '../documents/stock/summary.ts';
import { tapeGraduation } from '../documents/ticket/blanks.ts';
import { numbered } from '../documents/ticket/tickets.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, succeed } from '../problems/problem.ts';
import { PRICES } from '../shop/prices.ts';
import { shopLocator } from '../shop/read-shop.ts';
import { planBoards } from '../stock/board-plans.ts';
import { layOutDay } from '../stock/layouts.ts';
import { shelveDay } from '../stock/shelve.ts';
import type { Draw } from './output.ts';
import type { Records } from './records.ts';
import { drawnSheets } from './sheets.ts';
import { countWords } from './taken.ts';

/**
 * How the blanks of some jobs of one shop are cut from its sheets, a summary in front. Errors: those of planning stock,
 * `shop-not-editable`, `shelve-shop`.
 */
export const draw: Draw<Records['stock']> = async ({ work, shop, settled }, options) => {
  const { number, date = '' } = settled;
  const source = work.shop;
  if (options.shelve === true && source === undefined) {
    const message = 'there is no shop.yaml to shelve offcuts in';
    return fail([error('shelve-shop', [], message, 'make one with matwright new shop, or name it with --shop')]);
  }
  const jobs = numbered(work.jobs, number);
  const located = {
    shop,
    locate: source === undefined ? <T>(problems: T) => problems : shopLocator(source.text, source.file),
  };
  const { longestStop, shortestStop } = shop.stock;
  const graduation = tapeGraduation(jobs[0]!.job);
  const tape = { units: settled.units, graduation, ...defined({ longestStop, shortestStop }) };
  const planned = planBoards({ jobs, shop: located, units: tape.units, options });
  if (!planned.ok) return planned;
  const day = layOutDay(planned.value, shop);
  const record = stockRecord(day, jobs, tape);
  const shelved =
    options.shelve === true && source !== undefined ? shelveDay(day, located, source, date) : succeed(undefined);
  if (!shelved.ok) return shelved;
  const setting = { paper: settled.sheet, fonts: settled.fonts, tape };
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
  const { value: shopText } = shelved;
  const notes = record.boards.map(boardWords);
  return succeed({ ...drawn, notes, ...defined({ shopText }) }, planned.warnings);
};

function boardWords({ name, sheets, shelf, fallouts, verdict, yield: share }: StockRecord['boards'][number]): string {
  const parts = [
    countWords(sheets, 'sheet'),
    ...(shelf.length === 0 ? [] : [`${shelf.join(', ')} from the shelf`]),
    ...(fallouts === 0 ? [] : [countWords(fallouts, 'fallout')]),
  ];
  return `${name}: ${parts.join(', ')}; ${verdict}; yield ${(100 * share).toFixed(1)} %`;
}
