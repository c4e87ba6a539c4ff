import type { Size } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import type { LowerBound } from './bounds/bounds.ts';
import { priceOf } from './instance.ts';
import { type Copy, layOutSheet, sheetToLay } from './layout.ts';
import type {
  Areas,
  CutNode,
  LaidPiece,
  Offcut,
  OffcutNode,
  PieceNode,
  StockOptions,
  StockPiece,
  StockPlan,
  UsedSheet,
} from './model.ts';
import type { Supply, Task } from './task.ts';
import { flatLayout } from './trees/flat.ts';
import type { Forest } from './trees/forest.ts';

/** The plan in the input's own terms. */
export function writePlan(task: Task, forest: Forest, bound: LowerBound, options: StockOptions): StockPlan {
  const sheets = new Writer(task, forest, options.longestCut ?? Infinity).sheets();
  const { first } = task.instance;
  const price = priceOf(task.instance, forest.opened);
  const rate = options.offcutCredit ?? 0;
  const credit = rate * sheets.reduce((sum, sheet) => sum + worthKept(sheet), 0);
  const proved = first === 'cost' && rate > 0 ? lessCredit(task, bound, rate) : bound;
  const above = (first === 'cost' ? price.cost - credit : price.sheets) - proved.value;
  const gap = above <= NOISE * Math.max(1, proved.value) ? 0 : above;
  const largest = largestOffcut(sheets);
  const priced = sheets.some((sheet) => sheet.cost !== undefined);
  return {
    sheets,
    laid: sheets.flatMap((sheet) => leaves(sheet.tree).flatMap((leaf) => laidPieces(sheet, leaf))),
    count: price.sheets,
    ...(priced ? { cost: sheets.reduce((sum, sheet) => sum + (sheet.cost ?? 0), 0) } : {}),
    ...(priced && rate > 0 ? { credit } : {}),
    first,
    bound: proved,
    status: gap === 0 ? 'optimal' : 'open',
    gap,
    verdict: verdictOf(first, gap),
    ...defined({ largestOffcut: largest }),
    area: areas(sheets),
  };
}

/** Costs are sums of doubles. */
const NOISE = 1e-9;

/** The part of a sheet's cost that its kept offcuts take up. */
function worthKept(sheet: UsedSheet): number {
  const kept = keptOffcuts(sheet).reduce((sum, offcut) => sum + areaOf(offcut), 0);
  return ((sheet.cost ?? 0) * kept) / areaOf(sheet);
}

/** All of a sheet but its blanks could be credited: that is the most which the bound can lose. */
function lessCredit({ instance, supplies, grid }: Task, bound: LowerBound, rate: number): LowerBound {
  const { stocks, types, kerf } = instance;
  const area = ({ width, height }: Size): number => grid.length(width - kerf) * grid.length(height - kerf);
  const blanks = types.reduce((sum, type) => sum + type.demand * area(type), 0);
  const free = stocks.reduce((sum, stock) => sum + (stock.free ? stock.limit * area(stock) : 0), 0);
  const cheapest = supplies.reduce((least, supply) => {
    if (supply.kind !== 'sheet') return least;
    return Math.min(least, (supply.sheet.cost ?? 0) / areaOf(supply.sheet));
  }, Infinity);
  const least = cheapest === Infinity ? 0 : cheapest * Math.max(0, blanks - free);
  return { value: (1 - rate) * bound.value + rate * least, by: bound.by };
}

function verdictOf(first: StockPlan['first'], gap: number): string {
  if (gap === 0) return `optimal in ${first}`;
  if (first === 'cost') return `at most ${Number(gap.toFixed(2))} in cost from the bound`;
  return `at most ${gap} ${gap === 1 ? 'sheet' : 'sheets'} from the bound`;
}

const falloutKey = ({ id }: StockPiece, which: number): string => `${which} ${id}`;

class Writer {
  /** How many copies of each member of a type have been laid. */
  private readonly laid: number[];
  /** Copies whose fallout is there and not used yet, by piece and which of its fallouts. */
  private readonly fallouts = new Map<string, number[]>();
  private readonly out: UsedSheet[] = [];

  constructor(
    private readonly task: Task,
    private readonly forest: Forest,
    private readonly longestCut: number,
  ) {
    this.laid = task.members.map(() => 0);
  }

  /**
   * Sheets and offcuts fullest first, those alike beside each other, then fallouts as their mats come: each after the
   * sheet that its mat lies on.
   */
  sheets(): UsedSheet[] {
    const { forest, task } = this;
    const used = Array.from({ length: forest.sheets }, (_, sheet) => sheet).filter((sheet) => !forest.isEmpty(sheet));
    const filled = (sheet: number): number => forest.nodes.filled(forest.root[sheet]!);
    const first = new Map<string, number>();
    const alike = used.map((sheet) => {
      const key = flatLayout(forest, forest.root[sheet]!).join(' ');
      if (!first.has(key)) first.set(key, sheet);
      return first.get(key)!;
    });
    const like = new Map(used.map((sheet, i) => [sheet, alike[i]!]));
    used.sort(
      (a, b) => forest.stock[a]! - forest.stock[b]! || filled(b) - filled(a) || like.get(a)! - like.get(b)! || a - b,
    );
    const supply = (sheet: number): Supply => task.supplies[forest.stock[sheet]!]!;
    // Fallouts come in the order of their size: a mat is larger than its fallout, so it lies on something before that.
    const fallouts = used.filter((sheet) => supply(sheet).kind === 'fallout');
    for (const sheet of used) if (!fallouts.includes(sheet)) this.lay(sheet, supply(sheet));
    for (const sheet of fallouts) this.lay(sheet, supply(sheet));
    return this.out;
  }

  private lay(sheet: number, supply: Supply): void {
    const number = this.out.length + 1;
    const laid = sheetToLay(supply, sheet);
    const { width, height } = laid;
    // The copy whose fallout is used is taken before others are handed out.
    const copy = supply.kind === 'fallout' ? this.fallouts.get(falloutKey(supply.piece, supply.which))!.shift()! : 0;
    const tree = layOutSheet(this.task, this.forest, laid, this.longestCut, (type) => this.hand(type));
    if (supply.kind === 'fallout') {
      const { id } = supply.piece;
      this.out.push({
        number,
        id,
        origin: { kind: 'fallout', piece: id, copy, which: supply.which },
        width,
        height,
        tree,
      });
      return;
    }
    const { id, cost } = supply.sheet;
    const priced = defined({ cost });
    this.out.push({ number, id, origin: { kind: supply.kind }, width, height, ...priced, tree });
  }

  /** The next copy of a type, piece by piece as the input lists them. */
  private hand(type: number): Copy {
    let index = this.laid[type]!++;
    for (const piece of this.task.members[type]!) {
      const count = piece.count ?? 1;
      if (index < count) {
        piece.fallouts?.forEach((_, which) => {
          const key = falloutKey(piece, which);
          this.fallouts.set(key, [...(this.fallouts.get(key) ?? []), index + 1]);
        });
        return { piece, copy: index + 1 };
      }
      index -= count;
    }
    throw new Error('more pieces lie on the sheets than there are');
  }
}

function leaves(node: CutNode, out: CutNode[] = []): CutNode[] {
  if (node.kind === 'cuts') for (const part of node.parts) leaves(part, out);
  else out.push(node);
  return out;
}

function laidPieces(sheet: UsedSheet, leaf: CutNode): LaidPiece[] {
  if (leaf.kind !== 'piece') return [];
  const { x, y, width, height, piece, copy, turned }: PieceNode = leaf;
  return [{ sheet: sheet.number, sheetId: sheet.id, piece, copy, turned, x, y, width, height }];
}

const areaOf = (size: { readonly width: number; readonly height: number }): number => size.width * size.height;

const keptOffcuts = (sheet: UsedSheet): OffcutNode[] =>
  leaves(sheet.tree).filter((leaf): leaf is OffcutNode => leaf.kind === 'offcut' && leaf.keep);

function largestOffcut(sheets: readonly UsedSheet[]): Offcut | undefined {
  let best: Offcut | undefined;
  for (const sheet of sheets) {
    for (const { x, y, width, height } of keptOffcuts(sheet)) {
      if (best === undefined || width * height > areaOf(best)) best = { sheet: sheet.number, x, y, width, height };
    }
  }
  return best;
}

function areas(sheets: readonly UsedSheet[]): Areas {
  const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
  const used = sum(sheets.map(areaOf));
  const pieces = sum(
    sheets.flatMap((sheet) => leaves(sheet.tree).map((leaf) => (leaf.kind === 'piece' ? areaOf(leaf) : 0))),
  );
  const offcuts = sum(sheets.flatMap((sheet) => keptOffcuts(sheet).map(areaOf)));
  return { used, pieces, offcuts, waste: Math.max(0, used - pieces - offcuts) };
}
