import { loadFonts } from '../fonts/load.ts';
import type { Fonts } from '../fonts/model.ts';
import { notShown, type PrintedText, userTexts } from '../job/printed-texts.ts';
import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { settle } from '../settle/settle.ts';
import { readShop } from '../shop/read-shop.ts';
import { NO_SHOP, type Shop } from '../shop/shop.ts';
import type { Output, Ready, Work } from './output.ts';
import type { Wishes } from './wishes.ts';

/** What is to be made, and with which wishes. */
export type Planned = readonly (readonly [Output, Wishes])[];

/**
 * Paper, printer, shop and fonts of some work, decided once for all that is made of it. Errors: those of settling and of
 * reading the shop, with their places.
 */
export async function ready(work: Work, wishes: Wishes, planned: Planned): Promise<Result<Ready>> {
  const [first] = work.jobs;
  const shop = first === undefined ? shopOf(work) : succeed(first.shop);
  if (!shop.ok) return shop;
  const asked = askedTexts(wishes);
  const texts = [...asked, ...work.jobs.flatMap(({ job }) => userTexts(job))].map(({ text }) => text);
  const formats = planned.flatMap(([output, own]) => own.format ?? output.formats.slice(0, 1));
  const cuts = planned.some(([{ id }, { cut = [] }]) => id === 'cutfile' || cut.length > 0);
  const fonts = await loadFonts(texts, {
    files: formats.includes('pdf'),
    outlines: cuts || formats.some((format) => format !== 'pdf'),
  });
  const settled = settle({
    shop: shop.value,
    asked: wishes,
    uses: planned.flatMap(([{ use }]) => (use === undefined ? [] : [use])),
    fonts,
    newPrinter: planned.some(([output, own]) => output.newPrinter?.(own) === true),
    ...(first === undefined ? {} : { job: first.job }),
  });
  if (!settled.ok) return fail(first === undefined ? settled.problems : first.locate(settled.problems));
  return succeed({ work, shop: shop.value, settled: settled.value }, missing(work, asked, fonts));
}

const shopOf = ({ shop }: Work): Result<Shop> => (shop === undefined ? succeed(NO_SHOP) : readShop(shop));

const askedTexts = ({ number, date }: Wishes): readonly PrintedText[] => [
  ...(number === undefined ? [] : [{ text: number, path: ['number'] }]),
  ...(date === undefined ? [] : [{ text: date, path: ['date'] }]),
];

/** Warnings of characters that nothing here can show. */
const missing = (work: Work, asked: readonly PrintedText[], fonts: Fonts): readonly Problem[] => [
  ...notShown(asked, fonts),
  ...work.jobs.flatMap(({ job, locate }) => locate(notShown(userTexts(job), fonts))),
];
