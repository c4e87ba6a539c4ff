import type { Drawing, Item } from '../../drawing/model.ts';
import { coverBoxes } from '../../drawing/touches.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';

/** Curves are held by boxes of this length, mm: a sheet that only such a box touches is not skipped. */
const CURVE_STEP = 4;

/** A drawing as boxes, in its own space. */
export interface Covering {
  /** Together they hold everything that is shown. */
  readonly shown: readonly Box[];
  /** Words and lines, of the parts that are left out unless asked for too. */
  readonly words: readonly Box[];
  readonly lines: readonly Box[];
}

const KNOWN = new WeakMap<Drawing, Covering>();
/** A drawing and the same one without its words share their items, and their pens. */
const ITEMS = new WeakMap<Item, readonly Box[]>();

/** Worked out once for a drawing, of which several parts of a layout ask it. */
export function coveringOf(drawing: Drawing, fonts: Fonts): Covering {
  const known = KNOWN.get(drawing) ?? covering(drawing, fonts);
  KNOWN.set(drawing, known);
  return known;
}

function covering({ groups, pens }: Drawing, fonts: Fonts): Covering {
  const shown: Box[] = [];
  const words: Box[] = [];
  const lines: Box[] = [];
  for (const group of groups) {
    for (const item of group.items) {
      const boxes = ITEMS.get(item) ?? coverBoxes(item, pens, CURVE_STEP, fonts);
      ITEMS.set(item, boxes);
      if (group.shown) shown.push(...boxes);
      (item.kind === 'line' || item.kind === 'path' ? lines : words).push(...boxes);
    }
  }
  return { shown, words, lines };
}
