import type { Box } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { Side } from '../../geometry/sides.ts';
import type { CutNode, CutsNode } from './model.ts';

/** One thing to do at the trimming head. Numbers count from 1. */
export type Instruction = SetStop | TakeBoard | Cut;

/** Sets the stop: what lies between stop and blade is so wide. */
export interface SetStop {
  readonly kind: 'set';
  readonly number: number;
  readonly stop: number;
}

/** Takes a board in hand. `A` is the whole sheet; what is cut again later gets the next letters. */
export interface TakeBoard extends Size {
  readonly kind: 'take';
  readonly number: number;
  readonly board: string;
  /** The edge, by its side on the sheet, that lies against the stop. */
  readonly edge: Side;
  /** True where the board lies a quarter turned from how it lay when it was last cut, or cut off. */
  readonly turn: boolean;
}

export interface Cut {
  readonly kind: 'cut';
  readonly number: number;
  /** Of the cuts alone, from 1. */
  readonly cut: number;
  readonly board: string;
  readonly stop: number;
  /** From edge to edge of the board. */
  readonly length: number;
  /** The side of the cut nearer to the sheet's left or top; the kerf follows. */
  readonly line: { readonly from: Corner; readonly to: Corner };
  /** What the cut parts: towards the sheet's left or top, and the other; undefined where that is sawn away. */
  readonly first: Part | undefined;
  readonly second: Part | undefined;
}

interface Corner {
  readonly x: number;
  readonly y: number;
}

export type Part =
  | (Box & { readonly kind: 'piece'; readonly piece: string; readonly copy: number; readonly turned: boolean })
  | (Box & { readonly kind: 'offcut'; readonly keep: boolean })
  | (Box & { readonly kind: 'trim' })
  | (Box & { readonly kind: 'board'; readonly board: string });

export interface CutSequence {
  readonly instructions: readonly Instruction[];
  readonly cuts: number;
  readonly settings: number;
  readonly turns: number;
}

/** A board in hand that still has to be cut: the parts of its node from `next` on. */
interface InHand {
  readonly name: string;
  readonly node: CutsNode;
  next: number;
  lies: 'x' | 'y';
}

/** Settings this close are one: far below what a stop can be set to. */
const SAME = 1e-6;

/**
 * The cuts of a sheet in an order with few settings of the stop: all boards that are in hand are cut at a setting before
 * it is changed, and the setting that comes next is one that will not be needed again, if there is such.
 */
export function cutSequence(tree: CutNode): CutSequence {
  return new Sequence().run(tree);
}

const extent = (box: Size, along: 'x' | 'y'): number => (along === 'x' ? box.width : box.height);
const place = (box: Box, along: 'x' | 'y'): number => (along === 'x' ? box.x : box.y);

/** What of a node is left once the parts before `next` are off. */
function rest(node: CutsNode, next: number): Box {
  const start = place(node.parts[next]!, node.along);
  const size = place(node, node.along) + extent(node, node.along) - start;
  return node.along === 'x'
    ? { x: start, y: node.y, width: size, height: node.height }
    : { x: node.x, y: start, width: node.width, height: size };
}

/** Trim falls off outside of the stop: there the far edge lies against it. */
const fromFarEdge = (node: CutsNode, next: number): boolean => node.parts[next]!.kind === 'trim';

function stopAt(node: CutsNode, next: number): number {
  return extent(fromFarEdge(node, next) ? rest(node, next + 1) : node.parts[next]!, node.along);
}

function edgeAt(node: CutsNode, next: number): Side {
  if (node.along === 'x') return fromFarEdge(node, next) ? 'right' : 'left';
  return fromFarEdge(node, next) ? 'bottom' : 'top';
}

function stopsBelow(node: CutNode, from = 0): number[] {
  if (node.kind !== 'cuts') return [];
  const own = node.parts.slice(from, -1).map((_, i) => stopAt(node, from + i));
  return [...own, ...node.parts.slice(from).flatMap((part) => stopsBelow(part))];
}

const same = (a: number, b: number): boolean => Math.abs(a - b) <= SAME;

/** How many cuts in a row a board allows at one setting, with all that comes off it. */
function reach(node: CutNode, next: number, stop: number): number {
  if (node.kind !== 'cuts') return 0;
  let [count, at] = [0, next];
  while (at < node.parts.length - 1 && same(stopAt(node, at), stop)) {
    count += 1 + reach(node.parts[at]!, 0, stop);
    at++;
  }
  return at === node.parts.length - 1 ? count + reach(node.parts[at]!, 0, stop) : count;
}

class Sequence {
  private readonly instructions: Instruction[] = [];
  private readonly hand: InHand[] = [];
  private boards = 0;
  private cuts = 0;
  private settings = 0;
  private turns = 0;
  private held: { readonly board: string; readonly edge: Side } | undefined;

  run(tree: CutNode): CutSequence {
    if (tree.kind === 'cuts') this.hand.push({ name: this.nameNext(), node: tree, next: 0, lies: tree.along });
    while (this.hand.length > 0) this.setting(this.nextStop());
    const { instructions, cuts, settings, turns } = this;
    return { instructions, cuts, settings, turns };
  }

  private nextStop(): number {
    const all = this.hand.flatMap(({ node, next }) => stopsBelow(node, next));
    let best = { stop: 0, later: Infinity, now: 0 };
    for (const { node, next } of this.hand) {
      const stop = stopAt(node, next);
      const now = this.hand.reduce((sum, board) => sum + reach(board.node, board.next, stop), 0);
      const later = all.filter((other) => same(other, stop)).length - now;
      if (later < best.later || (later === best.later && now > best.now)) best = { stop, later, now };
    }
    return best.stop;
  }

  private setting(stop: number): void {
    this.settings++;
    this.instructions.push({ kind: 'set', number: this.instructions.length + 1, stop });
    for (let i = 0; i < this.hand.length; ) {
      const board = this.hand[i]!;
      while (board.next < board.node.parts.length - 1 && same(stopAt(board.node, board.next), stop))
        this.cut(board, stop);
      if (board.next === board.node.parts.length - 1) this.hand.splice(i, 1);
      else i++;
    }
  }

  private cut(board: InHand, stop: number): void {
    const { node, name } = board;
    const part = node.parts[board.next]!;
    const whole = rest(node, board.next);
    this.take(board, whole);
    board.next++;
    const last = board.next === node.parts.length - 1;
    const end = place(part, node.along) + extent(part, node.along);
    const line =
      node.along === 'x'
        ? { from: { x: end, y: node.y }, to: { x: end, y: node.y + node.height } }
        : { from: { x: node.x, y: end }, to: { x: node.x + node.width, y: end } };
    this.instructions.push({
      kind: 'cut',
      number: this.instructions.length + 1,
      cut: ++this.cuts,
      board: name,
      stop,
      length: extent(node, node.along === 'x' ? 'y' : 'x'),
      line,
      first: this.part(part, node.along),
      second: last
        ? this.part(node.parts[board.next]!, node.along)
        : { kind: 'board', board: name, ...rest(node, board.next) },
    });
  }

  private take(board: InHand, { width, height }: Size): void {
    const { node, name } = board;
    const edge = edgeAt(node, board.next);
    const turn = board.lies !== node.along;
    board.lies = node.along;
    if (turn) this.turns++;
    if (!turn && this.held?.board === name && this.held.edge === edge) return;
    this.held = { board: name, edge };
    this.instructions.push({
      kind: 'take',
      number: this.instructions.length + 1,
      board: name,
      width,
      height,
      edge,
      turn,
    });
  }

  /** What a cut frees; what has to be cut again goes to the boards in hand. */
  private part(node: CutNode, lies: 'x' | 'y'): Part | undefined {
    const { x, y, width, height } = node;
    if (width <= 0 || height <= 0) return undefined;
    switch (node.kind) {
      case 'piece':
      case 'offcut':
      case 'trim':
        return node;
      case 'cuts': {
        const board = this.nameNext();
        this.hand.push({ name: board, node, next: 0, lies });
        return { kind: 'board', board, x, y, width, height };
      }
    }
  }

  private nameNext(): string {
    let [number, name] = [this.boards++, ''];
    do {
      name = String.fromCharCode(65 + (number % 26)) + name;
      number = Math.floor(number / 26) - 1;
    } while (number >= 0);
    return name;
  }
}
