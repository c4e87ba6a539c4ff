import { type ComponentChild, h } from 'preact';
import { edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { Choice, Field, Tick } from './field.ts';
import { chosen } from './openings.ts';
import { Rest } from './rest.ts';
import { Opened } from './shape-fields.ts';

/** Keys of a job that have fields of their own, here or above; its unit does not change: any can be shown, and typed. */
const OWN = [
  ...['title', 'number', 'customer', 'count', 'units'],
  ...['mat', 'openings', 'arrange', 'lettering', 'bench', 'print'],
];

/** Names, how many, how it is cut and printed, and what few pieces have. */
export function More(): ComponentChild {
  const lines = ['openings', chosen.value, 'lines'];
  const addLetters = (): void => {
    edit(
      [{ path: ['lettering'], value: [{ text: 'TITLE', height: '3/4 in', place: { bottom: '1 in' } }] }],
      'lettering',
    );
  };
  return h(Opened, { title: 'Names, bench and paper', level: 2 }, [
    h(Field, { key: 'title', label: 'Title', path: ['title'], kind: 'text', usual: 'the name of the file' }),
    h(Field, { key: 'customer', label: 'Customer', path: ['customer'], kind: 'text' }),
    h('div', { key: 'numbers', class: 'fields pair' }, [
      h(Field, { key: 'number', label: 'Number of the job', path: ['number'], kind: 'text' }),
      h(Field, { key: 'count', label: 'How many alike', path: ['count'], kind: 'count', usual: '1' }),
    ]),
    h(Tick, {
      key: 'snap',
      label: 'Move the opening so that settings lie on the guide’s graduation',
      path: ['bench', 'snap'],
    }),
    h(Choice, {
      key: 'stack',
      label: 'Under mats are cut',
      path: ['bench', 'stack'],
      words: [
        ['', 'on the top mat, together'],
        ['apart', 'each by itself'],
      ],
      now: said(['bench', 'stack']) === 'apart' ? 'apart' : '',
    }),
    h(Field, {
      key: 'graduation',
      label: 'Graduation of the guide',
      path: ['bench', 'graduation'],
      usual: 'as the shop says',
    }),
    h(Field, {
      key: 'paper',
      label: 'Paper',
      path: ['print', 'paper'],
      kind: 'text',
      usual: 'Letter or A4',
      example: 'a4',
    }),
    h(Choice, {
      key: 'transfer',
      label: 'The pattern is',
      path: ['print', 'transfer'],
      words: [
        ['', 'pricked through'],
        ['cut-through', 'cut through'],
      ],
      now: said(['print', 'transfer']) === 'cut-through' ? 'cut-through' : '',
    }),
    h(Rest, { key: 'bench', title: 'More of the bench', path: ['bench'], but: ['snap', 'stack', 'graduation'] }),
    h(Rest, { key: 'print', title: 'More of the print', path: ['print'], but: ['paper', 'transfer'] }),
    h(Rest, { key: 'rest', title: 'More of the piece', path: [], but: OWN }),
    h('div', { key: 'buttons', class: 'buttons' }, [
      said(['lettering']) === undefined
        ? h('button', { key: 'letters', type: 'button', onClick: addLetters }, 'Add lettering')
        : null,
      said(lines) === undefined
        ? h(
            'button',
            {
              key: 'lines',
              type: 'button',
              onClick: () =>
                edit([{ path: lines, value: [{ kind: 'groove', distance: '1/2 in' }] }], 'a line round the opening'),
            },
            'Add a groove or line',
          )
        : null,
    ]),
  ]);
}
