import { type ComponentChild, h } from 'preact';
import type { Drawing, Group, Item, Pen, TextItem } from '../../drawing/model.ts';
import { hexColour } from '../../writers/colour.ts';
import { type PathWriting, pathData } from '../../writers/path-data.ts';

/** Fine enough for any screen, and short. */
const FOR_SCREEN: PathWriting = { number: (mm) => String(Math.round(mm * 1000) / 1000) };

/** Where a picture's bytes are to be had, by the name that items give it. */
export type PictureUrls = Readonly<Record<string, string>>;

/** A drawing as elements for the screen and for print, letters as text in the page's font; keyed, so that only what changed is painted. */
export const drawingElements = (drawing: Drawing, pictures: PictureUrls = {}): readonly ComponentChild[] =>
  drawing.groups.filter(({ shown }) => shown).map((group) => groupElement(group, drawing.pens, pictures));

const groupElement = (group: Group, pens: Drawing['pens'], pictures: PictureUrls): ComponentChild =>
  h(
    'g',
    { key: group.name },
    group.items.map((item, i) => itemElement(item, i, pens, pictures)),
  );

function itemElement(item: Item, key: number, pens: Drawing['pens'], pictures: PictureUrls): ComponentChild {
  switch (item.kind) {
    case 'line': {
      const { from, to } = item;
      return h('line', { key, x1: from.x, y1: from.y, x2: to.x, y2: to.y, ...penOf(pens[item.pen]) });
    }
    case 'path':
      return h('path', {
        key,
        d: item.paths.map((path) => pathData(path, FOR_SCREEN)).join(''),
        ...(item.fill === undefined ? { fill: 'none' } : { fill: hexColour(item.fill), 'fill-rule': 'evenodd' }),
        ...(item.pen === undefined ? {} : penOf(pens[item.pen])),
      });
    case 'text':
      return textElement(item, key);
    case 'picture': {
      const href = pictures[item.picture];
      const { x, y, width, height } = item.box;
      return href === undefined
        ? null
        : h('image', { key, href, x, y, width, height, preserveAspectRatio: 'xMidYMid slice' });
    }
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}

function textElement({ text, at, anchor, size, weight, turn, colour }: TextItem, key: number): ComponentChild {
  return h(
    'text',
    {
      key,
      x: at.x,
      y: at.y,
      'font-size': size,
      fill: hexColour(colour),
      ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
      ...(weight === 'bold' ? { class: 'bold' } : {}),
      ...(turn === 0 ? {} : { transform: `rotate(${turn} ${at.x} ${at.y})` }),
    },
    text,
  );
}

const penOf = (pen: Pen | undefined) =>
  pen === undefined
    ? {}
    : {
        stroke: hexColour(pen.colour),
        'stroke-width': pen.width,
        'stroke-linecap': pen.cap,
        ...(pen.cap === 'round' ? { 'stroke-linejoin': 'round' as const } : { 'stroke-miterlimit': 10 }),
        ...(pen.dash.length === 0 ? {} : { 'stroke-dasharray': pen.dash.join(' ') }),
      };
