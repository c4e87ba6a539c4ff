/** An array of at least `length`, with what the old one held. */
export function grown<A extends Int32Array | Float64Array | Uint8Array>(old: A, length: number): A {
  const wider = new (old.constructor as new (n: number) => A)(length);
  wider.set(old);
  return wider;
}

/** What a leftover is worth: area^1.25, by square roots, which are exact to the last bit on every machine. */
export function worth(width: number, height: number): number {
  const area = width * height;
  return area * Math.sqrt(Math.sqrt(area));
}

/** The leftovers of all sheets, dense, in no order that means anything; the search looks through them again and again. */
export class Leftovers {
  count = 0;
  /** Sum of what they are worth. */
  value = 0;
  node = new Int32Array(64);
  width = new Int32Array(64);
  height = new Int32Array(64);
  worth = new Float64Array(64);

  copy(other: Leftovers): void {
    const { count } = other;
    if (this.node.length < count) this.grow(other.node.length);
    this.node.set(other.node.subarray(0, count));
    this.width.set(other.width.subarray(0, count));
    this.height.set(other.height.subarray(0, count));
    this.worth.set(other.worth.subarray(0, count));
    this.count = count;
    this.value = other.value;
  }

  /** Returns the slot. */
  add(node: number, width: number, height: number): number {
    const slot = this.count++;
    if (slot === this.node.length) this.grow(2 * slot);
    const value = worth(width, height);
    this.node[slot] = node;
    this.width[slot] = width;
    this.height[slot] = height;
    this.worth[slot] = value;
    this.value += value;
    return slot;
  }

  /** Takes one out; returns the node that moved into its slot, or −1. */
  drop(slot: number): number {
    this.value -= this.worth[slot]!;
    const last = --this.count;
    if (slot === last) return -1;
    const moved = this.node[last]!;
    this.node[slot] = moved;
    this.width[slot] = this.width[last]!;
    this.height[slot] = this.height[last]!;
    this.worth[slot] = this.worth[last]!;
    return moved;
  }

  private grow(length: number): void {
    this.node = grown(this.node, length);
    this.width = grown(this.width, length);
    this.height = grown(this.height, length);
    this.worth = grown(this.worth, length);
  }
}
