import { type ComponentChild, h } from 'preact';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { edit, written } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { Choice, Field, idOf, Tick } from './field.ts';
import { Rest } from './rest.ts';
import { Told } from './told.ts';
import { plainText } from './typed.ts';

const ARRANGE = ['arrange'];
const at = (...steps: readonly string[]) => [...ARRANGE, ...steps];

/** Of the keys of rows. */
const OWN = ['rows', 'columns', 'gap', 'align', 'fill'];

/** How several openings lie in rows. */
export function Arrange(): ComponentChild {
  const gap = said(at('gap'));
  const two = typeof gap === 'object';
  const other = (): void => {
    const one = two ? (said(at('gap', 'across')) ?? said(at('gap', 'down'))) : (gap ?? '1 in');
    edit([{ path: at('gap'), value: two ? one : { across: one ?? '1 in', down: one ?? '1 in' } }], 'gaps');
  };
  return h('fieldset', { class: 'group' }, [
    h('legend', { key: 'legend' }, 'Rows and gaps'),
    h(Rows, { key: 'rows' }),
    h(Field, { key: 'columns', label: 'Columns', path: at('columns'), kind: 'count' }),
    two
      ? h('div', { key: 'gaps', class: 'fields pair' }, [
          h(Field, { key: 'across', label: 'Gap across', path: at('gap', 'across'), sizes: ['gap.width'] }),
          h(Field, { key: 'down', label: 'Gap down', path: at('gap', 'down'), sizes: ['gap.height'] }),
        ])
      : h(Field, { key: 'gap', label: 'Gap', path: at('gap'), sizes: ['gap.width'] }),
    h(
      'div',
      { key: 'ways', class: 'buttons' },
      h(
        'button',
        { type: 'button', class: 'plain', onClick: other },
        two ? 'One gap for both ways' : 'Gaps across and down by themselves',
      ),
    ),
    h(Choice, {
      key: 'align',
      label: 'In a row they stand',
      path: at('align'),
      words: [
        ['', 'on one middle'],
        ['base', 'on one base line'],
        ['top', 'level at the top'],
      ],
      now: ((value) => (value === 'centre' ? '' : value))(plainText(said(at('align')))),
    }),
    h(Tick, { key: 'fill', label: 'Borders as wide as the gaps', path: at('fill') }),
    h(Rest, { key: 'rest', title: 'More of the rows', path: ARRANGE, but: OWN }),
  ]);
}

/** One number of rows, or with commas how many each row has. */
function Rows(): ComponentChild {
  const path = at('rows');
  const value = said(path);
  const id = idOf(path);
  const set = (typed: string): void => {
    const parts = typed
      .split(',')
      .map((part) => part.trim())
      .filter((part) => part !== '');
    const next: Plain | undefined =
      parts.length === 0 ? undefined : parts.length === 1 ? written(parts[0]!) : parts.map(written);
    edit([{ path, value: next }], 'rows', `field ${id}`);
  };
  return h('div', { class: 'field given' }, [
    h('label', { key: 'label', for: id }, 'Rows, or how many in each: 3, 3, 1'),
    h('input', {
      key: 'input',
      id,
      type: 'text',
      value: Array.isArray(value) ? value.map(String).join(', ') : plainText(value),
      onChange: (event: Event) => set((event.currentTarget as HTMLInputElement).value),
    }),
    h(Told, { key: 'told', path }),
  ]);
}
