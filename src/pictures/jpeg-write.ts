import { ZIGZAG } from './jpeg-blocks.ts';
import { type CodeBook, codeBook } from './jpeg-codes.ts';
import { type Blocks, quantized } from './jpeg-transform.ts';
import type { Pixels, PreparedPicture } from './model.ts';

/** Steps for luminance and for colour at half of the best quality (T.81, tables K.1 and K.2, from memory), in natural order. */
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
  const tallies = tables.map((): Tally => ({ dc: new Float64Array(256), ac: new Float64Array(256) }));
  const coded = blocks.map((each, i) => symbolsOf(each, tallies[Math.min(i, 1)]!));
  const books = tallies.map(({ dc, ac }): Books => ({ dc: codeBook([...dc]), ac: codeBook([...ac]) }));

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
      scanned(out, symbols, next[i]!, ends[block]!, books[Math.min(i, 1)]!);
      next[i] = ends[block]!;
    }
  }
  out.finish();
  return { width, height, channels: planes.length === 1 ? 1 : 3, jpeg: out.result() };
}

/** The symbols of one block, the first by the code for means. */
function scanned(out: Out, symbols: Uint32Array, from: number, to: number, { dc, ac }: Books): void {
  let book = dc;
  for (let at = from; at < to; at++) {
    const entry = symbols[at]!;
    const symbol = entry >>> 16;
    out.bits(book.codes[symbol]!, book.lengths[symbol]!);
    if ((symbol & 15) > 0) out.bits(entry & 0xffff, symbol & 15);
    book = ac;
  }
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

/** How blocks are coded (F.1.2): symbol × 65536 + its bits, the first of each block for its mean; where each block ends. */
interface Coded {
  readonly symbols: Uint32Array;
  readonly ends: Uint32Array;
}

const sizeOf = (value: number): number => 32 - Math.clz32(value < 0 ? -value : value);

/** How often each symbol is used. */
interface Tally {
  readonly dc: Float64Array;
  readonly ac: Float64Array;
}

/** The symbols of a plane; `tally` counts them. */
function symbolsOf({ values, last }: Blocks, tally: Tally): Coded {
  const symbols = new Uint32Array(values.length + last.length);
  const ends = new Uint32Array(last.length);
  let count = 0;
  let before = 0;
  for (let block = 0; block < last.length; block++) {
    const mean = values[64 * block]!;
    const entry = entryOf(0, mean - before);
    symbols[count++] = entry;
    tally.dc[entry >>> 16]!++;
    before = mean;
    count = coefficients(values, 64 * block, last[block]!, symbols, count, tally.ac);
    ends[block] = count;
  }
  return { symbols, ends };
}

function entryOf(zeros: number, value: number): number {
  const size = sizeOf(value);
  return (zeros << 20) | (size << 16) | (value < 0 ? value + (1 << size) - 1 : value);
}

/** All of a block but its mean, from the place `count` of the symbols on; the place behind them. */
function coefficients(
  values: Int16Array,
  at: number,
  end: number,
  symbols: Uint32Array,
  count: number,
  tally: Float64Array,
): number {
  let to = count;
  let zeros = 0;
  for (let k = 1; k <= end; k++) {
    const value = values[at + k]!;
    if (value === 0) {
      zeros++;
      continue;
    }
    for (; zeros > 15; zeros -= 16) {
      symbols[to++] = 0xf00000;
      tally[0xf0]!++;
    }
    const entry = entryOf(zeros, value);
    symbols[to++] = entry;
    tally[entry >>> 16]!++;
    zeros = 0;
  }
  if (end < 63) {
    symbols[to++] = 0;
    tally[0]!++;
  }
  return to;
}

interface Books {
  readonly dc: CodeBook;
  readonly ac: CodeBook;
}

/** Bytes and, in a scan, bits: a byte of ones is followed by one of zeros. */
class Out {
  #bytes = new Uint8Array(1 << 18);
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

  /** At most 16 bits. */
  bits(value: number, size: number): void {
    const buffer = (this.#buffer << size) | value;
    let count = this.#count + size;
    if (this.#length + 8 > this.#bytes.length) this.#grow();
    while (count >= 8) {
      count -= 8;
      const byte = (buffer >>> count) & 255;
      this.#bytes[this.#length++] = byte;
      if (byte === 255) this.#bytes[this.#length++] = 0;
    }
    this.#buffer = buffer & ((1 << count) - 1);
    this.#count = count;
  }

  finish(): void {
    if (this.#count > 0) this.bits((1 << (8 - this.#count)) - 1, 8 - this.#count);
    this.bytes(0xff, 0xd9);
  }

  result(): Uint8Array {
    return this.#bytes.slice(0, this.#length);
  }

  #put(byte: number): void {
    if (this.#length === this.#bytes.length) this.#grow();
    this.#bytes[this.#length++] = byte;
  }

  #grow(): void {
    const larger = new Uint8Array(this.#bytes.length * 2);
    larger.set(this.#bytes);
    this.#bytes = larger;
  }
}
