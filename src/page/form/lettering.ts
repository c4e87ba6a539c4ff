import { type ComponentChild, h } from 'preact';
import { edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { Choice, Field } from './field.ts';
import { Part } from './part.ts';
import { Rest } from './rest.ts';

const LETTERING = ['lettering'];

/** Texts that are cut through the top mat; only where the piece has some are their fields there. */
export function Lettering(): ComponentChild {
  const all = said(LETTERING);
  if (!Array.isArray(all)) return null;
  return h(Part, { title: 'Lettering', open: true }, [
    ...all.map((_, i) => h(One, { key: i, index: i })),
    h('div', { key: 'buttons', class: 'buttons' }, [
      h(
        'button',
        {
          key: 'add',
          type: 'button',
          onClick: () =>
            edit(
              [
                {
                  path: [...LETTERING, all.length],
                  value: { text: 'NAME', height: '1/2 in', place: { bottom: '1/4 in' } },
                },
              ],
              'more lettering',
            ),
        },
        'Add another text',
      ),
      h(
        'button',
        {
          key: 'take',
          type: 'button',
          onClick: () => edit([{ path: LETTERING, value: undefined }], 'lettering taken out'),
        },
        'Take the lettering out',
      ),
    ]),
  ]);
}

/** Of a text's keys. */
const OWN = ['text', 'height', 'spacing', 'bridge', 'edge', 'place'];

function One({ index }: { readonly index: number }): ComponentChild {
  const at = (...steps: readonly string[]) => [...LETTERING, index, ...steps];
  return h('div', { class: 'fields' }, [
    h(Field, { key: 'text', label: 'Text', path: at('text'), kind: 'text' }),
    h('div', { key: 'sizes', class: 'fields pair' }, [
      h(Field, { key: 'height', label: 'Height of capitals', path: at('height') }),
      h(Field, { key: 'spacing', label: 'Between letters', path: at('spacing'), usual: 'a tenth of the height' }),
      h(Field, { key: 'bridge', label: 'Bridges', path: at('bridge'), usual: '1/16 in or 2 mm' }),
    ]),
    h(Choice, {
      key: 'edge',
      label: 'Edge',
      path: at('edge'),
      words: [
        ['', 'cut upright'],
        ['bevel', 'with the bevel'],
      ],
    }),
    said(at('place', 'below')) === undefined
      ? h(Field, { key: 'bottom', label: 'From the bottom edge', path: at('place', 'bottom'), usual: 'centred' })
      : h(Field, { key: 'gap', label: `Below ${String(said(at('place', 'below')))}`, path: at('place', 'gap') }),
    h(Rest, { key: 'place', title: 'More of where it stands', path: at('place'), but: ['bottom', 'gap'] }),
    h(Rest, { key: 'rest', title: 'More of the lettering', path: at(), but: OWN }),
  ]);
}
