import { type ComponentChild, h } from 'preact';
import { type Box, centre } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import type { StockSheet } from '../engine/answers.ts';

export interface SheetPictureOf {
  readonly sheet: StockSheet;
  readonly isMade: (cut: number) => boolean;
  /** The cut that comes next. */
  readonly next?: number;
}

/** A sheet of board as it lies: what comes out of it, and its cuts by their numbers; the next one stands out, those that are made are thin. */
export function SheetPicture({ sheet, isMade, next }: SheetPictureOf): ComponentChild {
  const { width, height, pieces, offcuts, stops, name } = sheet;
  const cuts = stops.flatMap((stop) => stop.cuts);
  const long = Math.max(width, height);
  const [letter, room] = [long / 22, long / 14];
  const words = (box: Box, text: string, key: string): ComponentChild => {
    const { x, y } = centre(box);
    return h('text', { key, x, y: y + letter * 0.35, 'font-size': letter, 'text-anchor': 'middle' }, text);
  };
  const count = cuts.filter(({ cut }) => isMade(cut)).length;
  return h(
    'svg',
    {
      class: 'stock-sheet',
      viewBox: `${-room} ${-room} ${width + 2 * room} ${height + 2 * room}`,
      role: 'img',
      'aria-label': `${name} as it lies, ${count} of ${cuts.length} cuts made`,
    },
    [
      h('rect', { key: 'sheet', class: 'whole', x: 0, y: 0, width, height }),
      ...offcuts.map((box, i) =>
        h('g', { key: `offcut ${i}`, class: 'kept' }, [
          h('rect', { key: 'box', x: box.x, y: box.y, width: box.width, height: box.height }),
          words(box, box.words, 'words'),
        ]),
      ),
      ...pieces.map((box, i) =>
        h('g', { key: `piece ${i}`, class: 'piece' }, [
          h('rect', { key: 'box', x: box.x, y: box.y, width: box.width, height: box.height }),
          words(box, box.key, 'words'),
        ]),
      ),
      ...cuts.map(({ cut, from, to }) =>
        h('g', { key: `cut ${cut}`, class: isMade(cut) ? 'cut made' : cut === next ? 'cut next' : 'cut' }, [
          h('line', { key: 'line', x1: from.x, y1: from.y, x2: to.x, y2: to.y }),
          h(Disc, { key: 'number', cut, at: numberAt({ from, to }, sheet, letter), letter }),
        ]),
      ),
    ],
  );
}

/** Outside of the sheet where the cut ends at its left or upper edge, else at the end of the cut. */
function numberAt(
  { from, to }: { readonly from: Point; readonly to: Point },
  { width, height }: StockSheet,
  letter: number,
): Point {
  const out = letter * 0.75;
  if (from.x === to.x) {
    const y = Math.min(from.y, to.y);
    return { x: from.x, y: y < 1 ? -out : Math.max(from.y, to.y) > height - 1 ? height + out : y + out };
  }
  const x = Math.min(from.x, to.x);
  return { x: x < 1 ? -out : Math.max(from.x, to.x) > width - 1 ? width + out : x + out, y: from.y };
}

function Disc({ cut, at, letter }: { readonly cut: number; readonly at: Point; readonly letter: number }) {
  return h('g', {}, [
    h('circle', { key: 'disc', cx: at.x, cy: at.y, r: letter * 0.62 }),
    h(
      'text',
      { key: 'words', x: at.x, y: at.y + letter * 0.28, 'font-size': letter * 0.8, 'text-anchor': 'middle' },
      String(cut),
    ),
  ]);
}
