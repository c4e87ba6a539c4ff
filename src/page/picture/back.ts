import { type ComponentChild, h } from 'preact';
import type { Piece } from '../engine/answers.ts';
import { seenElements } from './items.ts';

/** The back of each board with its strokes, as the pattern has them. */
export function Backs({ piece, zoom }: { readonly piece: Piece; readonly zoom: number }): ComponentChild {
  const { backs } = piece;
  if (backs === undefined) return h('p', { class: 'nothing' }, 'The back is being drawn.');
  return h(
    'div',
    { class: 'backs' },
    backs.map(({ name, drawing }) =>
      h('figure', { key: name }, [
        h('figcaption', { key: 'name' }, `${name.charAt(0).toUpperCase()}${name.slice(1)}, seen from the back`),
        h(
          'svg',
          {
            key: 'drawing',
            class: 'sheet',
            viewBox: `0 0 ${drawing.width} ${drawing.height}`,
            width: `${zoom * 100}%`,
            role: 'img',
            'aria-label': `${name}, seen from the back, with its strokes`,
          },
          seenElements(drawing),
        ),
      ]),
    ),
  );
}
