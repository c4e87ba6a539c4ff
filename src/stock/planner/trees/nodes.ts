import { grown } from './leftovers.ts';

/** What a node is. Children of a `CUT_X` lie side by side along x, those of a `CUT_Y` along y. */
const FREE = 0;
export const LEFTOVER = 1;
export const PIECE = 2;
export const CUT_X = 3;
export const CUT_Y = 4;
export const NONE = -1;

/** The nodes of cut trees in flat arrays: parent, first child, neighbours, size. Freed numbers are used again. */
export class Nodes {
  /** Numbers below this are in use, or free. */
  used = 0;
  private free = NONE;
  kind = new Int32Array(64);
  /** Parent, or −1 − sheet at a root. */
  parent = new Int32Array(64);
  first = new Int32Array(64);
  next = new Int32Array(64);
  previous = new Int32Array(64);
  width = new Int32Array(64);
  height = new Int32Array(64);
  /** Blank type of a piece, slot of a leftover. */
  data = new Int32Array(64);

  copy(other: Nodes): void {
    const { used } = other;
    if (this.kind.length < used) this.grow(other.kind.length);
    this.kind.set(other.kind.subarray(0, used));
    this.parent.set(other.parent.subarray(0, used));
    this.first.set(other.first.subarray(0, used));
    this.next.set(other.next.subarray(0, used));
    this.previous.set(other.previous.subarray(0, used));
    this.width.set(other.width.subarray(0, used));
    this.height.set(other.height.subarray(0, used));
    this.data.set(other.data.subarray(0, used));
    this.used = used;
    this.free = other.free;
  }

  /** A new node without children or neighbours. */
  take(parent: number, width: number, height: number): number {
    let node = this.free;
    if (node !== NONE) {
      this.free = this.first[node]!;
    } else {
      node = this.used++;
      if (node === this.kind.length) this.grow(2 * node);
    }
    this.kind[node] = LEFTOVER;
    this.parent[node] = parent;
    this.first[node] = NONE;
    this.next[node] = NONE;
    this.previous[node] = NONE;
    this.width[node] = width;
    this.height[node] = height;
    return node;
  }

  release(node: number): void {
    this.kind[node] = FREE;
    this.first[node] = this.free;
    this.free = node;
  }

  /** A new sibling just before `rest`. */
  before(rest: number, width: number, height: number): number {
    const over = this.parent[rest]!;
    const part = this.take(over, width, height);
    const ahead = this.previous[rest]!;
    this.next[part] = rest;
    this.previous[part] = ahead;
    this.previous[rest] = part;
    if (ahead === NONE) this.first[over] = part;
    else this.next[ahead] = part;
    return part;
  }

  unlink(node: number): void {
    const [ahead, after] = [this.previous[node]!, this.next[node]!];
    if (ahead === NONE) this.first[this.parent[node]!] = after;
    else this.next[ahead] = after;
    if (after !== NONE) this.previous[after] = ahead;
  }

  /** The sheet that a node lies on. */
  sheetOf(node: number): number {
    let at = node;
    while (at >= 0) at = this.parent[at]!;
    return -1 - at;
  }

  children(node: number): number[] {
    const out: number[] = [];
    for (let child = this.first[node]!; child !== NONE; child = this.next[child]!) out.push(child);
    return out;
  }

  /** Writes the pieces and cuts at and below a node into `out` from `count` on and returns the new count. */
  list(node: number, out: Int32Array, count: number): number {
    const kind = this.kind[node]!;
    if (kind === LEFTOVER) return count;
    out[count] = node;
    let length = count + 1;
    if (kind !== PIECE) {
      for (let child = this.first[node]!; child !== NONE; child = this.next[child]!)
        length = this.list(child, out, length);
    }
    return length;
  }

  /** The first node of that kind and data; there must be one. */
  find(kind: number, data: number): number {
    for (let node = 0; ; node++) if (this.kind[node] === kind && this.data[node] === data) return node;
  }

  /** Area of the pieces at and below a node. */
  filled(node: number): number {
    if (this.kind[node] === PIECE) return this.width[node]! * this.height[node]!;
    let sum = 0;
    for (let child = this.first[node]!; child !== NONE; child = this.next[child]!) sum += this.filled(child);
    return sum;
  }

  /** Adds the pieces at and below a node, by type, to `counts`. */
  count(node: number, counts: Int32Array): void {
    if (this.kind[node] === PIECE) counts[this.data[node]!]!++;
    for (let child = this.first[node]!; child !== NONE; child = this.next[child]!) this.count(child, counts);
  }

  /** Sum of the keys of the types at and below a node: equal for equal pieces, however they lie. */
  hash(node: number, keys: Int32Array): number {
    if (this.kind[node] === PIECE) return keys[this.data[node]!]!;
    let sum = 0;
    for (let child = this.first[node]!; child !== NONE; child = this.next[child]!) {
      sum = (sum + this.hash(child, keys)) | 0;
    }
    return sum;
  }

  private grow(length: number): void {
    this.kind = grown(this.kind, length);
    this.parent = grown(this.parent, length);
    this.first = grown(this.first, length);
    this.next = grown(this.next, length);
    this.previous = grown(this.previous, length);
    this.width = grown(this.width, length);
    this.height = grown(this.height, length);
    this.data = grown(this.data, length);
  }
}
