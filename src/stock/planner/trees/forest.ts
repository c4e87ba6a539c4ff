import type { Instance } from '../instance.ts';
import { grown, Leftovers } from './leftovers.ts';
import { CUT_X, CUT_Y, LEFTOVER, NONE, Nodes, PIECE } from './nodes.ts';

/**
 * The cut trees of all opened sheets, flat, so that a whole state is saved by copying arrays.
 *
 * Invariants: a cut has two or more children, none of them a cut in its own direction and at most one a leftover;
 * their extents along the cut add up to the cut's own, the other extent is the cut's. So every state can be cut from
 * edge to edge. The order of children is free: positions are given out only when the plan is written.
 */
export class Forest {
  readonly nodes = new Nodes();
  readonly leftovers = new Leftovers();

  sheets = 0;
  root = new Int32Array(16);
  stock = new Int32Array(16);
  /** 1 for a sheet that got a piece since the forest was last copied from another. */
  dirty = new Uint8Array(16);
  /** Opened sheets by stock. */
  readonly opened: Int32Array;

  /** Copies of each type that lie nowhere yet. */
  readonly missing: Int32Array;
  missingCount = 0;
  missingArea = 0;

  constructor(readonly instance: Instance) {
    this.missing = Int32Array.from(instance.types, (type) => type.demand);
    this.opened = new Int32Array(instance.stocks.length);
    for (const type of instance.types) {
      this.missingCount += type.demand;
      this.missingArea += type.demand * type.width * type.height;
    }
  }

  /** Becomes equal to `other`, a forest of the same instance. */
  copy(other: Forest): void {
    this.copyTrees(other);
    this.missing.set(other.missing);
    this.missingCount = other.missingCount;
    this.missingArea = other.missingArea;
  }

  /** Becomes equal to `other`, in which no blank is missing, and whose instance has the same types and some more, or some less. */
  copyFull(other: Forest): void {
    this.copyTrees(other);
    this.missing.fill(0);
    this.missingCount = 0;
    this.missingArea = 0;
  }

  private copyTrees(other: Forest): void {
    const { sheets } = other;
    this.nodes.copy(other.nodes);
    this.leftovers.copy(other.leftovers);
    if (this.root.length < sheets) this.growSheets(other.root.length);
    this.root.set(other.root.subarray(0, sheets));
    this.stock.set(other.stock.subarray(0, sheets));
    this.dirty.fill(0, 0, sheets);
    this.sheets = sheets;
    this.opened.set(other.opened);
  }

  /** Asks for so many copies of each type and no others; nothing may lie anywhere. */
  askOnly(counts: Int32Array): void {
    this.missing.fill(0);
    this.missingCount = 0;
    this.missingArea = 0;
    counts.forEach((count, type) => {
      for (let i = 0; i < count; i++) this.ask(type);
    });
  }

  /** Asks for one more copy of a type. */
  ask(type: number): void {
    const { width, height } = this.instance.types[type]!;
    this.missing[type]!++;
    this.missingCount++;
    this.missingArea += width * height;
  }

  /** Opens a sheet and returns its root, a leftover. */
  open(stock: number): number {
    if (this.sheets === this.root.length) this.growSheets(2 * this.sheets);
    const { width, height } = this.instance.stocks[stock]!;
    const node = this.nodes.take(-1 - this.sheets, width, height);
    this.root[this.sheets] = node;
    this.stock[this.sheets] = stock;
    this.dirty[this.sheets] = 0;
    this.opened[stock]!++;
    this.sheets++;
    this.addLeftover(node);
    return node;
  }

  /** Takes a sheet away; what lay on it is missing again. The last sheet takes its number. */
  close(sheet: number): void {
    const root = this.root[sheet]!;
    this.clear(root);
    this.dropLeftover(root);
    this.nodes.release(root);
    this.opened[this.stock[sheet]!]!--;
    const last = --this.sheets;
    if (sheet === last) return;
    this.root[sheet] = this.root[last]!;
    this.stock[sheet] = this.stock[last]!;
    this.dirty[sheet] = this.dirty[last]!;
    this.nodes.parent[this.root[sheet]!] = -1 - sheet;
  }

  /** Closes what is bought and empty; true where there was such a sheet. */
  closeEmpty(): boolean {
    const before = this.sheets;
    for (let sheet = before - 1; sheet >= 0; sheet--) {
      if (this.isEmpty(sheet) && !this.instance.stocks[this.stock[sheet]!]!.free) this.close(sheet);
    }
    return this.sheets < before;
  }

  isEmpty(sheet: number): boolean {
    return this.nodes.kind[this.root[sheet]!] === LEFTOVER;
  }

  /** Lays one copy of `type`, `width` × `height` as it lies, in a leftover that holds it. `yFirst`: the first cut divides along y. */
  place(leftover: number, type: number, width: number, height: number, yFirst: boolean): void {
    this.dirty[this.nodes.sheetOf(leftover)] = 1;
    let at = leftover;
    if (yFirst) at = this.splitY(at, height);
    at = this.splitX(at, width);
    if (!yFirst) at = this.splitY(at, height);
    this.dropLeftover(at);
    this.nodes.kind[at] = PIECE;
    this.nodes.data[at] = type;
    this.missing[type]!--;
    this.missingCount--;
    this.missingArea -= width * height;
  }

  /** Turns a node, with all below it, into leftover, and joins it with the leftover beside it, upwards. */
  remove(node: number): void {
    this.clear(node);
    const { kind, parent, first, next, width, height } = this.nodes;
    let at = node;
    for (;;) {
      const over = parent[at]!;
      if (over < 0) return;
      let other = first[over]!;
      while (other !== NONE && (other === at || kind[other] !== LEFTOVER)) other = next[other]!;
      if (other === NONE) return;
      this.dropLeftover(other);
      if (kind[over] === CUT_X) width[at]! += width[other]!;
      else height[at]! += height[other]!;
      this.nodes.unlink(other);
      this.nodes.release(other);
      this.dropLeftover(at);
      if (next[first[over]!] !== NONE) {
        this.addLeftover(at);
        return;
      }
      this.nodes.release(at);
      kind[over] = LEFTOVER;
      first[over] = NONE;
      this.addLeftover(over);
      at = over;
    }
  }

  /** Cuts a leftover in two; `size` is less than its extent along that direction. Returns the part of that size and the rest. */
  divide(leftover: number, along: 'x' | 'y', size: number): [part: number, rest: number] {
    const part = along === 'x' ? this.splitX(leftover, size) : this.splitY(leftover, size);
    return [part, this.nodes.next[part]!];
  }

  /** True for a piece or a cut: what can be turned into leftover. */
  holdsPieces(node: number): boolean {
    return this.nodes.kind[node]! > LEFTOVER;
  }

  /** Makes the node a leftover of its own size, its pieces missing again. */
  private clear(node: number): void {
    const { kind, first } = this.nodes;
    if (kind[node] === LEFTOVER) return;
    this.lift(node);
    kind[node] = LEFTOVER;
    first[node] = NONE;
    this.addLeftover(node);
  }

  private lift(node: number): void {
    const { kind, data, width, height, first, next } = this.nodes;
    if (kind[node] === LEFTOVER) {
      this.dropLeftover(node);
    } else if (kind[node] === PIECE) {
      this.missing[data[node]!]!++;
      this.missingCount++;
      this.missingArea += width[node]! * height[node]!;
    } else {
      let child = first[node]!;
      while (child !== NONE) {
        const after = next[child]!;
        this.lift(child);
        this.nodes.release(child);
        child = after;
      }
    }
  }

  private splitX(leftover: number, width: number): number {
    const { nodes } = this;
    if (nodes.width[leftover] === width) return leftover;
    const rest = this.under(leftover, CUT_X);
    const part = nodes.before(rest, width, nodes.height[rest]!);
    nodes.width[rest]! -= width;
    this.addLeftover(rest);
    this.addLeftover(part);
    return part;
  }

  private splitY(leftover: number, height: number): number {
    const { nodes } = this;
    if (nodes.height[leftover] === height) return leftover;
    const rest = this.under(leftover, CUT_Y);
    const part = nodes.before(rest, nodes.width[rest]!, height);
    nodes.height[rest]! -= height;
    this.addLeftover(rest);
    this.addLeftover(part);
    return part;
  }

  /** Makes sure that a leftover lies under a cut of the given kind; returns it or its only child, no longer listed. */
  private under(leftover: number, kind: number): number {
    const { nodes } = this;
    this.dropLeftover(leftover);
    const over = nodes.parent[leftover]!;
    if (over >= 0 && nodes.kind[over] === kind) return leftover;
    const rest = nodes.take(leftover, nodes.width[leftover]!, nodes.height[leftover]!);
    nodes.kind[leftover] = kind;
    nodes.first[leftover] = rest;
    return rest;
  }

  private addLeftover(node: number): void {
    this.nodes.data[node] = this.leftovers.add(node, this.nodes.width[node]!, this.nodes.height[node]!);
  }

  private dropLeftover(node: number): void {
    const slot = this.nodes.data[node]!;
    const moved = this.leftovers.drop(slot);
    if (moved >= 0) this.nodes.data[moved] = slot;
  }

  private growSheets(length: number): void {
    this.root = grown(this.root, length);
    this.stock = grown(this.stock, length);
    this.dirty = grown(this.dirty, length);
  }
}
