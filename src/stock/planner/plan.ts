import { fail, type Result, succeed } from '../../problems/problem.ts';
import { type LowerBound, lowerBound } from './bounds.ts';
import { exactPlan, layOut } from './exact.ts';
import { fewerSettings } from './fewer-settings.ts';
import { Forest } from './forest.ts';
import type { Instance } from './instance.ts';
import type { StockInput, StockOptions, StockPlan } from './model.ts';
import { largerOffcut } from './offcut.ts';
import { isOrder, planOrder } from './order.ts';
import { type Posed, pose } from './pose.ts';
import { inputProblems } from './read-input.ts';
import { reserveStrips } from './reserve.ts';
import { Search } from './search.ts';
import { tooSmall } from './too-small.ts';
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

/**
 * Lays pieces out on sheets by straight cuts from edge to edge: fewest sheets, then least cost, then the largest single
 * offcut, then the fewest cuts. Plain rectangles in one unit of length in and out; nothing is thrown for a wrong input.
 * The same input and seed give the same plan on every machine.
 */
export function planStock(input: StockInput): Result<StockPlan> {
  const wrong = inputProblems(input);
  if (wrong.length > 0) return fail(wrong);
  const posed = pose(input);
  if (!posed.ok) return posed;
  const options = input.options ?? {};
  const found = solve(posed.value, options);
  if (!found.ok) return found;
  return succeed(writePlan(posed.value, found.value.forest, found.value.bound, options));
}

interface Found {
  readonly forest: Forest;
  readonly bound: LowerBound;
}

function solve(posed: Posed, options: StockOptions): Result<Found> {
  const { instance, least } = posed;
  let bound = lowerBound(instance);
  if (bound.sheets === Infinity) return fail([tooSmall(posed, true)]);
  const budget = Math.round((options.effort ?? 1) * STEPS);
  const seed = options.seed ?? 1;
  let search = new Search(unlimited(instance), seed);
  let joined = (): Forest => search.best;
  search.placeAll(SHEETS_UNTIL * budget);
  if (
    isOrder(instance) &&
    unrestricted(instance) &&
    search.best.missingCount === 0 &&
    search.price.sheets > bound.sheets
  ) {
    const order = planOrder(search.instance, search, bound, budget, seed);
    bound = order.bound;
    if ('search' in order) ({ search, joined } = order);
  } else {
    const exact = fewest(search, instance, bound, budget);
    if (exact === 'none') return fail([tooSmall(posed, true)]);
    bound = exact;
  }
  search.lessCost(COST_UNTIL * budget);
  const forest = joined();
  const short = instance.stocks.some((stock, s) => forest.opened[s]! > stock.limit);
  if (forest.missingCount > 0 || short) return fail([tooSmall(posed, false)]);
  const share = Math.max(0, Math.min(OFFCUT_SHARE * budget, budget - search.steps));
  const polish = search.steps + share;
  reserveStrips(search, least, search.steps + STRIPS_SHARE * share);
  largerOffcut(search, least, polish);
  const tidied = fewerSettings(posed, joined(), options.longestCut ?? Infinity, SETTINGS_SHARE * budget);
  return succeed({ forest: tidied, bound });
}

/** The search's plan with fewer sheets, worked out exactly where the case is small; returns the bound that is known then. */
function fewest(search: Search, instance: Instance, bound: LowerBound, budget: number): LowerBound | 'none' {
  search.fewerSheets(bound.sheets, EXACT_AFTER * budget);
  const proved = search.best.missingCount === 0 && search.price.sheets <= bound.sheets && !search.exchangeable();
  const exact = proved ? undefined : exactPlan(instance);
  if (exact === 'none') return exact;
  const raised =
    exact !== undefined && exact.sheets > bound.sheets ? { sheets: exact.sheets, by: 'every layout tried' } : bound;
  if (exact !== undefined && unrestricted(instance)) {
    search.best = new Forest(search.instance);
    layOut(exact, search.best);
  } else search.fewerSheets(raised.sheets, SHEETS_UNTIL * budget);
  return raised;
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
