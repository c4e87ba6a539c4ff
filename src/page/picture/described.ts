import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import type { Piece } from '../engine/answers.ts';
import { piece } from '../state/piece.ts';
import { shown, shownSize } from '../state/shown.ts';

/** The mat in words, for those who do not see it, and for whoever reads sizes rather than lines; written when it is opened. */
export function Describe(): ComponentChild {
  const open = useSignal(false);
  const now = piece.value;
  if (now === undefined) return null;
  return h(
    'details',
    {
      class: 'described',
      open: open.value,
      onToggle: (event: Event) => {
        open.value = (event.currentTarget as HTMLDetailsElement).open;
      },
    },
    [
      h('summary', { key: 'title' }, 'All sizes in words'),
      open.value ? h(Words, { key: 'words', report: now.report }) : null,
    ],
  );
}

function Words({ report }: Pick<Piece, 'report'>): ComponentChild {
  const { outer, border, layers, openings } = report;
  const sides = [border.left, border.right, border.top, border.bottom].map(shown);
  return h('ul', {}, [
    h(
      'li',
      { key: 'outer' },
      `The mat is ${shownSize(outer)}, ${layers.length === 1 ? 'one layer' : `${layers.length} layers`}, ${openings.length === 1 ? 'one opening' : `${openings.length} openings`}.`,
    ),
    h('li', { key: 'border' }, `Borders: left ${sides[0]}, right ${sides[1]}, top ${sides[2]}, bottom ${sides[3]}.`),
    ...openings.map(({ opening, name, layers: cuts, artwork, sight }) =>
      h('li', { key: opening }, [
        `${name}: `,
        cuts.map(({ face, layer }) => `${layers[layer - 1]?.name ?? ''} ${shownSize(face)}`).join(', '),
        `; seen ${shownSize(sight)}`,
        artwork === undefined ? '.' : `; artwork ${shownSize(artwork.size)}.`,
      ]),
    ),
  ]);
}
