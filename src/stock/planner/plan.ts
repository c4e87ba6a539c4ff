import { error, fail, type Result, succeed } from '../../problems/problem.ts';
import { boundOfCost, boundOfSheets, type LowerBound } from './bounds/bounds.ts';
import { fewerSettings } from './fewer-settings.ts';
import type { Instance } from './instance.ts';
import type { StockInput, StockOptions, StockPlan } from './model.ts';
import { Columns } from './orders/columns.ts';
import { isOrder, ORDER_SHARE, planOrder, raised } from './orders/order.ts';
import { otherSheets } from './other-sheets.ts';
import { Pace, type Watch } from './pace.ts';
import { inputProblems } from './read-input.ts';
import { exactPlan, layOut } from './search/exact.ts';
import { largerOffcut } from './search/offcut.ts';
import { ORDERS } from './search/recreate.ts';
import { reserveStrips } from './search/reserve.ts';
import { Search } from './search/search.ts';
import { type Task, taskOf } from './task.ts';
import { tooSmall } from './too-small.ts';
import { Forest } from './trees/forest.ts';
import { writePlan } from './write-plan.ts';

/** Steps of the search at an effort of 1, about a second on a machine of 2025. */
const STEPS = 80_000_000;
/** Where in the budget saving sheets ends, and saving cost; the rest is for the offcut. */
const SHEETS_UNTIL = 0.85;
/** A small case that is not proved by then is worked out exactly. */
const EXACT_AFTER = 0.05;
const COST_UNTIL = 0.95;
/** The offcut gets so much of the budget at most, and strips across a sheet so much of that. */
const OFFCUT_SHARE = 0.15;
const STRIPS_SHARE = 0.6;
/** What settings of the stop may take on top of the budget. */
const SETTINGS_SHARE = 0.05;

/** Where money counts first, the bound by patterns may take so much of the budget, of so many kinds of blanks and of sheets. */
const BOUND_SHARE = 0.1;
const MOST_KINDS = 60;
const MOST_STOCKS = 12;
/** The plan by the other rule gets so much of the effort. */
const OTHER_SHARE = 0.5;

/**
 * Lays pieces out on sheets by straight cuts from edge to edge: what is on hand before what must be bought, fewest sheets
 * and then least cost (or the other way round), then the largest single offcut, then the fewest cuts. Plain rectangles in
 * one unit of length in and out; nothing is thrown for a wrong input. The same input and seed give the same plan on every
 * machine. `watch` is called now and then; where it answers no, the work ends as `stock-stopped`.
 */
export function planStock(input: StockInput, watch?: Watch): Result<StockPlan> {
  const wrong = inputProblems(input);
  if (wrong.length > 0) return fail(wrong);
  const task = taskOf(input);
  if (!task.ok) return task;
  const options = input.options ?? {};
  const pace = watch === undefined ? undefined : new Pace(watch, stepsFor(task.value.instance, options));
  const found = solve(task.value, options, true, pace);
  if (isStopped(pace)) return STOPPED;
  if (!found.ok) return found;
  const plan = writePlan(task.value, found.value.forest, found.value.bound, options);
  const whole = withOther(plan, found.value, task.value, options, pace);
  return isStopped(pace) ? STOPPED : succeed(whole);
}

/** What became of a plan that `watch` stopped. */
export const STOPPED = fail([error('stock-stopped', [], 'the work was stopped before there was a plan', 'ask again')]);

const isStopped = (pace: Pace | undefined): boolean => pace?.stopped === true;

/** Steps that a plan takes at the most, roughly. */
function stepsFor(instance: Instance, { effort = 1 }: StockOptions): number {
  const two = instance.stocks.filter(({ free }) => !free).length > 1 && instance.stocks.some(({ cost }) => cost > 0);
  return effort * STEPS * (isOrder(instance) ? ORDER_SHARE : 1) * (two ? 1 + OTHER_SHARE : 1);
}

/** Beside a plan for cost the best one found for sheets, and the other way round, where these are not the same. */
function withOther(
  plan: StockPlan,
  { bound, small }: Found,
  task: Task,
  options: StockOptions,
  pace: Pace | undefined,
): StockPlan {
  const { instance } = task;
  const counted = instance.stocks.filter(({ free }) => !free);
  if (plan.cost === undefined || counted.length < 2) return plan;
  const first = instance.first === 'cost' ? 'sheets' : 'cost';
  const turned = { ...task, instance: { ...instance, first } as const };
  const found = solve(turned, { ...options, effort: OTHER_SHARE * (options.effort ?? 1) }, small, pace);
  if (!found.ok) return plan;
  const other = writePlan(turned, found.value.forest, found.value.bound, options);
  if (other.cost === undefined || (other.cost === plan.cost && other.count === plan.count)) return plan;
  // What is better by both rules, by luck of the search or for what its offcuts are worth, is the plan.
  const net = ({ cost = 0, credit = 0 }: StockPlan): number => cost - credit;
  const dearer = net(other) > net(plan) || (net(other) === net(plan) && other.count > plan.count);
  if (!dearer && (instance.first === 'cost' || other.count <= plan.count)) {
    return writePlan(task, found.value.forest, bound, options);
  }
  return { ...plan, other: { first, count: other.count, cost: other.cost } };
}

interface Found {
  readonly forest: Forest;
  readonly bound: LowerBound;
  /** Small enough to be worked out exactly. */
  readonly small: boolean;
}

/** `exactly`: works small cases out exactly. */
function solve(task: Task, options: StockOptions, exactly: boolean, pace: Pace | undefined): Result<Found> {
  const { instance } = task;
  let bound = instance.first === 'cost' ? boundOfCost(instance) : boundOfSheets(instance);
  if (bound.value === Infinity) return fail([tooSmall(task, true)]);
  const budget = Math.round((options.effort ?? 1) * STEPS);
  const seed = options.seed ?? 1;
  const order = isOrder(instance) && unrestricted(instance);
  let search = new Search(unlimited(instance), seed, { ways: order ? 1 : ORDERS, pace });
  let [joined, alike] = [(): Forest => search.best, (): Forest => search.best];
  let small = exactly;
  search.placeAll(SHEETS_UNTIL * budget);
  if (order && search.best.missingCount === 0) {
    const found = planOrder(search.instance, search, bound, budget, seed, pace);
    bound = found.bound;
    if ('search' in found) ({ search, joined, alike } = found);
  } else {
    const exact = best(search, instance, bound, budget, exactly);
    if (exact === 'none') return fail([tooSmall(task, true)]);
    ({ bound, small } = exact);
  }
  search.saveThen(COST_UNTIL * budget);
  const forest = joined();
  const short = instance.stocks.some((stock, s) => forest.opened[s]! > stock.limit);
  if (forest.missingCount > 0 || short) return fail([tooSmall(task, false)]);
  const share = Math.max(0, Math.min(OFFCUT_SHARE * budget, budget - search.steps));
  const polish = search.steps + share;
  reserveStrips(search, task, search.steps + STRIPS_SHARE * share);
  largerOffcut(search, task, polish);
  const tidied = fewerSettings(
    task,
    otherSheets(task, alike()),
    options.longestCut ?? Infinity,
    SETTINGS_SHARE * budget,
  );
  return succeed({ forest: tidied, bound, small });
}

/** Makes the search's plan better, exactly where the case is small; returns the bound that is known then. */
function best(
  search: Search,
  instance: Instance,
  bound: LowerBound,
  budget: number,
  exactly: boolean,
): Pick<Found, 'bound' | 'small'> | 'none' {
  const { first } = instance;
  search.saveFirst(bound.value, EXACT_AFTER * budget);
  const proved = search.best.missingCount === 0 && search.reached(bound.value) && !search.exchangeable();
  const exact = proved || !exactly ? undefined : exactPlan(instance);
  if (exact === 'none') return exact;
  // Where something is on hand, the exact plan may take more, so as to buy less.
  const mixed = instance.stocks.some(({ bought }) => bought);
  let raisedTo = bound;
  if (exact !== undefined && !mixed && exact[first] > bound.value) {
    raisedTo = { value: exact[first], by: 'every layout tried' };
  }
  if (exact !== undefined && unrestricted(instance)) {
    search.best = new Forest(search.instance);
    layOut(exact, search.best);
    return { bound: raisedTo, small: true };
  }
  if (
    first === 'cost' &&
    unrestricted(instance) &&
    instance.types.length <= MOST_KINDS &&
    instance.stocks.length <= MOST_STOCKS
  ) {
    const demand = Int32Array.from(instance.types, (type) => type.demand);
    const limits = search.instance.stocks.map(({ limit }) => limit);
    const relaxed = new Columns(search.instance, search.pace).relax(
      { need: demand, limits },
      { steps: BOUND_SHARE * budget },
    );
    raisedTo = raised(search.instance, raisedTo, relaxed.bound);
  }
  search.saveFirst(raisedTo.value, SHEETS_UNTIL * budget);
  return { bound: raisedTo, small: exactly && (proved || exact !== undefined) };
}

/**
 * With one kind of sheet to buy, how many there are is looked at only in the end: so a plan never gets worse when there
 * are more.
 */
function unlimited(instance: Instance): Instance {
  if (instance.stocks.filter((stock) => !stock.free).length !== 1) return instance;
  return {
    ...instance,
    stocks: instance.stocks.map((stock) => (stock.free ? stock : { ...stock, limit: Infinity })),
  };
}

/** True where neither the longest cut nor a factory edge restricts layouts, so that an exact plan is one. */
function unrestricted({ stocks, types, longest }: Instance): boolean {
  return types.every((type) => !type.edge) && stocks.every(({ width, height }) => Math.max(width, height) <= longest);
}
