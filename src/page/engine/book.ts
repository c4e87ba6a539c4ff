import { prepare } from '../../outputs/prepare.ts';
import { readShop } from '../../shop/read-shop.ts';
import { bookPlan } from '../../stock/booking/book.ts';
import { changeWords } from '../../stock/booking/words.ts';
import type { Asks, BookedShop, Told } from './answers.ts';
import { solvedOf } from './solved.ts';

/** The shop's file as it is once the plan of these jobs is cut: the plan is made anew, which comes out the same. */
export async function book({ jobs, shop, date }: Asks['book']['request']): Promise<Told<BookedShop>> {
  const source = jobs[0]?.shop ?? shop;
  if (source === undefined) throw new TypeError('a plan is booked in a shop');
  const solved = await solvedOf(jobs);
  if (!solved.ok) return { ok: false, problems: solved.problems };
  const prepared = await prepare('stock', { jobs: solved.value, shop: source });
  if (!prepared.ok) return { ok: false, problems: prepared.problems };
  const { plan } = prepared.value.drawn.record;
  if (plan === undefined) throw new TypeError('a plan with a shop has a number');
  const { number } = plan;
  if (plan.idle) return { ok: true, value: { shopText: source.text, number, words: [] }, problems: [] };
  const booked = bookPlan(source, plan, date);
  if (!booked.ok) return { ok: false, problems: booked.problems };
  const { shopText, change } = booked.value;
  const now = readShop({ text: shopText, file: source.file });
  const words = now.ok ? changeWords(change, now.value) : [];
  return { ok: true, value: { shopText, number, words }, problems: booked.warnings };
}
