import type { Rows } from './model.ts';
import { Unreadable } from './model.ts';
import { colours } from './png-colours.ts';
import { broken, type PngHead } from './png-head.ts';

const CHANNELS: Readonly<Record<PngHead['colour'], number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
/** An interlaced picture has to be whole before its first row is known. */
const MOST_INTERLACED = 128 * 1024 * 1024;

interface Pass {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

const WHOLE: readonly Pass[] = [{ x: 0, y: 0, dx: 1, dy: 1 }];
/** Adam7, 8.1 of the standard. */
const INTERLACED: readonly Pass[] = [
  { x: 0, y: 0, dx: 8, dy: 8 },
  { x: 4, y: 0, dx: 8, dy: 8 },
  { x: 0, y: 4, dx: 4, dy: 8 },
  { x: 2, y: 0, dx: 4, dy: 4 },
  { x: 0, y: 2, dx: 2, dy: 4 },
  { x: 1, y: 0, dx: 2, dy: 2 },
  { x: 0, y: 1, dx: 1, dy: 2 },
];

/** Inflates, undoes the filters and hands on row by row: however large the picture is, two rows of it are held. */
export async function readPng(head: PngHead, rows: Rows): Promise<void> {
  const { width, height, depth, interlaced } = head;
  const bits = CHANNELS[head.colour] * depth;
  const toRgb = colours(head);
  const whole = interlaced ? new Uint8Array(checked(width * height * 3)) : new Uint8Array(width * 3);
  const passes = (interlaced ? INTERLACED : WHOLE).filter(({ x, y }) => x < width && y < height);

  let pass = 0;
  let row = 0;
  let count = 0;
  let line = new Uint8Array();
  let before = new Uint8Array();
  let filled = 0;
  const begin = (): void => {
    const { x, dx } = passes[pass]!;
    count = Math.ceil((width - x) / dx);
    const bytes = Math.ceil((count * bits) / 8) + 1;
    line = new Uint8Array(bytes);
    before = new Uint8Array(bytes);
    [row, filled] = [0, 0];
  };
  const finish = (): void => {
    unfilter(line, before, Math.max(1, bits >> 3));
    const { x, y, dx, dy } = passes[pass]!;
    const at = y + row * dy;
    if (!interlaced) {
      if (at >= rows.from && at < rows.to) {
        toRgb(line, count, whole, 0, 3);
        rows.take(at, whole);
      }
    } else toRgb(line, count, whole, (at * width + x) * 3, dx * 3);
    [before, line] = [line, before];
    filled = 0;
    row++;
    if (y + row * dy >= height) {
      pass++;
      if (pass < passes.length) begin();
    }
  };
  begin();
  for await (const part of inflated(head.data)) {
    let from = 0;
    while (from < part.length && pass < passes.length) {
      const take = Math.min(part.length - from, line.length - filled);
      line.set(part.subarray(from, from + take), filled);
      filled += take;
      from += take;
      if (filled === line.length) finish();
    }
    if (pass === passes.length) break;
  }
  if (pass < passes.length) throw broken('its pixels end too soon');
  if (interlaced) {
    for (let y = rows.from; y < rows.to; y++) rows.take(y, whole.subarray(y * width * 3, (y + 1) * width * 3));
  }
}

function checked(bytes: number): number {
  if (bytes <= MOST_INTERLACED) return bytes;
  throw new Unreadable(
    'picture-large',
    'the picture is interlaced, and too large to be read so',
    'save it without interlacing, or smaller',
  );
}

/** The platform's own inflating, part by part. */
async function* inflated(data: readonly Uint8Array[]): AsyncGenerator<Uint8Array> {
  const stream = new DecompressionStream('deflate');
  const writer = stream.writable.getWriter();
  const written = (async () => {
    for (const part of data) await writer.write(part as Uint8Array<ArrayBuffer>);
    await writer.close();
  })();
  // What goes wrong there shows on the reading side too.
  written.catch(() => undefined);
  const reader = stream.readable.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } catch {
    throw broken('its pixels cannot be unpacked');
  } finally {
    await reader.cancel().catch(() => undefined);
  }
}

/** 9.2 of the standard; the first byte of a row names its filter. */
function unfilter(line: Uint8Array, before: Uint8Array, step: number): void {
  const kind = line[0]!;
  const n = line.length;
  if (kind === 1) {
    for (let i = 1 + step; i < n; i++) line[i] = line[i]! + line[i - step]!;
  } else if (kind === 2) {
    for (let i = 1; i < n; i++) line[i] = line[i]! + before[i]!;
  } else if (kind === 3) {
    for (let i = 1; i < n; i++) line[i] = line[i]! + ((before[i]! + (i > step ? line[i - step]! : 0)) >> 1);
  } else if (kind === 4) {
    for (let i = 1; i < n; i++) {
      const a = i > step ? line[i - step]! : 0;
      const b = before[i]!;
      const c = i > step ? before[i - step]! : 0;
      const p = a + b - c;
      const [pa, pb, pc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)];
      line[i] = line[i]! + (pa <= pb && pa <= pc ? a : pb <= pc ? b : c);
    }
  } else if (kind !== 0) throw broken(`a row has the filter ${kind}`);
}
