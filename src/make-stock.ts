import { type StockRecord, stockRecord } from './documents/stock/record.ts';
import { layoutPages } from './documents/stock/sheet.ts';
import { stockSummary } from './documents/stock/summary.ts';
import { tapeGraduation } from './documents/ticket/blanks.ts';
import { countedOn } from './documents/ticket/tickets.ts';
import type { Drawing } from './drawing/model.ts';
import { loadFonts } from './fonts/load.ts';
import { notShown, userTexts } from './job/printed-texts.ts';
import { sheetsDocument } from './paper/sheets.ts';
import { defined } from './problems/defined.ts';
import { fail, type Result, succeed } from './problems/problem.ts';
import { settle } from './settle/settle.ts';
import type { Asked } from './settle/settled.ts';
import { PRICES } from './shop/prices.ts';
import { shopLocator } from './shop/read-shop.ts';
import type { Solved, Source } from './solve-job.ts';
import { planBoards, type StockWishes } from './stock/board-plans.ts';
import { layOutDay } from './stock/layouts.ts';
import { shelveDay } from './stock/shelve.ts';
import type { StockShop } from './stock/stock-job.ts';
import { loadSvg } from './writers/load-svg.ts';
import { writePdf } from './writers/pdf.ts';

/** Paper and printer instead of the first job's; the other jobs count on from the number. */
export interface StockDayWishes extends StockWishes, Pick<Asked, 'paper' | 'printer' | 'number'> {
  readonly svg?: boolean;
  /** The shop's file, for the places of problems, and to write into. */
  readonly shop?: Source;
  /** Writes into the shop's text what is used and what goes onto the shelf, with the day as its note. */
  readonly shelve?: { readonly date: string };
}

export interface MadeStock {
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly drawings: readonly Drawing[];
  readonly record: StockRecord;
  /** The shop's file as it is once all is cut, where that was wished. */
  readonly shopText?: string;
}

/**
 * `stock.pdf`: how the blanks of some jobs of one shop are cut from its sheets, a summary in front; with `svg` each page
 * as `stock-N.svg` too. Errors: those of planning stock, `sheet-paper`, `shop-not-editable`.
 */
export async function makeStock(solved: readonly Solved[], wishes: StockDayWishes = {}): Promise<Result<MadeStock>> {
  const { number, shop: source } = wishes;
  const first = solved[0];
  if (first === undefined) return fail([]);
  const settled = settle({ job: first.job, shop: first.shop, uses: ['readings'], asked: wishes });
  if (!settled.ok) return settled;
  const jobs = solved.map(({ job, mat, locate }, i) => ({
    job,
    mat,
    locate,
    ...(number === undefined ? {} : { number: countedOn(number, i) }),
  }));
  const locate: StockShop['locate'] =
    source === undefined ? (problems) => problems : shopLocator(source.text, source.file);
  const shop = { shop: first.shop, locate };
  const { longestStop, shortestStop } = first.shop.stock;
  const tape = {
    units: first.job.units,
    graduation: tapeGraduation(first.job),
    ...defined({ longestStop, shortestStop }),
  };
  const planned = planBoards({ jobs, shop, units: tape.units, wishes });
  if (!planned.ok) return planned;
  const day = layOutDay(planned.value, first.shop);
  const record = stockRecord(day, jobs, tape);
  const shelved =
    wishes.shelve === undefined || source === undefined
      ? succeed(undefined)
      : shelveDay(day, shop, source, wishes.shelve.date);
  if (!shelved.ok) return shelved;

  const printed = [{ text: number ?? '', path: ['number'] }];
  const texts = [...printed, ...solved.flatMap(({ job }) => userTexts(job))].map(({ text }) => text);
  const fonts = await loadFonts(texts, { files: true, outlines: wishes.svg === true });
  const options = { paper: settled.value.sheet, tape, fonts };
  const money = first.shop.prices ?? PRICES;
  const drawings = [
    ...stockSummary(day, record, jobs, money, options),
    ...day
      .flatMap((board) => board.layouts.map((layout) => ({ board, layout })))
      .sort((a, b) => a.layout.numbers[0]! - b.layout.numbers[0]!)
      .flatMap(({ board, layout }) => layoutPages(board, layout, jobs, options)),
  ];
  const document = sheetsDocument({ title: 'Stock plan', subject: 'Sheets of board, cut by cut', sheets: drawings });
  const files = [{ name: 'stock.pdf', bytes: await writePdf(document, { fonts }) }];
  if (wishes.svg === true) {
    const { writeSvg } = await loadSvg();
    drawings.forEach((drawing, i) => {
      files.push({ name: `stock-${i + 1}.svg`, bytes: new TextEncoder().encode(writeSvg(drawing, { fonts })) });
    });
  }
  const { value: shopText } = shelved;
  return succeed({ files, drawings, record, ...(shopText === undefined ? {} : { shopText }) }, [
    ...planned.warnings,
    ...notShown(printed, fonts),
    ...solved.flatMap(({ job, locate: place }) => place(notShown(userTexts(job), fonts))),
  ]);
}
