import { type ComponentChild, h } from 'preact';
import type { Piece } from '../engine/answers.ts';
import { lit, shown } from '../state/shown.ts';

interface Size {
  readonly name: string;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly value: number;
}

/** More openings have no room for their sizes. */
const MOST = 9;

/** The sizes that stand beside edges, where they are measured. */
function sizesOf({ report }: Piece, out: number): readonly Size[] {
  const { outer, border, openings } = report;
  const middle = { x: outer.width / 2, y: outer.height / 2 };
  const across = (name: string, x1: number, x2: number, y: number): Size => ({
    name,
    x1,
    x2,
    y1: y,
    y2: y,
    value: x2 - x1,
  });
  const down = (name: string, y1: number, y2: number, x: number): Size => ({
    name,
    x1: x,
    x2: x,
    y1,
    y2,
    value: y2 - y1,
  });
  return [
    across('outer.width', 0, outer.width, outer.height + out),
    down('outer.height', 0, outer.height, outer.width + out),
    across('border.left', 0, border.left, middle.y),
    across('border.right', outer.width - border.right, outer.width, middle.y),
    down('border.top', 0, border.top, middle.x),
    down('border.bottom', outer.height - border.bottom, outer.height, middle.x),
    ...(openings.length > MOST
      ? []
      : openings.flatMap(({ layers }, i): Size[] => {
          const box = layers.at(-1)?.face;
          if (box === undefined) return [];
          return [
            across(`openings[${i}].opening.width`, box.x, box.x + box.width, box.y + box.height - box.height * 0.12),
            down(`openings[${i}].opening.height`, box.y, box.y + box.height, box.x + box.width * 0.86),
          ];
        })),
  ];
}

/** Dimension lines over the face; the one that the field with the focus speaks of is lit. */
export function Sizes({ piece, letter }: { readonly piece: Piece; readonly letter: number }): ComponentChild {
  const tick = letter * 0.5;
  return h(
    'g',
    { class: 'sizes', 'aria-hidden': 'true' },
    sizesOf(piece, letter * 1.6).map(({ name, x1, y1, x2, y2, value }) => {
      const flat = y1 === y2;
      const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2];
      const ends = [
        { x: x1, y: y1 },
        { x: x2, y: y2 },
      ];
      return h(
        'g',
        { key: name, class: `${name.startsWith('outer') ? 'outside' : ''} ${lit.value.includes(name) ? 'lit' : ''}` },
        [
          h('line', { key: 'casing', class: 'casing', x1, y1, x2, y2 }),
          h('line', { key: 'line', x1, y1, x2, y2 }),
          ...ends.map((end, i) =>
            flat
              ? h('line', { key: i, x1: end.x, x2: end.x, y1: end.y - tick, y2: end.y + tick })
              : h('line', { key: i, y1: end.y, y2: end.y, x1: end.x - tick, x2: end.x + tick }),
          ),
          h(
            'text',
            {
              key: 'words',
              x,
              y: flat ? y - letter * 0.35 : y,
              'font-size': letter,
              'text-anchor': 'middle',
              ...(flat ? {} : { transform: `rotate(-90 ${x} ${y}) translate(0 ${-letter * 0.35})` }),
            },
            shown(value),
          ),
        ],
      );
    }),
  );
}
