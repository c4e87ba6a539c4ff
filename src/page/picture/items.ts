import { type ComponentChild, h } from 'preact';
import type { Attributes, Seen, SeenItem } from '../engine/seen.ts';

/** Where a picture's bytes are to be had, by the name that items give it. */
export type PictureUrls = Readonly<Record<string, string>>;

/** A drawing as elements for the screen and for print, letters as text in the page's font; keyed, so that only what changed is painted. */
export const seenElements = ({ groups, styles }: Seen, pictures: PictureUrls = {}): readonly ComponentChild[] =>
  groups.map(({ name, items }) =>
    h(
      'g',
      { key: name },
      items.map((item, i) => itemElement(item, i, styles, pictures)),
    ),
  );

function itemElement(
  item: SeenItem,
  key: number,
  styles: readonly Attributes[],
  pictures: PictureUrls,
): ComponentChild {
  switch (item.kind) {
    case 'path':
      return h('path', { key, d: item.d, ...styles[item.style] });
    case 'text':
      return h('text', { key, ...item.attributes }, item.text);
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
