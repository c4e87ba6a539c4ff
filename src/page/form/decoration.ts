import { type ComponentChild, h } from 'preact';
import { edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { Choice, Field } from './field.ts';
import { Rest } from './rest.ts';

/** Of a line's keys. */
const OWN = ['kind', 'distance', 'width'];

/** Grooves and ink lines round an opening, where it has some. */
export function Decoration({ index }: { readonly index: number }): ComponentChild {
  const all = said(['openings', index, 'lines']);
  if (!Array.isArray(all)) return null;
  return h('fieldset', { class: 'group' }, [
    h('legend', { key: 'legend' }, 'Lines round it'),
    ...all.map((_, i) => {
      const at = (key: string) => ['openings', index, 'lines', i, key];
      return h('div', { key: i, class: 'fields pair' }, [
        h(Choice, {
          key: 'kind',
          label: 'Kind',
          path: at('kind'),
          words: [
            ['groove', 'groove, cut'],
            ['ink', 'ink line'],
          ],
          now: said(at('kind')) === 'ink' ? 'ink' : 'groove',
        }),
        h(Field, { key: 'distance', label: 'From the opening', path: at('distance') }),
        h(Field, { key: 'width', label: 'Width', path: at('width'), usual: 'as usual' }),
        h(Rest, { key: 'rest', title: 'Along some sides alone', path: at('').slice(0, -1), but: OWN }),
      ]);
    }),
    h('div', { key: 'buttons', class: 'buttons' }, [
      h(
        'button',
        {
          key: 'add',
          type: 'button',
          onClick: () =>
            edit(
              [{ path: ['openings', index, 'lines', all.length], value: { kind: 'ink', distance: '3/4 in' } }],
              'another line round the opening',
            ),
        },
        'Add another line',
      ),
      h(
        'button',
        {
          key: 'take',
          type: 'button',
          onClick: () => edit([{ path: ['openings', index, 'lines'], value: undefined }], 'lines taken out'),
        },
        'Take the lines out',
      ),
    ]),
  ]);
}
