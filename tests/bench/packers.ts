/** Other libraries that lay rectangles on equal sheets, each called as its own page says, all behind one shape. */
import BinPackingCore from 'bin-packing-core';
import GuillotinePacker from 'guillotine-packer';
import type { Box } from '../../src/geometry/box.ts';
import type { Size } from '../../src/geometry/point.ts';

// Its entry for Node is broken (a script named as a module); the module beside it works.
const MAXRECTS: string = 'maxrects-packer/dist/maxrects-packer.mjs';
const { MaxRectsPacker, PACKING_LOGIC }: typeof import('maxrects-packer') = await import(MAXRECTS);

export interface Problem {
  readonly sheet: Size;
  readonly blanks: readonly Size[];
  readonly turn: boolean;
}

export interface Packer {
  readonly name: string;
  /** The rectangles of every sheet. */
  readonly pack: (problem: Problem) => Box[][];
}

export const PACKERS: readonly Packer[] = [
  { name: 'guillotine-packer', pack: guillotine },
  { name: 'maxrects-packer', pack: maxRects },
  { name: 'bin-packing-core', pack: binPacking },
];

/** Tries all of its strategies by itself. */
function guillotine({ sheet, blanks, turn }: Problem): Box[][] {
  const items = blanks.map(({ width, height }) => ({ name: '', width, height }));
  const packed = GuillotinePacker.packer(
    { binWidth: sheet.width, binHeight: sheet.height, items },
    { allowRotation: turn, kerfSize: 0 },
  );
  return packed ?? [];
}

/** The better of its two ways to choose a place. */
function maxRects({ sheet, blanks, turn }: Problem): Box[][] {
  const tried = [PACKING_LOGIC.MAX_AREA, PACKING_LOGIC.MAX_EDGE].map((logic) => {
    const packer = new MaxRectsPacker(sheet.width, sheet.height, 0, {
      smart: false,
      pot: false,
      square: false,
      allowRotation: turn,
      logic,
    });
    // In the order in which it sorts a list itself; one by one, since of plain sizes it would turn the mark alone.
    const size = ({ width, height }: Size): number =>
      logic === PACKING_LOGIC.MAX_AREA ? width * height : Math.max(width, height);
    for (const { width, height } of [...blanks].sort((a, b) => size(b) - size(a))) packer.add(width, height, undefined);
    return packer.bins.map((bin) => bin.rects.map(({ x, y, width, height }) => ({ x, y, width, height })));
  });
  return fewest(tried);
}

/** Fills one sheet after the other with what is left, by each of its five ways to find a place. */
function binPacking({ sheet, blanks, turn }: Problem): Box[][] {
  const { MaxRectBinPack, Rect } = BinPackingCore;
  const tried = [0, 1, 2, 3, 4].map((way) => {
    const left = blanks.map(({ width, height }) => {
      const rect = new Rect();
      rect.width = width;
      rect.height = height;
      return rect;
    });
    const sheets: Box[][] = [];
    while (left.length > 0) {
      // It takes what it has laid out of the list itself.
      const laid = new MaxRectBinPack(sheet.width, sheet.height, turn).insertRects(left, way);
      if (laid.length === 0) throw new Error('bin-packing-core lays nothing');
      sheets.push(laid.map(({ x, y, width, height }) => ({ x, y, width, height })));
    }
    return sheets;
  });
  return fewest(tried);
}

const fewest = (tried: readonly Box[][][]): Box[][] => tried.reduce((a, b) => (b.length < a.length ? b : a));
