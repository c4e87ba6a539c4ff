import type { Size } from '../../geometry/point.ts';
import type { BySide } from '../../geometry/sides.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { canLie, unfit } from './fit.ts';
import { type Grid, gridFor } from './grid.ts';
import type { BlankType, First, Instance, Stock } from './instance.ts';
import type { Keeping } from './kept.ts';
import type { StockInput, StockOptions, StockPiece, StockSheet } from './model.ts';
import { NO_TRIM, trimOf } from './trim.ts';

/** Where a stock of the instance comes from. */
export type Supply =
  | { readonly kind: 'sheet' | 'offcut'; readonly sheet: StockSheet; readonly trim: BySide<number> }
  | { readonly kind: 'fallout'; readonly piece: StockPiece; readonly which: number; readonly size: Size };

/** The input on its grid, with the way back. */
export interface Task extends Keeping {
  readonly instance: Instance;
  readonly grid: Grid;
  /** x and y of the instance are y and x of the input. */
  readonly transposed: boolean;
  /** One for each stock of the instance. */
  readonly supplies: readonly Supply[];
  /** The pieces of each type of the instance; those with fallouts first. */
  readonly members: readonly (readonly StockPiece[])[];
}

interface OwnStock {
  readonly supply: Supply;
  readonly stock: Stock;
}

interface OwnType {
  readonly type: BlankType;
  readonly pieces: readonly StockPiece[];
}

/** The instance of a checked input, or the pieces that no sheet can hold. */
export function taskOf(input: StockInput): Result<Task> {
  const options = input.options ?? {};
  const problems: Problem[] = [];
  const supplies = suppliesOf(input, options, problems);
  if (problems.length > 0) return fail(problems);
  const grid = gridFor(lengthsOf(input, options, supplies));
  const kerf = grid.up(options.kerf ?? 0);
  const longest = options.longestCut === undefined ? Infinity : grid.down(options.longestCut) + kerf;
  const all = supplies.map((supply): OwnStock => ({ supply, stock: stockOf(supply, grid, kerf, longest) }));
  input.pieces.forEach((piece, i) => {
    const problem = unfit(piece, ['pieces', i], typeOf(piece, grid, kerf), all, { grid, kerf, longest });
    if (problem !== undefined) problems.push(problem);
  });
  if (problems.length > 0) return fail(problems);
  const types = merged(input.pieces, grid, kerf);
  const useful = boughtLast(all.filter(({ stock }) => types.some(({ type }) => canLie(stock, type, longest))));
  const first = useful.some(({ stock }) => stock.cost > 0) ? (options.first ?? 'sheets') : 'sheets';
  const task = canonical(useful, types, { kerf, longest, first }, grid, leastOf(options, grid));
  return succeed({ ...task, ...creditOf(task, options) });
}

/** What is to be bought is told apart only where other sheets are on hand. */
function boughtLast(all: readonly OwnStock[]): readonly OwnStock[] {
  if (all.some(({ stock }) => !stock.free && !stock.bought)) return all;
  return all.map(({ supply, stock }) => ({ supply, stock: { ...stock, bought: false } }));
}

function suppliesOf(input: StockInput, options: StockOptions, problems: Problem[]): Supply[] {
  const supplies: Supply[] = [];
  input.sheets.forEach((sheet, i) => {
    const trim = trimOf(sheet, options);
    if (trim.left + trim.right >= sheet.width || trim.top + trim.bottom >= sheet.height) {
      const message = `nothing is left of sheet ${JSON.stringify(sheet.id)} once it is trimmed`;
      problems.push(error('stock-trim-too-wide', ['sheets', i], message, 'trim less'));
    } else if (sheet.count !== 0) {
      supplies.push({ kind: sheet.offcut === true ? 'offcut' : 'sheet', sheet, trim });
    }
  });
  if (supplies.length === 0 && problems.length === 0) {
    const message = 'every sheet has a count of 0';
    problems.push(error('stock-sheets-missing', ['sheets'], message, 'list at least one that is there'));
  }
  if (options.fallouts === true) {
    for (const piece of input.pieces) {
      for (const [which, size] of (piece.fallouts ?? []).entries()) {
        supplies.push({ kind: 'fallout', piece, which, size });
      }
    }
  }
  return supplies;
}

const sizeOf = (supply: Supply): Size =>
  supply.kind === 'fallout' ? supply.size : { width: supply.sheet.width, height: supply.sheet.height };

const supplyTrim = (supply: Supply): BySide<number> => (supply.kind === 'fallout' ? NO_TRIM : supply.trim);

function usable(supply: Supply): Size {
  const { width, height } = sizeOf(supply);
  const trim = supplyTrim(supply);
  return { width: width - trim.left - trim.right, height: height - trim.top - trim.bottom };
}

function lengthsOf(input: StockInput, options: StockOptions, supplies: readonly Supply[]): number[] {
  const sizes: Size[] = [...input.pieces, ...supplies.map(sizeOf), ...supplies.map(usable)];
  const more = [options.kerf, options.longestCut].filter((length) => length !== undefined);
  return [...sizes.flatMap(({ width, height }) => [width, height]), ...more];
}

function stockOf(supply: Supply, grid: Grid, kerf: number, longest: number): Stock {
  const { width, height } = usable(supply);
  const trim = supplyTrim(supply);
  const full = sizeOf(supply);
  const factory = supply.kind === 'sheet';
  const untrimmed = (...sides: readonly number[]): number =>
    factory ? sides.filter((length) => length === 0).length : 0;
  return {
    width: grid.down(width) + kerf,
    height: grid.down(height) + kerf,
    limit: supply.kind === 'fallout' ? (supply.piece.count ?? 1) : (supply.sheet.count ?? Infinity),
    free: supply.kind !== 'sheet',
    cost: supply.kind === 'fallout' ? 0 : (supply.sheet.cost ?? 0),
    bought: supply.kind === 'sheet' && supply.sheet.count === undefined,
    edgesX: untrimmed(trim.left, trim.right),
    edgesY: untrimmed(trim.top, trim.bottom),
    whole: trimsWithin(
      { width: grid.up(full.width) + kerf, height: grid.up(full.height) + kerf },
      { width: grid.up(width) + kerf, height: grid.up(height) + kerf },
      { x: trim.left + trim.right > 0, y: trim.top + trim.bottom > 0 },
      longest,
    ),
  };
}

/** True where all four sides can be trimmed before anything else, left and right first or last. */
function trimsWithin(
  full: Size,
  inner: Size,
  trims: { readonly x: boolean; readonly y: boolean },
  longest: number,
): boolean {
  const xFirst = (!trims.x || full.height <= longest) && (!trims.y || inner.width <= longest);
  const yFirst = (!trims.y || full.width <= longest) && (!trims.x || inner.height <= longest);
  return xFirst || yFirst;
}

/** A piece that may turn lies with its longer side along x. */
function typeOf(piece: StockPiece, grid: Grid, kerf: number): BlankType {
  const [width, height] = [grid.up(piece.width) + kerf, grid.up(piece.height) + kerf];
  const turn = piece.turn !== false || width === height;
  return {
    width: turn ? Math.max(width, height) : width,
    height: turn ? Math.min(width, height) : height,
    demand: piece.count ?? 1,
    turn,
    edge: piece.factoryEdge === true,
  };
}

const drops = ({ fallouts = [] }: StockPiece): boolean => fallouts.length > 0;

function merged(pieces: readonly StockPiece[], grid: Grid, kerf: number): OwnType[] {
  const byKey = new Map<string, { type: BlankType; pieces: StockPiece[] }>();
  const withFalloutsFirst = [...pieces.filter(drops), ...pieces.filter((piece) => !drops(piece))];
  for (const piece of withFalloutsFirst) {
    const type = typeOf(piece, grid, kerf);
    const key = [type.width, type.height, type.turn, type.edge].join(' ');
    const known = byKey.get(key);
    if (known === undefined) {
      byKey.set(key, { type, pieces: [piece] });
    } else {
      known.type = { ...known.type, demand: known.type.demand + type.demand };
      known.pieces.push(piece);
    }
  }
  return [...byKey.values()];
}

const turnedStock = (stock: Stock): Stock => ({
  ...stock,
  width: stock.height,
  height: stock.width,
  edgesX: stock.edgesY,
  edgesY: stock.edgesX,
});

const turnedType = (type: BlankType): BlankType =>
  type.turn ? type : { ...type, width: type.height, height: type.width };

const byKeys =
  (...keys: readonly number[]) =>
  (others: readonly number[]): number => {
    for (let i = 0; i < keys.length; i++) if (keys[i] !== others[i]) return keys[i]! - others[i]!;
    return 0;
  };

const stockKeys = (s: Stock): number[] => [
  Number(s.free),
  -s.width * s.height,
  -s.width,
  s.cost,
  s.edgesX,
  s.edgesY,
  s.limit === Infinity ? -1 : s.limit,
];

const typeKeys = (t: BlankType): number[] => [-t.width * t.height, -t.width, Number(t.turn), Number(t.edge), t.demand];

/**
 * Stocks and types in an order of their own, lying along x or y whichever comes first: so the same problem, turned by a
 * quarter or listed in another order, is searched the same way.
 */
function canonical(
  stocks: readonly OwnStock[],
  types: readonly OwnType[],
  rest: { readonly kerf: number; readonly longest: number; readonly first: First },
  grid: Grid,
  least: Size,
): Task {
  const sorted = (
    turned: boolean,
  ): { readonly stocks: OwnStock[]; readonly types: OwnType[]; readonly keys: number[] } => {
    const ownStocks = stocks.map((each) => (turned ? { ...each, stock: turnedStock(each.stock) } : each));
    const ownTypes = types.map((each) => (turned ? { ...each, type: turnedType(each.type) } : each));
    ownStocks.sort((a, b) => byKeys(...stockKeys(a.stock))(stockKeys(b.stock)));
    ownTypes.sort((a, b) => byKeys(...typeKeys(a.type))(typeKeys(b.type)));
    const keys = [
      ...ownStocks.flatMap(({ stock }) => stockKeys(stock)),
      ...ownTypes.flatMap(({ type }) => typeKeys(type)),
    ];
    return { stocks: ownStocks, types: ownTypes, keys };
  };
  const [upright, lying] = [sorted(false), sorted(true)];
  const transposed = byKeys(...lying.keys)(upright.keys) < 0;
  const chosen = transposed ? lying : upright;
  return {
    instance: {
      stocks: chosen.stocks.map(({ stock }) => stock),
      types: chosen.types.map(({ type }) => type),
      ...rest,
    },
    grid,
    transposed,
    supplies: chosen.stocks.map(({ supply }) => supply),
    members: chosen.types.map(({ pieces }) => pieces),
    least,
  };
}

/** Sheets are of one price all over, what was trimmed off included. */
function creditOf({ instance, supplies, grid }: Task, { offcutCredit = 0 }: StockOptions): Pick<Keeping, 'credit'> {
  if (instance.first !== 'cost' || offcutCredit === 0) return {};
  return {
    credit: supplies.map((supply) => {
      if (supply.kind !== 'sheet') return 0;
      const { width, height, cost = 0 } = supply.sheet;
      return (offcutCredit * cost) / (width * height * grid.perUnit ** 2);
    }),
  };
}

function leastOf(options: StockOptions, grid: Grid): Size {
  const least = options.leastOffcut ?? 0;
  const { width, height } = typeof least === 'number' ? { width: least, height: least } : least;
  return { width: grid.up(width), height: grid.up(height) };
}
