import { drawBlock, type Side, ZIGZAG } from './jpeg-blocks.ts';
import { rowToRgb } from './jpeg-colours.ts';
import { type JpegHead, MARKERS, type Segment, segmentAt } from './jpeg-head.ts';
import { type Codes, makeCodes } from './jpeg-huffman.ts';
import { type Component, readBlock, type Scan, type ScanPart, ScanReader } from './jpeg-scan.ts';
import { type Rows, Unreadable } from './model.ts';
import { broken } from './png-head.ts';

/** A picture whose scans have to be put together is held whole, as coefficients: this many bytes at most. */
const MOST_STORED = 384 * 1024 * 1024;
/** A sound file has a dozen scans; each is work for the whole picture. */
const MOST_SCANS = 100;

export const reducedSize = (head: JpegHead, side: Side) => ({
  width: Math.ceil((head.width * side) / 8),
  height: Math.ceil((head.height * side) / 8),
});

/**
 * Decodes at `side` eighths of the picture's size and hands on row by row. A picture in one scan (nearly all are) is held
 * one row of units at a time, however large it is; others as coefficients, up to a limit.
 */
export function readJpeg(bytes: Uint8Array, head: JpegHead, side: Side, rows: Rows): void {
  new JpegReader(bytes, head, side, rows).read();
}

class JpegReader {
  readonly #bytes: Uint8Array;
  readonly #head: JpegHead;
  readonly #side: Side;
  readonly #rows: Rows;
  readonly #components: readonly Component[];
  readonly #steps: (Uint16Array | undefined)[] = [];
  readonly #dc: (Codes | undefined)[] = [];
  readonly #ac: (Codes | undefined)[] = [];
  readonly #hMost: number;
  readonly #vMost: number;
  readonly #unitsWide: number;
  readonly #unitsHigh: number;
  /** Of one row of units, by component. */
  readonly #planes: readonly Uint8ClampedArray[];
  readonly #rgb: Uint8ClampedArray;
  #interval = 0;

  constructor(bytes: Uint8Array, head: JpegHead, side: Side, rows: Rows) {
    this.#bytes = bytes;
    this.#head = head;
    this.#side = side;
    this.#rows = rows;
    this.#hMost = Math.max(...head.components.map(({ h }) => h));
    this.#vMost = Math.max(...head.components.map(({ v }) => v));
    this.#unitsWide = Math.ceil(head.width / (8 * this.#hMost));
    this.#unitsHigh = Math.ceil(head.height / (8 * this.#vMost));
    this.#components = head.components.map(({ id, h, v, quantization }) => ({
      id,
      h,
      v,
      quantization,
      wide: Math.ceil((head.width * h) / (8 * this.#hMost)),
      high: Math.ceil((head.height * v) / (8 * this.#vMost)),
      stored: this.#unitsWide * h,
      coefficients: undefined,
    }));
    this.#planes = this.#components.map(({ stored, v }) => new Uint8ClampedArray(stored * side * v * side));
    this.#rgb = new Uint8ClampedArray(reducedSize(head, side).width * 3);
    for (const segment of head.tables) this.#table(segment);
  }

  read(): void {
    let at = this.#head.rest;
    for (let scans = 0; ; ) {
      const segment = segmentAt(this.#bytes, at);
      at = segment.next;
      if (segment.marker === MARKERS.EOI) break;
      if (segment.marker !== MARKERS.SOS) {
        this.#table(segment);
        continue;
      }
      if (++scans > MOST_SCANS) throw broken('it has too many scans');
      const scan = this.#scan(segment.body);
      const alone = !this.#head.progressive && scan.parts.length === this.#components.length;
      if (alone) {
        this.#streamed(scan, at);
        return;
      }
      at = this.#stored(scan, at);
      // A file that ends behind its last scan has all of its pixels.
      if (at >= this.#bytes.length) break;
    }
    if (this.#components.some(({ coefficients }) => coefficients === undefined)) throw broken('it has no pixels');
    for (let row = 0; row < this.#unitsHigh; row++) this.#drawStored(row);
  }

  #table({ marker, body }: Segment): void {
    if (marker === MARKERS.DRI) this.#interval = (body[0]! << 8) | body[1]!;
    else if (marker === MARKERS.DQT) this.#quantization(body);
    else if (marker === MARKERS.DHT) this.#codes(body);
  }

  #quantization(body: Uint8Array): void {
    let at = 0;
    while (at < body.length) {
      const [wide, id] = [body[at]! >> 4, body[at]! & 15];
      at++;
      if (wide > 1 || id > 3 || at + 64 * (wide + 1) > body.length) throw broken('a table of its steps is wrong');
      const steps = new Uint16Array(64);
      for (let k = 0; k < 64; k++, at += wide + 1) {
        steps[ZIGZAG[k]!] = wide === 1 ? (body[at]! << 8) | body[at + 1]! : body[at]!;
      }
      this.#steps[id] = steps;
    }
  }

  #codes(body: Uint8Array): void {
    let at = 0;
    while (at < body.length) {
      const [kind, id] = [body[at]! >> 4, body[at]! & 15];
      const counts = body.subarray(at + 1, at + 17);
      const total = counts.reduce((sum, count) => sum + count, 0);
      at += 17;
      if (kind > 1 || id > 3 || counts.length < 16 || at + total > body.length) {
        throw broken('a table of its codes is wrong');
      }
      (kind === 0 ? this.#dc : this.#ac)[id] = makeCodes(counts, body.slice(at, at + total));
      at += total;
    }
  }

  #scan(body: Uint8Array): Scan {
    const count = body[0]!;
    if (!(count >= 1 && count <= 4) || body.length < 4 + 2 * count) throw broken('a scan of it is wrong');
    const parts = Array.from({ length: count }, (_, i): ScanPart => {
      const component = this.#components.find(({ id }) => id === body[1 + 2 * i]);
      const tables = body[2 + 2 * i]!;
      if (component === undefined) throw broken('a scan of it is wrong');
      return { component, dc: this.#dc[tables >> 4], ac: this.#ac[tables & 15] };
    });
    const [first, last, bits] = [body[1 + 2 * count]!, body[2 + 2 * count]!, body[3 + 2 * count]!];
    const { progressive } = this.#head;
    if (progressive && (last > 63 || first > last || (bits & 15) > 13 || (first > 0 && count > 1))) {
      throw broken('a scan of it is wrong');
    }
    return { parts, first, last, high: bits >> 4, low: bits & 15, progressive };
  }

  /** Everything in one scan: row of units by row of units, drawn at once. */
  #streamed(scan: Scan, at: number): void {
    const reader = new ScanReader(this.#bytes, at, scan.parts.length, this.#interval);
    const block = new Int16Array(64);
    const steps = scan.parts.map(({ component }) => this.#stepsOf(component));
    const single = scan.parts.length === 1;
    const scaled = new Int32Array(64);
    const side = this.#side;
    const draw = (index: number, column: number, row: number): void => {
      block.fill(0);
      const part = scan.parts[index]!;
      readBlock(reader.bits, part, scan, reader.state, index, block, 0);
      multiply(block, 0, steps[index]!, scaled);
      const plane = this.#planes[this.#components.indexOf(part.component)]!;
      const stride = part.component.stored * side;
      drawBlock(scaled, side, plane, row * side * stride + column * side, stride);
    };
    for (let unit = 0; unit < this.#unitsHigh; unit++) {
      if (single) {
        // One component alone has units of one block, whatever its sampling says (A.2.2).
        const { component } = scan.parts[0]!;
        for (let row = 0; row < component.v && unit * component.v + row < component.high; row++) {
          for (let column = 0; column < component.wide; column++) {
            reader.next();
            draw(0, column, row);
          }
        }
      } else {
        for (let column = 0; column < this.#unitsWide; column++) {
          reader.next();
          scan.parts.forEach(({ component: { h, v } }, index) => {
            for (let y = 0; y < v; y++) for (let x = 0; x < h; x++) draw(index, column * h + x, y);
          });
        }
      }
      if (unit === this.#unitsHigh - 1) reader.finish();
      this.#handOn(unit);
    }
  }

  /** One scan of several: its bits go into the coefficients. Gives where the next segment begins. */
  #stored(scan: Scan, at: number): number {
    const bytes = this.#components.reduce((sum, { stored, v }) => sum + stored * v * this.#unitsHigh * 128, 0);
    if (bytes > MOST_STORED) {
      throw new Unreadable(
        'picture-large',
        `the picture is a progressive JPEG of ${this.#head.width} × ${this.#head.height} pixels, too large to be read`,
        'save it as a JPEG that is not progressive, or smaller',
      );
    }
    for (const component of this.#components) {
      component.coefficients ??= new Int16Array(component.stored * component.v * this.#unitsHigh * 64);
    }
    const reader = new ScanReader(this.#bytes, at, scan.parts.length, this.#interval);
    const read = (index: number, column: number, row: number): void => {
      const part = scan.parts[index]!;
      const { coefficients, stored } = part.component;
      readBlock(reader.bits, part, scan, reader.state, index, coefficients!, (row * stored + column) * 64);
    };
    if (scan.parts.length === 1) {
      const { wide, high } = scan.parts[0]!.component;
      for (let row = 0; row < high; row++) {
        for (let column = 0; column < wide; column++) {
          reader.next();
          read(0, column, row);
        }
      }
    } else {
      for (let unit = 0; unit < this.#unitsHigh * this.#unitsWide; unit++) {
        reader.next();
        const [column, row] = [unit % this.#unitsWide, Math.floor(unit / this.#unitsWide)];
        scan.parts.forEach(({ component: { h, v } }, index) => {
          for (let y = 0; y < v; y++) for (let x = 0; x < h; x++) read(index, column * h + x, row * v + y);
        });
      }
    }
    return reader.finish();
  }

  #drawStored(unit: number): void {
    const scaled = new Int32Array(64);
    const side = this.#side;
    this.#components.forEach((component, index) => {
      const steps = this.#stepsOf(component);
      const stride = component.stored * side;
      for (let row = 0; row < component.v; row++) {
        for (let column = 0; column < component.stored; column++) {
          const from = ((unit * component.v + row) * component.stored + column) * 64;
          multiply(component.coefficients!, from, steps, scaled);
          drawBlock(scaled, side, this.#planes[index]!, row * side * stride + column * side, stride);
        }
      }
    });
    this.#handOn(unit);
  }

  #stepsOf(component: Component): Uint16Array {
    const steps = this.#steps[component.quantization];
    if (steps === undefined) throw broken('a table of its steps is missing');
    return steps;
  }

  /** The pixel rows of a row of units. */
  #handOn(unit: number): void {
    const side = this.#side;
    const high = this.#vMost * side;
    const { width, height } = reducedSize(this.#head, side);
    const from = Math.max(this.#rows.from, unit * high);
    const to = Math.min(this.#rows.to, (unit + 1) * high, height);
    for (let y = from; y < to; y++) {
      const rows = this.#components.map((component, index) => ({
        plane: this.#planes[index]!,
        at: Math.floor(((y - unit * high) * component.v) / this.#vMost) * component.stored * side,
        step: component.h / this.#hMost,
      }));
      rowToRgb(this.#head, rows, width, this.#rgb);
      this.#rows.take(y, new Uint8Array(this.#rgb.buffer));
    }
  }
}

function multiply(from: Int16Array, at: number, steps: Uint16Array, to: Int32Array): void {
  for (let i = 0; i < 64; i++) to[i] = from[at + i]! * steps[i]!;
}
