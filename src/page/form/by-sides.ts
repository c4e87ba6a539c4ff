import { type ComponentChild, h } from 'preact';
import { SIDES } from '../../geometry/sides.ts';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { Field, type FieldOf } from './field.ts';

type SidesOf = Pick<FieldOf, 'label' | 'path' | 'sizes' | 'usual' | 'example'> & {
  /** What a side has to begin with where nothing was said. */
  readonly first: Plain;
};

/** A length that is said once for all sides, or for each by itself. */
export function BySides({ first, ...field }: SidesOf): ComponentChild {
  const { label, path } = field;
  const value = said(path);
  if (typeof value !== 'object' || Array.isArray(value)) {
    const each = Object.fromEntries(SIDES.map((side) => [side, value ?? first]));
    return h('div', { class: 'fields' }, [
      h(Field, { key: 'one', ...field }),
      h(Other, {
        key: 'other',
        words: `${label}: each side by itself`,
        go: () => edit([{ path, value: each }], label),
      }),
    ]);
  }
  const keys = Object.hasOwn(value, 'sides') ? (['sides', 'top', 'bottom'] as const) : SIDES;
  const one = Object.values<Plain>(value)[0];
  return h('fieldset', { class: 'group' }, [
    h('legend', { key: 'legend' }, label),
    h(
      'div',
      { key: 'sides', class: 'fields pair' },
      keys.map((side) => h(Field, { key: side, label: `${label}, ${side}`, path: [...path, side] })),
    ),
    h(Other, { key: 'other', words: `${label}: one for all sides`, go: () => edit([{ path, value: one }], label) }),
  ]);
}

const Other = ({ words, go }: { readonly words: string; readonly go: () => void }): ComponentChild =>
  h('div', { class: 'buttons' }, h('button', { type: 'button', class: 'plain', onClick: go }, words));
