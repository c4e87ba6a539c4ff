import { type ComponentChild, h } from 'preact';
import { piece } from '../state/piece.ts';
import { shown, shownSize } from '../state/shown.ts';

/** The mat in words, for those who do not see it, and for whoever reads sizes rather than lines. */
export function Describe(): ComponentChild {
  const now = piece.value;
  if (now === undefined) return null;
  const { outer, border, layers, openings } = now.report;
  const sides = [border.left, border.right, border.top, border.bottom].map(shown);
  return h('details', { class: 'described' }, [
    h('summary', { key: 'title' }, 'All sizes in words'),
    h('ul', { key: 'list' }, [
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
    ]),
  ]);
}
