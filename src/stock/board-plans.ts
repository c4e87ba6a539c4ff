import type { Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { lookUp } from '../read/fields/look-up.ts';
import type { SheetSize } from '../shop/board.ts';
import { boardKey, SHEET } from '../shop/board.ts';
import type { ShelfOffcut } from '../shop/stock.ts';
import { showSize } from '../units/print.ts';
import type { Units } from '../units/units.ts';
import { type Blank, backingBlanks, boardMaterial, layerBlanks, type Material } from './blanks.ts';
import { falloutsOf } from './fallout.ts';
import { inJobsWords, pieceLabel, shopSection } from './jobs-words.ts';
import type { StockInput, StockOptions, StockPiece, StockPlan, StockSheet } from './planner/model.ts';
import type { Watch } from './planner/pace.ts';
import { planStock, STOPPED } from './planner/plan.ts';
import { priceOfSheet } from './sheet-price.ts';
import type { StockJob, StockShop } from './stock-job.ts';

export interface BoardPlanOptions {
  /** What drops out of openings is stock too. */
  readonly fallouts?: boolean;
  /** A board of the shop, instead of the shop's own wish: each piece gets another blank of it, behind the artwork. */
  readonly backing?: string;
  /** Every sheet must have a price. */
  readonly cost?: boolean;
  readonly effort?: number;
  readonly seed?: number;
}

export interface StockRequest {
  readonly jobs: readonly StockJob[];
  readonly shop: StockShop;
  /** As messages show lengths. */
  readonly units: Units;
  readonly options: BoardPlanOptions;
}

/** All blanks of one board, on sheets. */
export interface BoardPlan {
  readonly material: Material;
  /** By the piece's id. */
  readonly blanks: ReadonlyMap<string, Blank>;
  /** By the sheet's id. */
  readonly shopSheets: ReadonlyMap<string, ShopSheet>;
  readonly input: StockInput;
  readonly plan: StockPlan;
}

/** `index`: in the board's list of sheets. */
export type ShopSheet =
  | { readonly kind: 'sheet'; readonly index: number; readonly size: Size }
  | { readonly kind: 'offcut'; readonly offcut: ShelfOffcut };

/**
 * The blanks of all jobs that are not cut yet, board by board, each on the fewest sheets; the problems of all boards at
 * once, with their places in the jobs and in the shop. `watch` hears how many boards are planned, the one at work in part;
 * where it answers no, the work ends as `stock-stopped`.
 */
export function planBoards(
  request: StockRequest,
  watch: (board: string, done: number, of: number) => boolean = () => true,
): Result<readonly BoardPlan[]> {
  const { jobs, shop, options } = request;
  const backing = backingBoard(shop, options);
  if (!backing.ok) return backing;
  const blanks = [...layerBlanks(jobs), ...backingBlanks(jobs, backing.value)].filter(({ cut }) => !cut);
  if (blanks.length === 0) {
    const message = 'every blank of these jobs is cut already';
    return fail([error('stock-nothing', [], message, 'take asCut out of a job to plan it anew')]);
  }
  const groups = new Map<string, Blank[]>();
  for (const blank of blanks) {
    const key = `${boardKey(blank.material)} ${blank.material.kind}`;
    groups.set(key, [...(groups.get(key) ?? []), blank]);
  }
  const [plans, problems, warnings]: [BoardPlan[], Problem[], Problem[]] = [[], [], []];
  const keys = [...groups.keys()].sort((a, b) => (a < b ? -1 : 1));
  for (const [i, key] of keys.entries()) {
    const { name } = groups.get(key)![0]!.material;
    const made = planBoard(groups.get(key)!, request, (share) => watch(name, i + share, keys.length));
    if (made.ok) {
      plans.push(made.value);
      warnings.push(...made.warnings);
    } else problems.push(...made.problems);
  }
  return problems.length > 0 ? fail(problems) : succeed(plans, warnings);
}

function backingBoard({ shop }: StockShop, { backing }: BoardPlanOptions) {
  const id = backing ?? shop.stock.backing;
  if (id === undefined) return succeed(undefined);
  const problems: Problem[] = [];
  const board = lookUp('board', id, shop.boards, [], problems);
  return board === undefined ? fail(problems) : succeed(board);
}

/** What the shop lists of a board, also where a job calls it otherwise. */
function ownMaterial(material: Material, { shop }: StockShop): Material {
  if (material.kind !== 'board') return material;
  const own = [...shop.boards.values()].find((board) => boardKey(board) === boardKey(material));
  return own === undefined ? material : boardMaterial(own);
}

function planBoard(blanks: readonly Blank[], request: StockRequest, watch: Watch): Result<BoardPlan> {
  const { jobs, shop, units, options } = request;
  const material = ownMaterial(blanks[0]!.material, shop);
  const own = sheetsOf(material, shop, units);
  const unpriced = own.sizes.findIndex((size) => priceOfSheet(size, material) === undefined);
  if (unpriced >= 0 && options.cost === true) {
    return fail([priceMissing(material, own.sizes[unpriced]!, unpriced, shop, units)]);
  }
  const pieces = blanks.map((blank, i) => pieceOf(blank, `${i + 1}`, material, request));
  const sheets = unpriced >= 0 ? own.sheets.map(({ cost, ...sheet }) => sheet) : own.sheets;
  const input: StockInput = { sheets, pieces, options: plannerOptions(shop, options) };
  const planned = watch(0) ? planStock(input, watch) : STOPPED;
  if (!planned.ok) {
    const context = { input, blanks, material, jobs, shop, units };
    return fail(planned.problems.map((problem) => inJobsWords(problem, context)));
  }
  const byId = new Map(pieces.map(({ id }, i) => [id, blanks[i]!]));
  return succeed({ material, blanks: byId, shopSheets: own.shopSheets, input, plan: planned.value }, own.warnings);
}

function plannerOptions({ shop: { stock } }: StockShop, { fallouts, effort, seed }: BoardPlanOptions): StockOptions {
  const { kerf, trim, leastOffcut, longestCut, first, offcutCredit } = stock;
  return { kerf, trim, leastOffcut, first, offcutCredit, ...defined({ longestCut, fallouts, effort, seed }) };
}

function pieceOf(blank: Blank, id: string, { directional }: Material, request: StockRequest): StockPiece {
  const { jobs, shop, options } = request;
  const { stock } = shop.shop;
  const { width, height, layer, material } = blank;
  const { mat, job } = jobs[blank.job]!;
  const drops = options.fallouts === true && layer !== undefined;
  return {
    id,
    width,
    height,
    count: blank.count,
    label: pieceLabel(jobs, blank),
    ...defined({
      turn: directional ? false : undefined,
      factoryEdge: stock.factoryEdge && material.kind === 'board' ? true : undefined,
      fallouts: drops ? falloutsOf(mat, job, layer, stock.falloutMargin) : undefined,
    }),
  };
}

/** Sizes that are bought, each with its price where there is one, and what lies on the shelf. */
function sheetsOf(material: Material, shop: StockShop, units: Units) {
  const listed = material.sheets.length > 0;
  const sizes: readonly SheetSize[] = listed ? material.sheets : [SHEET];
  const shopSheets = new Map<string, ShopSheet>();
  const sheets: StockSheet[] = [];
  sizes.forEach((given, index) => {
    const { count } = given;
    const { width, height } = given.measured ?? given;
    const shown = showSize(given, units);
    const id = shopSheets.has(shown) ? `${shown} (${index + 1})` : shown;
    shopSheets.set(id, { kind: 'sheet', index, size: { width, height } });
    sheets.push({ id, width, height, ...defined({ count, cost: priceOfSheet(given, material) }) });
  });
  if (shopSection(material, shop) !== undefined) {
    for (const offcut of shop.shop.shelf.filter(({ board }) => board === material.id)) {
      const { id, width, height } = offcut;
      shopSheets.set(id, { kind: 'offcut', offcut });
      sheets.push({ id, width, height, count: 1, offcut: true });
    }
  }
  const message = `nothing says what sheets of ${material.name} there are; ${showSize(SHEET, units)} is taken`;
  const hint = 'list them as sheets of the board in the shop’s file';
  return { sizes, sheets, shopSheets, warnings: listed ? [] : [warning('stock-sheets-assumed', [], message, hint)] };
}

function priceMissing(material: Material, size: Size, index: number, shop: StockShop, units: Units): Problem {
  const section = shopSection(material, shop);
  const message = `the cost is asked for, but a sheet of ${material.name}, ${showSize(size, units)}, has no price`;
  const problem = error('stock-price-missing', [], message, 'give the board, or that size of sheet, a price');
  if (section === undefined) return problem;
  return shop.locate([{ ...problem, path: [...section, 'sheets', index] }])[0]!;
}
