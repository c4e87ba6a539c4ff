import { loadFonts } from '../fonts/load.ts';
import type { Fonts } from '../fonts/model.ts';
import { notShown, type PrintedText, shopTexts, userTexts } from '../job/printed-texts.ts';
import { defined } from '../problems/defined.ts';
import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { settle } from '../settle/settle.ts';
import { readShop, shopLocator } from '../shop/read-shop.ts';
import { NO_SHOP, type Shop } from '../shop/shop.ts';
import type { OutputOptions } from './options.ts';
import type { Output, Ready, Work } from './output.ts';

/** What is to be made, and with which options. */
export type Planned = readonly (readonly [Output, OutputOptions])[];

/**
 * Paper, printer, shop and fonts of some work, decided once for all that is made of it. Errors: those of settling and of
 * reading the shop, with their places.
 */
export async function ready(work: Work, options: OutputOptions, planned: Planned): Promise<Result<Ready>> {
  const [first] = work.jobs;
  const shop = first === undefined ? shopOf(work) : succeed(first.shop);
  if (!shop.ok) return shop;
  const words = optionTexts(options);
  const own = shopTexts(shop.value);
  const texts = [...words, ...own, ...work.jobs.flatMap(({ job }) => userTexts(job))].map(({ text }) => text);
  const formats = planned.flatMap(([output, own]) => own.format ?? output.formats.slice(0, 1));
  const cuts = planned.some(([{ id }, { cut = [] }]) => id === 'cutfile' || cut.length > 0);
  const fonts = await loadFonts(texts, {
    files: formats.includes('pdf'),
    outlines: cuts || formats.some((format) => format !== 'pdf'),
  });
  const settled = settle({
    shop: shop.value,
    options,
    uses: planned.flatMap(([{ use }]) => (use === undefined ? [] : [use])),
    fonts,
    newPrinter: planned.some(([output, own]) => output.newPrinter?.(own) === true),
    ...defined({ job: first?.job }),
  });
  if (!settled.ok) return fail(first === undefined ? settled.problems : located(settled.problems, first.locate));
  return succeed({ work, shop: shop.value, settled: settled.value }, missing(work, words, own, fonts));
}

/** What a caller's options are to blame for has no line in the job. */
const located = (problems: readonly Problem[], locate: (problems: readonly Problem[]) => readonly Problem[]) =>
  problems.flatMap((problem) => (problem.path[0] === 'options' ? [problem] : locate([problem])));

const shopOf = ({ shop }: Work): Result<Shop> => (shop === undefined ? succeed(NO_SHOP) : readShop(shop));

const optionTexts = ({ number, date }: OutputOptions): readonly PrintedText[] => [
  ...(number === undefined ? [] : [{ text: number, path: ['number'] }]),
  ...(date === undefined ? [] : [{ text: date, path: ['date'] }]),
];

/** Warnings of characters that nothing here can show. */
const missing = (
  work: Work,
  words: readonly PrintedText[],
  own: readonly PrintedText[],
  fonts: Fonts,
): readonly Problem[] => [
  ...notShown(words, fonts),
  ...inShop(work, notShown(own, fonts)),
  ...work.jobs.flatMap(({ job, locate }) => locate(notShown(userTexts(job), fonts))),
];

/** Problems of what the shop's file says, with their places in it. */
export function inShop({ shop: alone, jobs }: Work, problems: readonly Problem[]): readonly Problem[] {
  const shop = alone ?? jobs[0]?.shopSource;
  return shop === undefined || problems.length === 0 ? problems : shopLocator(shop.text, shop.file)(problems);
}
