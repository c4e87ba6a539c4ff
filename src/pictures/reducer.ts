import type { Box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { Pixels, Rows } from './model.ts';

/** Light of an sRGB value (IEC 61966-2-1), 0 to 1. */
const light = (value: number): number => {
  const v = value / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};

const STEPS = 65535;
const LIGHT = Float64Array.from({ length: 256 }, (_, value) => light(value) * STEPS);
let byLight: Uint8Array | undefined;

/** The nearest sRGB value by its light, 0 to 65535. */
function valuesByLight(): Uint8Array {
  if (byLight !== undefined) return byLight;
  byLight = new Uint8Array(STEPS + 1);
  let from = 0;
  for (let value = 0; value < 256; value++) {
    const to = value === 255 ? STEPS + 1 : Math.ceil((LIGHT[value]! + LIGHT[value + 1]!) / 2);
    byLight.fill(value, from, to);
    from = to;
  }
  return byLight;
}

/**
 * Makes a smaller picture of the rows that it is given, from the top: every pixel is the mean of what it covers, in linear
 * light, so that fine hatching keeps its tone. Holds no more than two rows of sums beside the result. `crop` lies within
 * the source; `size` is nowhere larger than it.
 */
export class Reducer implements Rows {
  readonly from: number;
  readonly to: number;
  readonly #crop: Box;
  readonly #size: Size;
  readonly #rgb: Uint8Array;
  /** For each source column that counts: the first result column that it falls into, and its share of that and of the next. */
  readonly #columns: Int32Array;
  readonly #shares: Float64Array;
  readonly #firstColumn: number;
  readonly #row: Float64Array;
  #sums: Float64Array;
  #next: Float64Array;
  #out = 0;
  /** True where no pixel is to be mixed with another. */
  readonly #asIs: boolean;

  constructor(source: Size, crop: Box, size: Size) {
    this.#crop = crop;
    this.#size = size;
    this.from = Math.max(0, Math.floor(crop.y + 1e-9));
    this.to = Math.min(source.height, Math.ceil(crop.y + crop.height - 1e-9));
    this.#rgb = new Uint8Array(size.width * size.height * 3);
    this.#asIs = crop.x % 1 === 0 && crop.y % 1 === 0 && crop.width === size.width && crop.height === size.height;
    if (this.#asIs) this.#out = size.height;
    this.#row = new Float64Array(size.width * 3);
    this.#sums = new Float64Array(size.width * 3);
    this.#next = new Float64Array(size.width * 3);
    this.#firstColumn = Math.max(0, Math.floor(crop.x + 1e-9));
    const last = Math.min(source.width, Math.ceil(crop.x + crop.width - 1e-9));
    const count = last - this.#firstColumn;
    this.#columns = new Int32Array(count);
    this.#shares = new Float64Array(count * 2);
    for (let i = 0; i < count; i++) {
      const [at, own, rest] = shares(this.#firstColumn + i, crop.x, crop.width, size.width);
      this.#columns[i] = at * 3;
      this.#shares[2 * i] = own;
      this.#shares[2 * i + 1] = rest;
    }
  }

  take(y: number, rgb: Uint8Array): void {
    if (y < this.from || y >= this.to) return;
    if (this.#asIs) {
      const from = this.#crop.x * 3;
      const long = this.#size.width * 3;
      this.#rgb.set(rgb.subarray(from, from + long), (y - this.#crop.y) * long);
      return;
    }
    const [at, own, rest] = shares(y, this.#crop.y, this.#crop.height, this.#size.height);
    while (this.#out < at) this.#flush();
    this.#reduce(rgb);
    const row = this.#row;
    const sums = this.#sums;
    for (let i = 0; i < row.length; i++) sums[i]! += row[i]! * own;
    if (rest === 0) return;
    const next = this.#next;
    for (let i = 0; i < row.length; i++) next[i]! += row[i]! * rest;
  }

  /** After the last row. */
  finish(): Pixels {
    while (this.#out < this.#size.height) this.#flush();
    return { ...this.#size, rgb: this.#rgb };
  }

  #reduce(rgb: Uint8Array): void {
    const row = this.#row;
    row.fill(0);
    let from = this.#firstColumn * 3;
    for (let i = 0; i < this.#columns.length; i++, from += 3) {
      const at = this.#columns[i]!;
      const own = this.#shares[2 * i]!;
      const r = LIGHT[rgb[from]!]!;
      const g = LIGHT[rgb[from + 1]!]!;
      const b = LIGHT[rgb[from + 2]!]!;
      row[at]! += r * own;
      row[at + 1]! += g * own;
      row[at + 2]! += b * own;
      const rest = this.#shares[2 * i + 1]!;
      if (rest === 0) continue;
      row[at + 3]! += r * rest;
      row[at + 4]! += g * rest;
      row[at + 5]! += b * rest;
    }
  }

  #flush(): void {
    const values = valuesByLight();
    const at = this.#out * this.#size.width * 3;
    const sums = this.#sums;
    for (let i = 0; i < sums.length; i++) this.#rgb[at + i] = values[Math.min(STEPS, Math.round(sums[i]!))]!;
    this.#sums = this.#next;
    this.#next = sums.fill(0);
    this.#out++;
  }
}

/** Into which of `count` equal parts of a stretch the cell `i` … `i + 1` falls, and its shares of that part and of the next. */
function shares(i: number, start: number, extent: number, count: number): readonly [number, number, number] {
  const scale = count / extent;
  const from = Math.max(0, (i - start) * scale);
  const to = Math.min(count, (i + 1 - start) * scale);
  const at = Math.min(count - 1, Math.floor(from + 1e-9));
  const own = Math.min(to, at + 1) - from;
  const rest = to - (at + 1);
  return [at, own, rest > 1e-9 && at + 1 < count ? rest : 0];
}
