import type { Drawing, Item } from '../drawing/model.ts';
import { type Box, bottom, box, contains, right, union } from '../geometry/box.ts';
import { pathBox } from '../geometry/extent.ts';
import { error, type Problem } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';

/** What a line beyond the sheet may be by the rounding of the arithmetic, mm. */
const ROUNDING = 1e-6;

/**
 * A file that a machine cuts by has no line beyond its sheet or bed: some machines stop there, others run on, or cut what is
 * left along the edge. One problem for a drawing that has one, with how far it reaches.
 */
export function offSheet(drawing: Drawing, file: string): readonly Problem[] {
  const sheet = box(0, 0, drawing.width, drawing.height);
  const beyond = drawing.groups.flatMap(({ items }) =>
    items.flatMap((item) => {
      const own = lineBox(item);
      return own === undefined || contains(sheet, own, ROUNDING)
        ? []
        : [{ own, id: 'id' in item ? item.id : undefined }];
    }),
  );
  const [first] = beyond;
  if (first === undefined) return [];
  const { own, id } = first;
  const most = Math.max(-own.x, -own.y, right(own) - sheet.width, bottom(own) - sheet.height);
  const line = id === undefined ? 'a line' : `the line ${id}`;
  // A length that is no number is beyond everything.
  const far = Number.isFinite(most) ? showLength(most, 'mm') : 'without end';
  const message = `${file} would have ${line} beyond its sheet, by ${far}`;
  return [error('line-off-sheet', [], message, 'make the border wider, or the opening smaller; nothing is written')];
}

function lineBox(item: Item): Box | undefined {
  switch (item.kind) {
    case 'line':
      return union([item.from, item.to].map(({ x, y }) => box(x, y, 0, 0)));
    case 'path':
      return union(item.paths.map(pathBox));
    case 'text':
    case 'picture':
      return undefined;
    default: {
      const never: never = item;
      return never;
    }
  }
}
