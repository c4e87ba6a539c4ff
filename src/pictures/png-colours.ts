import type { PngHead } from './png-head.ts';

/** Writes the first `count` pixels of an unfiltered row (its filter byte first) as red, green, blue, `step` bytes apart. */
export type ToRgb = (line: Uint8Array, count: number, to: Uint8Array, at: number, step: number) => void;

/** What is see-through lies on white paper. */
const onWhite = (value: number, opacity: number): number => 255 + Math.round(((value - 255) * opacity) / 255);

/** Sixteen bits in eight, rounded. */
const eight = (line: Uint8Array, at: number): number => ((line[at]! * 256 + line[at + 1]!) * 255 + 32895) >>> 16;

export function colours({ colour, depth, palette, clear }: PngHead): ToRgb {
  const bytes = depth === 16 ? 2 : 1;
  const value = depth === 16 ? eight : (line: Uint8Array, at: number): number => line[at]!;
  switch (colour) {
    case 0:
      return depth < 8 ? small(depth, greys(depth, clear)) : grey(bytes, value, clear);
    case 3:
      return small(depth, indexed(palette, clear));
    case 4:
      return (line, count, to, at, step) => {
        for (let i = 0, from = 1; i < count; i++, from += 2 * bytes, at += step) {
          to[at] = to[at + 1] = to[at + 2] = onWhite(value(line, from), value(line, from + bytes));
        }
      };
    case 2: {
      const none = clear?.length === 6 ? clear : undefined;
      if (bytes === 1 && none === undefined) return plain;
      return (line, count, to, at, step) => {
        for (let i = 0, from = 1; i < count; i++, from += 3 * bytes, at += step) {
          const gone = none !== undefined && isClear(line, from, bytes, 3, none);
          for (let k = 0; k < 3; k++) to[at + k] = gone ? 255 : value(line, from + k * bytes);
        }
      };
    }
    case 6:
      return (line, count, to, at, step) => {
        for (let i = 0, from = 1; i < count; i++, from += 4 * bytes, at += step) {
          const opacity = value(line, from + 3 * bytes);
          for (let k = 0; k < 3; k++) to[at + k] = onWhite(value(line, from + k * bytes), opacity);
        }
      };
  }
}

/** Eight bits of red, green and blue, as they are. */
function plain(line: Uint8Array, count: number, to: Uint8Array, at: number, step: number): void {
  if (step === 3) {
    to.set(line.subarray(1, 1 + 3 * count), at);
    return;
  }
  for (let i = 0, from = 1; i < count; i++, from += 3, at += step) {
    to[at] = line[from]!;
    to[at + 1] = line[from + 1]!;
    to[at + 2] = line[from + 2]!;
  }
}

function grey(bytes: number, value: (line: Uint8Array, at: number) => number, clear: Uint8Array | undefined): ToRgb {
  const none = clear?.length === 2 ? clear : undefined;
  return (line, count, to, at, step) => {
    for (let i = 0, from = 1; i < count; i++, from += bytes, at += step) {
      const gone = none !== undefined && isClear(line, from, bytes, 1, none);
      to[at] = to[at + 1] = to[at + 2] = gone ? 255 : value(line, from);
    }
  };
}

/** Samples are two bytes in `clear`, however deep the picture is. */
function isClear(line: Uint8Array, at: number, bytes: number, samples: number, clear: Uint8Array): boolean {
  for (let k = 0; k < samples; k++) {
    if (line[at + k * bytes + bytes - 1] !== clear[2 * k + 1]) return false;
    if (bytes === 2 && line[at + k * bytes] !== clear[2 * k]) return false;
  }
  return true;
}

/** Pixels of 8 bits or fewer, the first one in the highest bits of a byte, by a table of their colours. */
function small(depth: number, table: Uint8Array): ToRgb {
  const mask = (1 << depth) - 1;
  return (line, count, to, at, step) => {
    for (let i = 0; i < count; i++, at += step) {
      const bit = i * depth;
      const index = (line[1 + (bit >> 3)]! >> (8 - depth - (bit & 7))) & mask;
      to[at] = table[index * 3]!;
      to[at + 1] = table[index * 3 + 1]!;
      to[at + 2] = table[index * 3 + 2]!;
    }
  };
}

function greys(depth: number, clear: Uint8Array | undefined): Uint8Array {
  const most = (1 << depth) - 1;
  return Uint8Array.from({ length: 3 << depth }, (_, i) => {
    const index = Math.floor(i / 3);
    return clear?.length === 2 && clear[1] === index ? 255 : Math.round((index * 255) / most);
  });
}

/** Entries that the palette lacks are black. */
function indexed(palette: Uint8Array, clear: Uint8Array | undefined): Uint8Array {
  return Uint8Array.from({ length: 256 * 3 }, (_, i) =>
    i < palette.length ? onWhite(palette[i]!, clear?.[Math.floor(i / 3)] ?? 255) : 0,
  );
}
