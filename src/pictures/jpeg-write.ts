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

const BASE = Float64Array.from({ length: 64 }, (_, i) => {
  const [u, x] = [Math.floor(i / 8), i % 8];
  return 0.5 * (u === 0 ? Math.SQRT1_2 : 1) * Math.cos(((2 * x + 1) * u * Math.PI) / 16);
});

/** Baseline JPEG (T.81; JFIF, T.871): every colour at full size, code tables made for this picture. The same pixels, the same bytes. */
export function writeJpeg(pixels: Pixels): PreparedPicture {
  const { width, height } = pixels;
  const planes = planesOf(pixels);
  const tables = planes.length === 1 ? [steps(LUMINANCE)] : [steps(LUMINANCE), steps(COLOUR)];
  const blocks = planes.map((plane, i) => quantized(plane, pixels, tables[Math.min(i, 1)]!));
  const books = tables.map((_, table) => {
    const own = blocks.filter((__, i) => Math.min(i, 1) === table);
    return counted(own);
  });

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
  const last = planes.map(() => 0);
  for (let at = 0; at < blocks[0]!.length; at += 64) {
    blocks.forEach((block, i) => {
      const { dc, ac } = books[Math.min(i, 1)]!;
      symbols(block, at, last[i]!, (isDc, symbol, bits, size) => {
        const book = isDc ? dc : ac;
        out.bits(book.codes[symbol]!, book.lengths[symbol]!);
        out.bits(bits, size);
      });
      last[i] = block[at]!;
    });
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
    const [r, g, b] = [rgb[from]!, rgb[from + 1]!, rgb[from + 2]!];
    const luminance = 0.299 * r + 0.587 * g + 0.114 * b;
    y[i] = luminance - 128;
    cb[i] = (b - luminance) / 1.772;
    cr[i] = (r - luminance) / 1.402;
  }
  return [y, cb, cr];
}

/** Coefficients in the order of the zigzag, block after block; the last row and column go on past the picture's edge. */
function quantized(plane: Float32Array, { width, height }: Pixels, table: Uint8Array): Int16Array {
  const [wide, high] = [Math.ceil(width / 8), Math.ceil(height / 8)];
  const out = new Int16Array(wide * high * 64);
  const block = new Float64Array(64);
  const halfway = new Float64Array(64);
  let at = 0;
  for (let row = 0; row < high; row++) {
    for (let column = 0; column < wide; column++, at += 64) {
      for (let y = 0; y < 8; y++) {
        const line = Math.min(height - 1, row * 8 + y) * width;
        for (let x = 0; x < 8; x++) block[y * 8 + x] = plane[line + Math.min(width - 1, column * 8 + x)]!;
      }
      for (let y = 0; y < 8; y++) {
        for (let u = 0; u < 8; u++) {
          let sum = 0;
          for (let x = 0; x < 8; x++) sum += block[y * 8 + x]! * BASE[u * 8 + x]!;
          halfway[y * 8 + u] = sum;
        }
      }
      for (let k = 0; k < 64; k++) {
        const place = ZIGZAG[k]!;
        const [v, u] = [place >> 3, place & 7];
        let sum = 0;
        for (let y = 0; y < 8; y++) sum += halfway[y * 8 + u]! * BASE[v * 8 + y]!;
        out[at + k] = Math.round(sum / table[place]!);
      }
    }
  }
  return out;
}

type Take = (isDc: boolean, symbol: number, bits: number, size: number) => void;

const sizeOf = (value: number): number => 32 - Math.clz32(Math.abs(value));
const bitsOf = (value: number, size: number): number => (value < 0 ? value + (1 << size) - 1 : value);

/** What a block is coded as (F.1.2). */
function symbols(block: Int16Array, at: number, before: number, take: Take): void {
  const step = block[at]! - before;
  const size = sizeOf(step);
  take(true, size, bitsOf(step, size), size);
  let zeros = 0;
  let end = 63;
  while (end > 0 && block[at + end] === 0) end--;
  for (let k = 1; k <= end; k++) {
    const value = block[at + k]!;
    if (value === 0) {
      zeros++;
      continue;
    }
    for (; zeros > 15; zeros -= 16) take(false, 0xf0, 0, 0);
    const bits = sizeOf(value);
    take(false, (zeros << 4) | bits, bitsOf(value, bits), bits);
    zeros = 0;
  }
  if (end < 63) take(false, 0, 0, 0);
}

function counted(components: readonly Int16Array[]): { readonly dc: CodeBook; readonly ac: CodeBook } {
  const [dc, ac] = [new Array<number>(256).fill(0), new Array<number>(256).fill(0)];
  for (const blocks of components) {
    let before = 0;
    for (let at = 0; at < blocks.length; at += 64) {
      symbols(blocks, at, before, (isDc, symbol) => {
        (isDc ? dc : ac)[symbol]!++;
      });
      before = blocks[at]!;
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
