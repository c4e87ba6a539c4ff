import { ZIGZAG } from './jpeg-blocks.ts';
import { type CodeBook, codeBook } from './jpeg-codes.ts';
import type { Pixels, PreparedPicture } from './model.ts';

/** Steps for luminance and for colour at half of the best quality (T.81, tables K.1 and K.2), in natural order. */
const LUMINANCE = [
  16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56, 14, 17, 22, 29, 51,
  87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92, 49, 64, 78, 87, 103, 121, 120, 101,
  72, 92, 95, 98, 112, 100, 103, 99,
];
const FINE_COLOUR = [17, 18, 24, 47, 18, 21, 26, 66, 24, 26, 56, 99, 47, 66, 99, 99];
const COLOUR = Array.from({ length: 64 }, (_, i) =>
  i < 32 && i % 8 < 4 ? FINE_COLOUR[Math.floor(i / 8) * 4 + (i % 8)]! : 99,
);
/** So fine that a print shows no trace of it. */
const COARSENESS = 0.2;

const steps = (table: readonly number[]): Uint8Array =>
  Uint8Array.from(table, (step) => Math.max(1, Math.round(step * COARSENESS)));

/** Baseline JPEG (T.81; JFIF, T.871): every colour at full size, code tables made for this picture. The same pixels, the same bytes. */
export function writeJpeg(pixels: Pixels): PreparedPicture {
  const { width, height } = pixels;
  const planes = planesOf(pixels);
  const tables = planes.length === 1 ? [steps(LUMINANCE)] : [steps(LUMINANCE), steps(COLOUR)];
  const blocks = planes.map((plane, i) => quantized(plane, pixels, tables[Math.min(i, 1)]!));
  const coded = blocks.map(symbolsOf);
  const books = tables.map((_, table) => counted(coded.filter((__, i) => Math.min(i, 1) === table)));

  const out = new Out();
  out.bytes(0xff, 0xd8);
  out.segment(0xe0, [...'JFIF\0'].map((c) => c.charCodeAt(0)).concat(1, 1, 0, 0, 1, 0, 1, 0, 0));
  tables.forEach((table, id) => {
    out.segment(0xdb, [id, ...Array.from(ZIGZAG, (place) => table[place]!)]);
  });
  const components = planes.flatMap((_, i) => [i + 1, 0x11, Math.min(i, 1)]);
  out.segment(0xc0, [8, height >> 8, height & 255, width >> 8, width & 255, planes.length, ...components]);
  books.forEach(({ dc, ac }, id) => {
    out.segment(0xc4, [id, ...dc.counts, ...dc.values]);
    out.segment(0xc4, [16 + id, ...ac.counts, ...ac.values]);
  });
  const selectors = planes.flatMap((_, i) => [i + 1, Math.min(i, 1) * 17]);
  out.segment(0xda, [planes.length, ...selectors, 0, 63, 0]);
  const next = planes.map(() => 0);
  for (let block = 0; block < coded[0]!.ends.length; block++) {
    for (let i = 0; i < coded.length; i++) {
      const { symbols, ends } = coded[i]!;
      const { dc, ac } = books[Math.min(i, 1)]!;
      let book = dc;
      for (let at = next[i]!; at < ends[block]!; at++) {
        const entry = symbols[at]!;
        const symbol = entry >>> 16;
        out.bits(book.codes[symbol]!, book.lengths[symbol]!);
        out.bits(entry & 0xffff, symbol & 15);
        book = ac;
      }
      next[i] = ends[block]!;
    }
  }
  out.finish();
  return { width, height, channels: planes.length === 1 ? 1 : 3, jpeg: out.result() };
}

/** Luminance alone where the picture is grey, else with two planes of colour; around 0. */
function planesOf({ rgb }: Pixels): Float32Array[] {
  const count = rgb.length / 3;
  let grey = true;
  for (let i = 0; grey && i < rgb.length; i += 3) grey = rgb[i] === rgb[i + 1] && rgb[i] === rgb[i + 2];
  const y = new Float32Array(count);
  if (grey) {
    for (let i = 0; i < count; i++) y[i] = rgb[3 * i]! - 128;
    return [y];
  }
  const [cb, cr] = [new Float32Array(count), new Float32Array(count)];
  for (let i = 0, from = 0; i < count; i++, from += 3) {
    const r = rgb[from]!;
    const b = rgb[from + 2]!;
    const luminance = 0.299 * r + 0.587 * rgb[from + 1]! + 0.114 * b;
    y[i] = luminance - 128;
    cb[i] = (b - luminance) / 1.772;
    cr[i] = (r - luminance) / 1.402;
  }
  return [y, cb, cr];
}

/** What the fast transform leaves to be divided by, along each direction: 1 and √2·cos(kπ/16), and 8 for both. */
const LEFT = Array.from({ length: 8 }, (_, k) => (k === 0 ? 1 : Math.SQRT2 * Math.cos((k * Math.PI) / 16)));

/** Coefficients in the order of the zigzag, block after block; the last row and column go on past the picture's edge. */
function quantized(plane: Float32Array, { width, height }: Pixels, table: Uint8Array): Int16Array {
  const [wide, high] = [Math.ceil(width / 8), Math.ceil(height / 8)];
  const out = new Int16Array(wide * high * 64);
  const shares = Float64Array.from(ZIGZAG, (place) => 1 / (8 * table[place]! * LEFT[place >> 3]! * LEFT[place & 7]!));
  const block = new Float64Array(64);
  let at = 0;
  for (let row = 0; row < high; row++) {
    for (let column = 0; column < wide; column++, at += 64) {
      for (let y = 0; y < 8; y++) {
        const line = Math.min(height - 1, row * 8 + y) * width;
        const x0 = column * 8;
        if (x0 + 8 <= width) for (let x = 0; x < 8; x++) block[y * 8 + x] = plane[line + x0 + x]!;
        else for (let x = 0; x < 8; x++) block[y * 8 + x] = plane[line + Math.min(width - 1, x0 + x)]!;
      }
      for (let y = 0; y < 64; y += 8) transform(block, y, 1);
      for (let x = 0; x < 8; x++) transform(block, x, 8);
      for (let k = 0; k < 64; k++) out[at + k] = Math.round(block[ZIGZAG[k]!]! * shares[k]!);
    }
  }
  return out;
}

const [HALF, Q1, Q2, Q3] = [
  Math.SQRT1_2,
  Math.sin(Math.PI / 8),
  Math.SQRT2 * Math.sin(Math.PI / 8),
  Math.SQRT2 * Math.cos(Math.PI / 8),
];

/** Eight values in place, scaled by `LEFT` (Y. Arai, T. Agui, M. Nakajima, A fast DCT-SQ scheme for images, 1988). */
function transform(v: Float64Array, at: number, step: number): void {
  const i1 = at + step;
  const i2 = i1 + step;
  const i3 = i2 + step;
  const i4 = i3 + step;
  const i5 = i4 + step;
  const i6 = i5 + step;
  const i7 = i6 + step;
  const s07 = v[at]! + v[i7]!;
  const d07 = v[at]! - v[i7]!;
  const s16 = v[i1]! + v[i6]!;
  const d16 = v[i1]! - v[i6]!;
  const s25 = v[i2]! + v[i5]!;
  const d25 = v[i2]! - v[i5]!;
  const s34 = v[i3]! + v[i4]!;
  const d34 = v[i3]! - v[i4]!;
  const even = s07 - s34;
  v[at] = s07 + s34 + (s16 + s25);
  v[i4] = s07 + s34 - (s16 + s25);
  const middle = (s16 - s25 + even) * HALF;
  v[i2] = even + middle;
  v[i6] = even - middle;
  const a = d34 + d25;
  const b = (d25 + d16) * HALF;
  const c = d16 + d07;
  const shared = (a - c) * Q1;
  const low = Q2 * a + shared;
  const high = Q3 * c + shared;
  const p = d07 + b;
  const q = d07 - b;
  v[i5] = q + low;
  v[i3] = q - low;
  v[i1] = p + high;
  v[i7] = p - high;
}

/** How blocks are coded (F.1.2): symbol × 65536 + its bits, the first of each block for its mean; where each block ends. */
interface Coded {
  readonly symbols: Uint32Array;
  readonly ends: Uint32Array;
}

const sizeOf = (value: number): number => 32 - Math.clz32(value < 0 ? -value : value);

function symbolsOf(blocks: Int16Array): Coded {
  const symbols = new Uint32Array(blocks.length + blocks.length / 64);
  const ends = new Uint32Array(blocks.length / 64);
  let count = 0;
  let before = 0;
  for (let at = 0, block = 0; at < blocks.length; at += 64, block++) {
    const step = blocks[at]! - before;
    before = blocks[at]!;
    const wide = sizeOf(step);
    symbols[count++] = (wide << 16) | (step < 0 ? step + (1 << wide) - 1 : step);
    let end = 63;
    while (end > 0 && blocks[at + end] === 0) end--;
    let zeros = 0;
    for (let k = 1; k <= end; k++) {
      const value = blocks[at + k]!;
      if (value === 0) {
        zeros++;
        continue;
      }
      for (; zeros > 15; zeros -= 16) symbols[count++] = 0xf00000;
      const size = sizeOf(value);
      symbols[count++] = (zeros << 20) | (size << 16) | (value < 0 ? value + (1 << size) - 1 : value);
      zeros = 0;
    }
    if (end < 63) symbols[count++] = 0;
    ends[block] = count;
  }
  return { symbols, ends };
}

function counted(components: readonly Coded[]): { readonly dc: CodeBook; readonly ac: CodeBook } {
  const [dc, ac] = [new Array<number>(256).fill(0), new Array<number>(256).fill(0)];
  for (const { symbols, ends } of components) {
    let at = 0;
    for (const end of ends) {
      dc[symbols[at++]! >>> 16]!++;
      for (; at < end; at++) ac[symbols[at]! >>> 16]!++;
    }
  }
  return { dc: codeBook(dc), ac: codeBook(ac) };
}

/** Bytes and, in a scan, bits: a byte of ones is followed by one of zeros. */
class Out {
  #bytes = new Uint8Array(1 << 16);
  #length = 0;
  #buffer = 0;
  #count = 0;

  bytes(...values: readonly number[]): void {
    for (const value of values) this.#put(value);
  }

  segment(marker: number, body: readonly number[]): void {
    const length = body.length + 2;
    this.bytes(0xff, marker, length >> 8, length & 255, ...body);
  }

  bits(value: number, size: number): void {
    this.#buffer = (this.#buffer << size) | value;
    this.#count += size;
    while (this.#count >= 8) {
      this.#count -= 8;
      const byte = (this.#buffer >>> this.#count) & 255;
      this.#put(byte);
      if (byte === 255) this.#put(0);
    }
    this.#buffer &= (1 << this.#count) - 1;
  }

  finish(): void {
    if (this.#count > 0) this.bits((1 << (8 - this.#count)) - 1, 8 - this.#count);
    this.bytes(0xff, 0xd9);
  }

  result(): Uint8Array {
    return this.#bytes.slice(0, this.#length);
  }

  #put(byte: number): void {
    if (this.#length === this.#bytes.length) {
      const larger = new Uint8Array(this.#length * 2);
      larger.set(this.#bytes);
      this.#bytes = larger;
    }
    this.#bytes[this.#length++] = byte;
  }
}
