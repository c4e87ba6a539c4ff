import type { Box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { Shop } from '../shop/shop.ts';
import type { Blank } from './blanks.ts';
import type { BoardPlan } from './board-plans.ts';
import type { CutNode, OffcutNode, PieceNode, UsedSheet } from './planner/model.ts';
import { type CutSequence, cutSequence } from './planner/sequence.ts';

/** Sheets of a day that are cut alike: one page shows them all. */
export interface Layout extends Size {
  /** Counted over all boards, in the order of cutting. */
  readonly numbers: readonly number[];
  readonly from: LayoutOrigin;
  readonly tree: CutNode;
  readonly sequence: CutSequence;
  /** In the order in which they lie. */
  readonly pieces: readonly LaidPiece[];
  /** What is kept. */
  readonly offcuts: readonly KeptOffcut[];
}

export type LayoutOrigin =
  | { readonly kind: 'sheet'; readonly id: string }
  /** From the shelf, by what is written on it. */
  | { readonly kind: 'offcut'; readonly id: string }
  /** Drops out of an opening of that piece, which must be cut first. */
  | { readonly kind: 'fallout'; readonly piece: string; readonly blank: Blank };

export interface LaidPiece extends Box {
  /** `a`, `b` …, the same for all copies of a blank on a sheet. */
  readonly key: string;
  readonly piece: string;
  readonly blank: Blank;
  readonly turned: boolean;
}

export interface KeptOffcut extends Box {
  /** What is written on it, one for each of the layout's sheets. */
  readonly marks: readonly string[];
}

export interface BoardLayouts {
  readonly board: BoardPlan;
  readonly layouts: readonly Layout[];
}

/**
 * The sheets of all boards, those that are cut alike together, with numbers that count on from board to board. What drops
 * out of mats comes when all else of the day is cut, the largest first: by then the last under mat is cut of the piece
 * that it comes from, whose blanks are larger than it.
 */
export function layOutDay(boards: readonly BoardPlan[], shop: Shop): readonly BoardLayouts[] {
  const marks = new Marks(shop);
  const groups = boards.flatMap((board, b) => alike(board.plan.sheets).map((sheets) => ({ b, board, sheets })));
  const drops = ({ sheets }: (typeof groups)[number]): boolean => sheets[0]!.origin.kind === 'fallout';
  const area = ({ sheets }: (typeof groups)[number]): number => sheets[0]!.width * sheets[0]!.height;
  const inOrder = [
    ...groups.filter((group) => !drops(group)),
    ...groups.filter(drops).sort((a, b) => area(b) - area(a)),
  ];
  let number = 1;
  const laid = inOrder.map(({ b, board, sheets }) => {
    const numbers = sheets.map(() => number++);
    return { b, layout: layoutOf(sheets[0]!, numbers, board, marks) };
  });
  return boards.map((board, b) => ({
    board,
    layouts: laid.filter((each) => each.b === b).map(({ layout }) => layout),
  }));
}

/** Copies of a piece are alike; all else that is seen of a sheet counts. */
function signature(sheet: UsedSheet): string {
  const { width, height, id, tree } = sheet;
  const shown = { width, height, id, kind: sheet.origin.kind, tree };
  return JSON.stringify(shown, (key, value: unknown) => (key === 'copy' ? undefined : value));
}

/** What drops out of an opening waits for its mat: such sheets stay where they come, and only neighbours are one. */
function alike(sheets: readonly UsedSheet[]): readonly (readonly UsedSheet[])[] {
  const groups: { readonly signature: string; readonly sheets: UsedSheet[] }[] = [];
  for (const sheet of sheets) {
    const own = signature(sheet);
    const known = sheet.origin.kind === 'fallout' ? groups.slice(-1) : groups;
    const same = known.find((group) => group.signature === own);
    if (same === undefined) groups.push({ signature: own, sheets: [sheet] });
    else same.sheets.push(sheet);
  }
  return groups.map((group) => group.sheets);
}

function layoutOf(sheet: UsedSheet, numbers: readonly number[], board: BoardPlan, marks: Marks): Layout {
  const leaves = leavesOf(sheet.tree);
  const keys = new Map<string, string>();
  const keyOf = (piece: string): string => {
    const key = keys.get(piece) ?? letters(keys.size);
    keys.set(piece, key);
    return key;
  };
  const pieces = leaves
    .filter((leaf): leaf is PieceNode => leaf.kind === 'piece')
    .map(({ piece, turned, x, y, width, height }): LaidPiece => {
      return { key: keyOf(piece), piece, blank: board.blanks.get(piece)!, turned, x, y, width, height };
    });
  const offcuts = leaves
    .filter((leaf): leaf is OffcutNode => leaf.kind === 'offcut' && leaf.keep)
    .map(({ x, y, width, height }) => ({ x, y, width, height, marks: numbers.map(() => marks.next()) }));
  return {
    numbers,
    from: originOf(sheet, board),
    width: sheet.width,
    height: sheet.height,
    tree: sheet.tree,
    sequence: cutSequence(sheet.tree),
    pieces,
    offcuts,
  };
}

function originOf({ id, origin }: UsedSheet, { blanks }: BoardPlan): LayoutOrigin {
  switch (origin.kind) {
    case 'sheet':
    case 'offcut':
      return { kind: origin.kind, id };
    case 'fallout':
      return { kind: 'fallout', piece: origin.piece, blank: blanks.get(origin.piece)! };
    default: {
      const never: never = origin;
      return never;
    }
  }
}

export function leavesOf(node: CutNode): readonly Exclude<CutNode, { readonly kind: 'cuts' }>[] {
  return node.kind === 'cuts' ? node.parts.flatMap(leavesOf) : [node];
}

/** `a` … `z`, `aa` … */
function letters(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : `${letters(Math.floor(index / 26) - 1)}${last}`;
}

/** What is written on new offcuts: S1, S2 … on from the highest on the shelf. */
class Marks {
  private last: number;

  constructor({ shelf }: Shop) {
    const numbers = shelf.map(({ id }) => Number(/^S(\d{1,9})$/.exec(id)?.[1] ?? 0));
    this.last = Math.max(0, ...numbers);
  }

  next(): string {
    this.last++;
    return `S${this.last}`;
  }
}
