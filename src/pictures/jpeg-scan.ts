import { ZIGZAG } from './jpeg-blocks.ts';
import { Bits, type Codes } from './jpeg-huffman.ts';
import { broken } from './png-head.ts';

/** A component while its scans are read. */
export interface Component {
  readonly id: number;
  readonly h: number;
  readonly v: number;
  readonly quantization: number;
  /** Blocks across and down that hold picture, and across as they are stored: whole units. */
  readonly wide: number;
  readonly high: number;
  readonly stored: number;
  /** Of the whole component, where the scans have to be put together; 64 a block. */
  coefficients: Int16Array | undefined;
}

export interface ScanPart {
  readonly component: Component;
  readonly dc: Codes | undefined;
  readonly ac: Codes | undefined;
}

export interface Scan {
  readonly parts: readonly ScanPart[];
  /** Band of coefficients and its bits (G.1.1.1); 0 to 63, all bits, unless progressive. */
  readonly first: number;
  readonly last: number;
  readonly high: number;
  readonly low: number;
  readonly progressive: boolean;
}

interface State {
  /** Last DC value by component. */
  readonly dc: number[];
  /** Blocks left of a run of ends. */
  run: number;
}

const missing = (): Error => broken('a table of its codes is missing');

/** Reads one block into `block`, in natural order. */
export function readBlock(
  bits: Bits,
  part: ScanPart,
  scan: Scan,
  state: State,
  index: number,
  block: Int16Array,
  at: number,
): void {
  const { dc, ac } = part;
  if (!scan.progressive) {
    if (dc === undefined || ac === undefined) throw missing();
    state.dc[index]! += bits.extended(bits.code(dc));
    block[at] = state.dc[index]!;
    readBand(bits, ac, 1, 63, 0, block, at);
    return;
  }
  if (scan.first === 0) {
    if (scan.high === 0) {
      if (dc === undefined) throw missing();
      state.dc[index]! += bits.extended(bits.code(dc));
      block[at] = state.dc[index]! << scan.low;
    } else if (bits.bit() === 1) block[at]! |= 1 << scan.low;
    return;
  }
  if (ac === undefined) throw missing();
  if (scan.high === 0) {
    if (state.run > 0) state.run--;
    else state.run = readBand(bits, ac, scan.first, scan.last, scan.low, block, at);
  } else refineBand(bits, ac, scan, state, block, at);
}

/** How many further blocks have ended as well. */
function readBand(
  bits: Bits,
  ac: Codes,
  first: number,
  last: number,
  low: number,
  block: Int16Array,
  at: number,
): number {
  for (let k = first; k <= last; k++) {
    const code = bits.code(ac);
    const [zeros, size] = [code >> 4, code & 15];
    if (size === 0) {
      if (zeros < 15) return zeros === 0 ? 0 : (1 << zeros) - 1 + bits.bits(zeros);
      k += 15;
      continue;
    }
    k += zeros;
    if (k > 63) throw broken('a block of it is too long');
    block[at + ZIGZAG[k]!] = bits.extended(size) << low;
  }
  return 0;
}

/** One more bit for what is there, and what appears only now (G.1.2.3). */
function refineBand(bits: Bits, ac: Codes, scan: Scan, state: State, block: Int16Array, at: number): void {
  const plus = 1 << scan.low;
  let k = scan.first;
  const refine = (place: number): void => {
    const value = block[place]!;
    if (bits.bit() === 1 && (value & plus) === 0) block[place] = value + (value >= 0 ? plus : -plus);
  };
  if (state.run === 0) {
    for (; k <= scan.last; k++) {
      const code = bits.code(ac);
      let zeros = code >> 4;
      const size = code & 15;
      let value = 0;
      if (size === 0) {
        if (zeros < 15) {
          state.run = (1 << zeros) + bits.bits(zeros);
          break;
        }
      } else value = bits.bit() === 1 ? plus : -plus;
      for (; k <= scan.last; k++) {
        const place = at + ZIGZAG[k]!;
        if (block[place] !== 0) refine(place);
        else if (--zeros < 0) break;
      }
      if (value !== 0 && k <= scan.last) block[at + ZIGZAG[k]!] = value;
    }
  }
  if (state.run === 0) return;
  for (; k <= scan.last; k++) {
    const place = at + ZIGZAG[k]!;
    if (block[place] !== 0) refine(place);
  }
  state.run--;
}

/** Counts units and goes on behind restart markers; it refuses a scan that holds less than it should. */
export class ScanReader {
  readonly bits: Bits;
  readonly state: State;
  readonly #interval: number;
  #left: number;

  constructor(bytes: Uint8Array, at: number, parts: number, interval: number) {
    this.bits = new Bits(bytes, at);
    this.state = { dc: new Array<number>(parts).fill(0), run: 0 };
    this.#interval = interval;
    this.#left = interval;
  }

  /** Before each unit. */
  next(): void {
    if (this.bits.isBeyond) throw broken('its pixels end too soon');
    if (this.#interval === 0) return;
    if (this.#left === 0) {
      if (!this.bits.restart()) throw broken('its pixels end too soon');
      this.state.dc.fill(0);
      this.state.run = 0;
      this.#left = this.#interval;
    }
    this.#left--;
  }

  finish(): number {
    if (this.bits.isBeyond) throw broken('its pixels end too soon');
    return this.bits.marker;
  }
}
