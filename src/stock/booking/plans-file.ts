import { defined } from '../../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { word } from '../../problems/quoted.ts';
import type { Written } from '../../read/document.ts';
import { type Booked, bookPlan, takeBack } from './book.ts';
import { readNumber } from './number.ts';
import type { KnownPlan, PlanNote, StockChange } from './plan-note.ts';
import { type GivenPlan, PLANS } from './plans-schema.ts';

/**
 * The journal beside the shop's file: every plan that was printed, so that exactly it can be booked, and what was booked,
 * so that nothing is booked twice and all can be taken back. Text in, text out; whoever writes it writes it together with the shop's file.
 */

/** The journal's file: `shop.plans.json` beside `shop.yaml`. */
export const plansFile = (shopFile: string): string => `${shopFile.replace(/\.(?:ya?ml|json)$/iu, '')}.plans.json`;

/** Plans that are kept: those printed or booked last. */
const MOST_PLANS = 100;
/** Days with thousands of offcuts come to an end too. */
const MOST_TEXT = 2_000_000;

/** The plans of a journal; none where there is no journal yet. Errors: `plans-unreadable`. */
export function readPlans(source: Written | undefined): Result<readonly KnownPlan[]> {
  if (source === undefined) return succeed([]);
  let json: unknown;
  try {
    json = JSON.parse(source.text);
  } catch {
    return unreadable(source, [], 'is no JSON');
  }
  const read = PLANS.safeParse(json, { jitless: true });
  if (read.success) return succeed(read.data.plans.map(planFrom));
  const path = (read.error.issues[0]?.path ?? []).map((step) => (typeof step === 'number' ? step : String(step)));
  return unreadable(source, path, 'is not as it was written');
}

function unreadable({ file }: Written, path: Problem['path'], what: string): Result<never> {
  const hint = 'put it right, or take it away: plans that were printed cannot be booked then';
  return fail([{ ...error('plans-unreadable', path, `the journal of plans ${what}`, hint), file }]);
}

const planFrom = ({ change, booked, ...plan }: GivenPlan): KnownPlan => ({
  ...plan,
  change: changeFrom(change),
  ...defined({ booked: booked === undefined ? undefined : { date: booked.date, change: changeFrom(booked.change) } }),
});

const changeFrom = ({ used, ...change }: GivenPlan['change']): StockChange => ({
  ...change,
  used: used.map(({ note, ...offcut }) => ({ ...offcut, ...defined({ note }) })),
});

/** A plan a line, so that a person finds one too. */
function plansText(plans: readonly KnownPlan[]): string {
  const shown = (list: readonly KnownPlan[]): string =>
    `{"plans": [\n${list.map((plan) => JSON.stringify(plan)).join(',\n')}\n]}\n`;
  let list = plans.slice(-MOST_PLANS);
  while (list.length > 1 && shown(list).length > MOST_TEXT) list = list.slice(1);
  return shown(list);
}

/** The journal with a plan that was printed; one that is in it already stays what it is, booked or not. */
export function notePlan(source: Written | undefined, plan: PlanNote, date: string): Result<string> {
  const read = readPlans(source);
  if (!read.ok) return read;
  const known = read.value.find(({ number }) => number === plan.number);
  if (known !== undefined && source !== undefined) return succeed(source.text);
  const { number, jobs, change } = plan;
  return succeed(plansText([...read.value, { number, made: date, jobs, change }]));
}

/** What booking makes of both files. */
export interface BookedPlan extends Booked {
  readonly number: string;
  readonly plansText: string;
}

/**
 * Books a plan by the number that is printed on it, once. Errors: `plan-unknown`, `plan-booked`, those of `bookPlan`
 * and of reading the journal.
 */
export function cutPlan(shop: Written, plans: Written | undefined, given: string, date: string): Result<BookedPlan> {
  const read = readPlans(plans);
  if (!read.ok) return read;
  const plan = find(read.value, given);
  if (plan === undefined) return unknown(given, plans, shop);
  if (plan.booked !== undefined) {
    const message = `plan ${plan.number} was booked on ${plan.booked.date} already`;
    return fail([error('plan-booked', [], message, 'take that back first if it was not cut')]);
  }
  const booked = bookPlan(shop, plan, date);
  if (!booked.ok) return booked;
  const { change } = booked.value;
  const { number } = plan;
  const text = plansText([...others(read.value, plan), { ...plan, booked: { date, change } }]);
  return succeed({ ...booked.value, number, plansText: text }, booked.warnings);
}

/**
 * Takes a booking back: that of a plan by its number, else the last one; the plan can be booked again. Errors:
 * `plan-unknown`, `plan-not-booked`, those of `takeBack` and of reading the journal.
 */
export function undoPlan(shop: Written, plans: Written | undefined, given?: string): Result<BookedPlan> {
  const read = readPlans(plans);
  if (!read.ok) return read;
  const plan =
    given === undefined ? read.value.findLast(({ booked }) => booked !== undefined) : find(read.value, given);
  if (plan === undefined && given !== undefined) return unknown(given, plans, shop);
  if (plan?.booked === undefined) {
    const message = plan === undefined ? 'no plan is booked' : `plan ${plan.number} is not booked`;
    return fail([error('plan-not-booked', [], message, 'there is nothing to take back')]);
  }
  const { number, made, jobs, change } = plan;
  const back = takeBack(shop, number, plan.booked.change);
  if (!back.ok) return back;
  const text = plansText([...others(read.value, plan), { number, made, jobs, change }]);
  return succeed({ ...back.value, number, plansText: text }, back.warnings);
}

const find = (plans: readonly KnownPlan[], given: string): KnownPlan | undefined => {
  const number = readNumber(given);
  return plans.find((plan) => plan.number === number);
};

const others = (plans: readonly KnownPlan[], { number }: KnownPlan): readonly KnownPlan[] =>
  plans.filter((plan) => plan.number !== number);

function unknown(given: string, plans: Written | undefined, shop: Written): Result<never> {
  if (readNumber(given) === undefined) {
    const message = `${word(given)} is no number of a plan`;
    return fail([error('plan-unknown', [], message, 'give the eight digits that stand on its pages: 4127-0936')]);
  }
  const file = plans?.file ?? plansFile(shop.file);
  const message = `there is no plan ${readNumber(given)} in ${file}`;
  const hint =
    'is this the shop that it was made for? A plan that neither counts sheets nor keeps offcuts has nothing to book';
  return fail([error('plan-unknown', [], message, hint)]);
}
