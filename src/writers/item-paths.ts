import type { Item, TextItem } from '../drawing/model.ts';
import { textWidth } from '../fonts/measure.ts';
import type { RareFonts } from '../fonts/model.ts';
import { textOutline } from '../fonts/outlines.ts';
import { type Path, placedPath } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

/** How much of its width a text lies before its point. */
const ANCHOR: Readonly<Record<TextItem['anchor'], number>> = { start: 0, middle: 0.5, end: 1 };

/** From a text's own outlines, base line from 0 0 to the right, to where the item stands. */
export function textPlace(item: TextItem, rare?: RareFonts): (p: Point) => Point {
  const back = ANCHOR[item.anchor] * textWidth(item.text, item.weight, item.size, rare);
  const angle = (item.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ({ x, y }) => ({
    x: item.at.x + (x - back) * cos - y * sin,
    y: item.at.y + (x - back) * sin + y * cos,
  });
}

/** An item as paths alone, words in outline, for formats that know neither fonts nor fills. */
export function itemPaths(item: Item, rare?: RareFonts): readonly Path[] {
  switch (item.kind) {
    case 'line':
      return [{ start: item.from, segments: [{ kind: 'line', to: item.to }], closed: false }];
    case 'path':
      return item.paths;
    case 'text': {
      const place = textPlace(item, rare);
      return textOutline(item.text, item.weight, item.size, rare).map((path) => placedPath(path, place));
    }
    case 'picture':
      throw new TypeError(`no picture is named ${JSON.stringify(item.picture)}`);
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}
