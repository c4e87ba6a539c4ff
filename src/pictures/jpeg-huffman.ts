import { broken } from './png-head.ts';

const FAST = 9;

/** A table of codes (T.81, annex C, from memory): short codes by one look, longer ones length by length. */
export interface Codes {
  /** Code length × 256 + value for the next nine bits; 0 where the code is longer. */
  readonly fast: Uint16Array;
  /** By length: the largest code, and what to add to a code for its place among the values; -1 where there is none. */
  readonly largest: Int32Array;
  readonly offset: Int32Array;
  readonly values: Uint8Array;
}

export function makeCodes(counts: Uint8Array, values: Uint8Array): Codes {
  const fast = new Uint16Array(1 << FAST);
  const largest = new Int32Array(17).fill(-1);
  const offset = new Int32Array(17);
  let code = 0;
  let index = 0;
  for (let length = 1; length <= 16; length++) {
    const count = counts[length - 1]!;
    if (code + count > 1 << length) throw broken('a table of its codes is wrong');
    offset[length] = index - code;
    for (let i = 0; i < count; i++, code++, index++) {
      if (length > FAST) continue;
      const first = code << (FAST - length);
      fast.fill((length << 8) | values[index]!, first, first + (1 << (FAST - length)));
    }
    if (count > 0) largest[length] = code - 1;
    code <<= 1;
  }
  return { fast, largest, offset, values };
}

/** The bits of a scan. Behind its end they are zeros, which are counted: a reader has to ask `isBeyond`. */
export class Bits {
  readonly #bytes: Uint8Array;
  #at: number;
  #buffer = 0;
  #count = 0;
  #beyond = 0;

  constructor(bytes: Uint8Array, at: number) {
    this.#bytes = bytes;
    this.#at = at;
  }

  /** True once more was read than the scan holds. */
  get isBeyond(): boolean {
    return this.#beyond * 8 > this.#count;
  }

  /** Where the next marker begins. */
  get marker(): number {
    let at = this.#at;
    while (
      at < this.#bytes.length &&
      !(this.#bytes[at] === 0xff && this.#bytes[at + 1] !== 0 && this.#bytes[at + 1] !== 0xff)
    )
      at++;
    return at;
  }

  /** Goes on behind the restart marker that comes next; false where another marker does. */
  restart(): boolean {
    const at = this.marker;
    const marker = this.#bytes[at + 1];
    if (marker === undefined || marker < 0xd0 || marker > 0xd7) return false;
    this.#at = at + 2;
    this.#buffer = this.#count = this.#beyond = 0;
    return true;
  }

  #fill(): void {
    while (this.#count <= 24) {
      let byte = this.#bytes[this.#at];
      if (byte === 0xff) {
        if (this.#bytes[this.#at + 1] === 0) this.#at += 2;
        else byte = undefined;
      } else if (byte !== undefined) this.#at++;
      if (byte === undefined) {
        this.#beyond++;
        byte = 0;
      }
      this.#buffer = (this.#buffer << 8) | byte;
      this.#count += 8;
    }
  }

  bit(): number {
    if (this.#count < 1) this.#fill();
    this.#count--;
    return (this.#buffer >>> this.#count) & 1;
  }

  /** Up to 16 bits as a number. */
  bits(count: number): number {
    if (count === 0) return 0;
    if (this.#count < count) this.#fill();
    this.#count -= count;
    return (this.#buffer >>> this.#count) & ((1 << count) - 1);
  }

  /** A value of that many bits, small ones standing for negatives (F.2.2.1). */
  extended(count: number): number {
    if (count === 0) return 0;
    const value = this.bits(count);
    return value < 1 << (count - 1) ? value - (1 << count) + 1 : value;
  }

  code(codes: Codes): number {
    if (this.#count < 16) this.#fill();
    const found = codes.fast[(this.#buffer >>> (this.#count - FAST)) & ((1 << FAST) - 1)]!;
    if (found !== 0) {
      this.#count -= found >> 8;
      return found & 0xff;
    }
    for (let length = FAST + 1; length <= 16; length++) {
      const code = (this.#buffer >>> (this.#count - length)) & ((1 << length) - 1);
      if (code <= codes.largest[length]!) {
        this.#count -= length;
        return codes.values[code + codes.offset[length]!]!;
      }
    }
    throw broken('a code of it is not in its tables');
  }
}
