import { prepare } from '../../outputs/prepare.ts';

import { bookPlan } from '../../stock/booking/book.ts';
import type { Asks, Told } from './answers.ts';
import { solvedOf } from './solved.ts';

/** The shop's file as it is once the plan of these jobs is cut: the plan is made anew, which comes out the same. */
export async function book({
  jobs,
  shop,
  date,
}: Asks['book']['request']): Promise<Told<{ readonly shopText: string }>> {
  const source = jobs[0]?.shop ?? shop;
  if (source === undefined) throw new TypeError('a plan is booked in a shop');
  const solved = await solvedOf(jobs);
  if (!solved.ok) return { ok: false, problems: solved.problems };
  const prepared = await prepare('stock', { jobs: solved.value, shop: source });
  if (!prepared.ok) return { ok: false, problems: prepared.problems };
  const { plan } = prepared.value.drawn.record;
  if (plan === undefined) throw new TypeError('a plan with a shop has a number');
  const booked = bookPlan(source, plan, date);
  return booked.ok
    ? { ok: true, value: { shopText: booked.value.shopText }, problems: booked.warnings }
    : { ok: false, problems: booked.problems };
}
