import { type Box, box } from '../../geometry/box.ts';
import type { BySide } from '../../geometry/sides.ts';
import { useful } from './kept.ts';
import type { CutNode, StockPiece } from './model.ts';
import type { Supply, Task } from './task.ts';
import { transposedNode, transposedSides } from './transpose.ts';
import { endsFor } from './trees/edges.ts';
import type { Forest } from './trees/forest.ts';
import { CUT_X, LEFTOVER, PIECE } from './trees/nodes.ts';
import { NO_TRIM } from './trim.ts';

/** One copy of a piece; copies count from 1. */
export interface Copy {
  readonly piece: StockPiece;
  readonly copy: number;
}

/** What is laid out: a sheet of the forest, its full size and trim as the input has them. */
export interface SheetToLay {
  readonly sheet: number;
  readonly width: number;
  readonly height: number;
  readonly trim: BySide<number>;
  /** True where untrimmed sides are factory edges. */
  readonly factory: boolean;
}

/** A fallout, like an offcut, has no factory edge. */
export function sheetToLay(supply: Supply, sheet: number): SheetToLay {
  if (supply.kind === 'fallout')
    return { sheet, width: supply.size.width, height: supply.size.height, trim: NO_TRIM, factory: false };
  const { width, height } = supply.sheet;
  return { sheet, width, height, trim: supply.trim, factory: supply.kind === 'sheet' };
}

const NO_NODE = -1;
/** Lengths of the plan are compared with the longest cut; far below any real difference. */
const NOISE = 1e-6;

/** A part of the sheet with its node: the box without trim, what is still to be trimmed, factory edges. */
interface Region {
  readonly node: number;
  readonly inner: Box;
  readonly trim: BySide<number>;
  readonly edges: BySide<boolean>;
}

/** The cut tree of a sheet in the input's lengths and directions. `hand` gives the next copy of a type. */
export function layOutSheet(
  task: Task,
  forest: Forest,
  laid: SheetToLay,
  longestCut: number,
  hand: (type: number) => Copy,
): CutNode {
  const tree = new Layout(task, forest, longestCut, hand).sheet(laid);
  return task.transposed ? transposedNode(tree) : tree;
}

class Layout {
  /** How many parts of the sheet have a size, across their cut. */
  private readonly uses = new Map<number, number>();

  constructor(
    private readonly task: Task,
    private readonly forest: Forest,
    private readonly longestCut: number,
    private readonly hand: (type: number) => Copy,
  ) {}

  sheet({ sheet, width, height, trim: given, factory }: SheetToLay): CutNode {
    const { transposed } = this.task;
    const trim = transposed ? transposedSides(given) : given;
    const [w, h] = transposed ? [height, width] : [width, height];
    const inner = box(trim.left, trim.top, w - trim.left - trim.right, h - trim.top - trim.bottom);
    const edge = (side: number): boolean => factory && side === 0;
    const edges = {
      top: edge(trim.top),
      right: edge(trim.right),
      bottom: edge(trim.bottom),
      left: edge(trim.left),
    };
    this.countUses(this.forest.root[sheet]!);
    return this.region({ node: this.forest.root[sheet]!, inner, trim, edges });
  }

  private countUses(node: number): void {
    const { nodes } = this.forest;
    const extents = nodes.kind[node] === CUT_X ? nodes.width : nodes.height;
    for (const child of nodes.children(node)) {
      if (nodes.kind[child] !== LEFTOVER) this.uses.set(extents[child]!, (this.uses.get(extents[child]!) ?? 0) + 1);
      this.countUses(child);
    }
  }

  /** Trims as soon as a cut is short enough, then cuts. */
  private region(region: Region): CutNode {
    const { inner, trim } = region;
    const outer = this.outer(region);
    if (trim.left + trim.right > 0 && outer.height <= this.longestCut + NOISE) {
      const rest = this.region({ ...region, trim: { ...trim, left: 0, right: 0 } });
      const strip = (x: number, width: number): CutNode => ({ kind: 'trim', ...box(x, outer.y, width, outer.height) });
      const [left, right] = [this.strip(trim.left), this.strip(trim.right)];
      const parts = [
        ...(trim.left > 0 ? [strip(outer.x, left)] : []),
        rest,
        ...(trim.right > 0 ? [strip(inner.x + inner.width + trim.right - right, right)] : []),
      ];
      return { kind: 'cuts', along: 'x', ...outer, parts };
    }
    if (trim.top + trim.bottom > 0 && outer.width <= this.longestCut + NOISE) {
      const rest = this.region({ ...region, trim: { ...trim, top: 0, bottom: 0 } });
      const strip = (y: number, height: number): CutNode => ({ kind: 'trim', ...box(outer.x, y, outer.width, height) });
      const [top, bottom] = [this.strip(trim.top), this.strip(trim.bottom)];
      const parts = [
        ...(trim.top > 0 ? [strip(outer.y, top)] : []),
        rest,
        ...(trim.bottom > 0 ? [strip(inner.y + inner.height + trim.bottom - bottom, bottom)] : []),
      ];
      return { kind: 'cuts', along: 'y', ...outer, parts };
    }
    const kind = this.forest.nodes.kind[region.node]!;
    if (kind === PIECE) return this.piece(region);
    if (kind === LEFTOVER) return this.offcut(region);
    return this.cuts(region);
  }

  /** Trim includes the kerf of its cut. */
  private strip(trim: number): number {
    return Math.max(0, trim - this.length(this.task.instance.kerf));
  }

  private outer({ inner, trim }: Region): Box {
    return box(
      inner.x - trim.left,
      inner.y - trim.top,
      inner.width + trim.left + trim.right,
      inner.height + trim.top + trim.bottom,
    );
  }

  private length(units: number): number {
    return this.task.grid.length(units);
  }

  private piece({ node, inner, edges }: Region): CutNode {
    const { grid, instance, transposed } = this.task;
    const { nodes } = this.forest;
    const { piece, copy } = this.hand(nodes.data[node]!);
    const [width, height] = transposed ? [piece.height, piece.width] : [piece.width, piece.height];
    const lies =
      nodes.width[node] === grid.up(width) + instance.kerf && nodes.height[node] === grid.up(height) + instance.kerf;
    const [w, h] = lies ? [width, height] : [height, width];
    // A size that the grid has rounded up is a little less than its node: then the factory edge must be the flush one.
    const x = edges.right && !edges.left ? inner.x + inner.width - w : inner.x;
    const y = edges.bottom && !edges.top ? inner.y + inner.height - h : inner.y;
    const size = box(x, y, w, h);
    return { kind: 'piece', ...size, piece: piece.id, copy, turned: !lies };
  }

  private offcut(region: Region): CutNode {
    const { kerf } = this.task.instance;
    const { width, height } = this.forest.nodes;
    const keep = useful(width[region.node]! - kerf, height[region.node]! - kerf, this.task.least);
    const outer = this.outer(region);
    const sawn = outer.width <= 0 || outer.height <= 0;
    return { kind: 'offcut', ...outer, keep: keep && !sawn };
  }

  private cuts(region: Region): CutNode {
    const { nodes } = this.forest;
    const { node, inner, trim, edges } = region;
    const alongX = nodes.kind[node] === CUT_X;
    const extents = alongX ? nodes.width : nodes.height;
    const { kerf } = this.task.instance;
    const children = this.inOrder(node, edges);
    let done = 0;
    const parts = children.map((child, i) => {
      const start = this.length(done);
      done += extents[child]!;
      const last = i === children.length - 1;
      const end = last ? (alongX ? inner.width : inner.height) : this.length(done - kerf);
      const size = Math.max(0, end - start);
      return this.region({
        node: child,
        inner: alongX
          ? box(Math.min(inner.x + start, inner.x + inner.width), inner.y, size, inner.height)
          : box(inner.x, Math.min(inner.y + start, inner.y + inner.height), inner.width, size),
        trim: between(trim, NO_TRIM, alongX, i === 0, last),
        edges: between(edges, NO_EDGES, alongX, i === 0, last),
      });
    });
    return { kind: 'cuts', along: alongX ? 'x' : 'y', ...this.outer(region), parts };
  }

  /**
   * Large parts first, so that equal settings follow each other. The last part needs no setting: that is leftover, or else
   * the part whose size is set most seldom on this sheet. Blanks that need an edge come at their ends.
   */
  private inOrder(node: number, edges: BySide<boolean>): number[] {
    const { nodes } = this.forest;
    const alongX = nodes.kind[node] === CUT_X;
    const extents = alongX ? nodes.width : nodes.height;
    const [x, y] = [Number(edges.left) + Number(edges.right), Number(edges.top) + Number(edges.bottom)];
    const ends = endsFor(this.forest, node, x, y, NO_NODE) ?? [];
    const others = nodes.children(node).filter((child) => !ends.includes(child));
    others.sort((a, b) => extents[b]! - extents[a]!);
    const times = (child: number): number =>
      nodes.kind[child] === LEFTOVER ? 0 : (this.uses.get(extents[child]!) ?? 0);
    const last = others.reduce((best, child) => (times(child) < times(best) ? child : best), others[0] ?? NO_NODE);
    const ordered = [...others.filter((child) => child !== last), ...(last === NO_NODE ? [] : [last])];
    const [first, second] = ends;
    if (first === undefined) return ordered;
    if (second !== undefined) return [first, ...ordered, second];
    return (alongX ? edges.left : edges.top) ? [first, ...ordered] : [...ordered.reverse(), first];
  }
}

const NO_EDGES: BySide<boolean> = { top: false, right: false, bottom: false, left: false };

/** What a part keeps of its parent's sides: those beside the cuts, and at the ends the outer one. */
function between<T>(sides: BySide<T>, none: BySide<T>, alongX: boolean, first: boolean, last: boolean): BySide<T> {
  const start = first ? sides : none;
  const end = last ? sides : none;
  return alongX
    ? { top: sides.top, bottom: sides.bottom, left: start.left, right: end.right }
    : { left: sides.left, right: sides.right, top: start.top, bottom: end.bottom };
}
