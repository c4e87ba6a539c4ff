import type { Item, LineItem, PathItem, TextItem } from '../drawing/model.ts';
import { textWidth } from '../fonts/measure.ts';
import type { Fonts } from '../fonts/model.ts';
import { textOutline } from '../fonts/outlines.ts';
import { type Path, placedPath } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

/** How much of its width a text lies before its point. */
const ANCHOR: Readonly<Record<TextItem['anchor'], number>> = { start: 0, middle: 0.5, end: 1 };

/** From a text's own outlines, base line from 0 0 to the right, to where the item stands. */
export function textPlace(item: TextItem, fonts: Fonts): (p: Point) => Point {
  const back = ANCHOR[item.anchor] * textWidth(item.text, item.weight, item.size, fonts);
  const angle = (item.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ({ x, y }) => ({
    x: item.at.x + (x - back) * cos - y * sin,
    y: item.at.y + (x - back) * sin + y * cos,
  });
}

/** What is drawn with a pen or a fill, as paths. */
export function linePaths(item: LineItem | PathItem): readonly Path[] {
  if (item.kind === 'path') return item.paths;
  return [{ start: item.from, segments: [{ kind: 'line', to: item.to }], closed: false }];
}

/** An item as paths alone, words in outline, for formats that know neither fonts nor fills. */
export function itemPaths(item: Item, fonts: Fonts): readonly Path[] {
  switch (item.kind) {
    case 'line':
    case 'path':
      return linePaths(item);
    case 'text': {
      const place = textPlace(item, fonts);
      return textOutline(item.text, item.weight, item.size, fonts).map((path) => placedPath(path, place));
    }
    case 'picture':
      throw new TypeError(`no picture is named ${JSON.stringify(item.picture)}`);
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}
