import { signal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { Arrange } from './arrange.ts';
import { OpeningFields } from './opening.ts';
import { Part } from './part.ts';
import { plainText } from './typed.ts';

/** The opening whose fields are open. */
export const chosen = signal(0);

const countOpenings = (): number => {
  const all = said(['openings']);
  return Array.isArray(all) ? all.length : 0;
};

const openingName = (i: number): string => plainText(said(['openings', i, 'name'])) || `Opening ${i + 1}`;

export function Openings(): ComponentChild {
  const count = countOpenings();
  const now = Math.min(chosen.value, Math.max(0, count - 1));
  const first = said(['openings', now]);
  const add = (): void => {
    const {
      name: _,
      picture: __,
      place: ___,
      ...like
    } = typeof first === 'object' && !Array.isArray(first) ? (first as Record<string, Plain>) : {};
    if (
      edit(
        [{ path: ['openings', count], value: Object.keys(like).length === 0 ? { size: '8 x 10 in' } : like }],
        'another opening',
      )
    )
      chosen.value = count;
  };
  const take = (): void => {
    if (edit([{ path: ['openings', now], value: undefined }], `${openingName(now)} taken out`))
      chosen.value = Math.max(0, now - 1);
  };
  return h(Part, { title: count > 1 ? `Openings (${count})` : 'Opening', open: true }, [
    count > 1 ? h(Choose, { key: 'choose', count, now }) : null,
    h(OpeningFields, { key: `opening ${now}`, index: now, several: count > 1 }),
    h('div', { key: 'buttons', class: 'buttons' }, [
      h('button', { key: 'add', type: 'button', onClick: add }, 'Add an opening'),
      count > 1 ? h('button', { key: 'take', type: 'button', onClick: take }, `Take ${openingName(now)} out`) : null,
    ]),
    count > 1 ? h(Arrange, { key: 'arrange' }) : null,
  ]);
}

function Choose({ count, now }: { readonly count: number; readonly now: number }): ComponentChild {
  return h('div', { class: 'field choice' }, [
    h('label', { key: 'label', for: 'which-opening' }, 'Which one'),
    h(
      'select',
      {
        key: 'select',
        id: 'which-opening',
        value: String(now),
        onChange: (event: Event) => {
          chosen.value = Number((event.currentTarget as HTMLSelectElement).value);
        },
      },
      Array.from({ length: count }, (_, i) =>
        h('option', { key: i, value: String(i), selected: i === now }, openingName(i)),
      ),
    ),
  ]);
}
