import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { onOneLine } from '../../read/edit/yaml-print.ts';
import { edit } from '../state/edit.ts';
import { type Path, said } from '../state/piece.ts';
import { jobUnit } from '../state/shown.ts';
import { BySides } from './by-sides.ts';
import { Choice, Field, idOf } from './field.ts';
import { firstOf, formOf, hasSides, isNamed, keyWords, type Shape } from './shape.ts';
import { Told } from './told.ts';
import { lengthTyped, plainText } from './typed.ts';

export interface ShapeOf {
  readonly shape: Shape;
  readonly path: Path;
  readonly label: string;
  /** True where nothing may stand there that nobody typed: readings begin empty. */
  readonly blank?: boolean;
}

/** A place of the file by its schema: a field, a choice, a group of them, a list, or things by their names. */
export function ShapeFields({ shape: given, path, label, blank = false }: ShapeOf): ComponentChild {
  if (isSeveral(given))
    return h(Several, { path, label, about: given.description ?? '', example: given.examples?.[0] });
  if (hasSides(given)) {
    const [example = ''] = given.examples ?? [];
    const first = typeof example === 'object' ? '1/4 in' : example;
    return h(BySides, { label, path, first, example: String(first) });
  }
  const shape = formOf(given, said(path));
  if (isNamed(shape)) return h(Named, { shape, path, label });
  if (shape.properties !== undefined) return h(Group, { shape, path, label, blank });
  if (shape.items !== undefined && !isPair(shape)) return h(List, { shape, path, label, blank });
  return h('div', { class: 'with-note' }, [
    h(One, { key: 'one', shape, path, label }),
    shape.description === undefined || shape.description === ''
      ? null
      : h('p', { key: 'about', class: 'note' }, shape.description),
  ]);
}

const emptyOf = ({ properties }: Shape): Plain => (properties === undefined ? '' : {});

/** One length, or a list of them where it was measured several times. */
const isSeveral = ({ anyOf, examples }: Shape): boolean =>
  anyOf?.some(({ items }) => items !== undefined) === true &&
  Array.isArray(examples?.[0]) &&
  examples[0].every((each) => typeof each !== 'object');

interface SeveralOf extends Omit<ShapeOf, 'shape'> {
  readonly about: string;
  readonly example: Plain | undefined;
}

/** Measured once or several times: with semicolons, or commas and spaces, between. */
function Several({ path, label, about, example }: SeveralOf): ComponentChild {
  const id = idOf(path);
  const value = said(path);
  const set = (typed: string): void => {
    const parts = typed
      .split(/;|,\s/u)
      .map((part) => part.trim())
      .filter((part) => part !== '')
      .map((part) => lengthTyped(part, jobUnit.value, jobUnit.value));
    const next = parts.length === 0 ? undefined : parts.length === 1 ? parts[0] : parts;
    edit([{ path, value: next }], label, `field ${id}`);
  };
  return h('div', { class: 'field given' }, [
    h('label', { key: 'label', for: id }, `${label}: one, or several with ; between`),
    h('input', {
      key: 'input',
      id,
      type: 'text',
      autoComplete: 'off',
      spellcheck: false,
      placeholder: Array.isArray(example) ? `e.g. ${example.join('; ')}` : '',
      value: Array.isArray(value) ? value.map(String).join('; ') : plainText(value),
      onChange: (event: Event) => set((event.currentTarget as HTMLInputElement).value),
    }),
    h('p', { key: 'about', class: 'note' }, about),
    h(Told, { key: 'told', path }),
  ]);
}

/** A size may be written as a list of two, which is one field here. */
const isPair = ({ examples }: Shape): boolean => typeof examples?.[0] === 'string';

const YES_NO = [
  ['', 'as usual'],
  ['true', 'yes'],
  ['false', 'no'],
] as const;

function One({ shape, path, label }: ShapeOf): ComponentChild {
  const { type, enum: words, examples = [] } = shape;
  if (words !== undefined) {
    return h(Choice, { label, path, words: [['', 'as usual'], ...words.map((word) => [word, word] as const)] });
  }
  if (type === 'boolean') {
    const now = said(path);
    return h(Choice, {
      label,
      path,
      words: YES_NO,
      now: now === undefined ? '' : String(now),
      choose: (value) => [{ path, value: value === '' ? undefined : value === 'true' }],
    });
  }
  const kind = type === 'number' || type === 'integer' ? 'count' : Array.isArray(type) ? 'length' : 'text';
  const [example] = examples;
  return h(Field, {
    label,
    path,
    kind: kind === 'text' && /size|width x height/iu.test(shape.description ?? '') ? 'length' : kind,
    ...(example === undefined
      ? {}
      : { example: typeof example === 'object' ? onOneLine(example, 'yaml') : String(example) }),
  });
}

function Group({ shape, path, label, blank = false }: ShapeOf): ComponentChild {
  return h('fieldset', { class: 'group' }, [
    h('legend', { key: 'legend' }, label),
    ...Object.entries(shape.properties ?? {}).map(([key, inner]) =>
      h(ShapeFields, { key, shape: inner, path: [...path, key], label: keyWords(key), blank }),
    ),
    h(Told, { key: 'told', path }),
  ]);
}

/** Things by their names: each opens by itself, a new one begins as an example. */
function Named({ shape, path, label }: ShapeOf): ComponentChild {
  const name = useSignal('');
  const value = said(path);
  const names = typeof value === 'object' && !Array.isArray(value) ? Object.keys(value) : [];
  const item = shape.additionalProperties as Shape;
  const add = (): void => {
    const id = name.value.trim();
    if (id === '' || names.includes(id)) return;
    if (edit([{ path: [...path, id], value: firstOf(shape) }], `${label}: ${id}`)) name.value = '';
  };
  const id = `new-${path.join('-')}`;
  return h('div', { class: 'fields' }, [
    ...names.map((each) =>
      h(Opened, { key: each, title: each }, [
        h(ShapeFields, { key: 'fields', shape: item, path: [...path, each], label: each }),
        h(
          'button',
          {
            key: 'take',
            type: 'button',
            onClick: () => edit([{ path: [...path, each], value: undefined }], `${each} taken out`),
          },
          `Take ${each} out`,
        ),
      ]),
    ),
    h('div', { key: 'new', class: 'field given' }, [
      h('label', { key: 'label', for: id }, 'Another one, by the name that jobs call it'),
      h('span', { key: 'box', class: 'box' }, [
        h('input', {
          key: 'input',
          id,
          type: 'text',
          autoComplete: 'off',
          spellcheck: false,
          value: name.value,
          onInput: (event: Event) => {
            name.value = (event.currentTarget as HTMLInputElement).value;
          },
        }),
        h('button', { key: 'add', type: 'button', onClick: add }, 'Add'),
      ]),
    ]),
    h(Told, { key: 'told', path }),
  ]);
}

/** What is in it is there only while it is open. */
export function Opened({
  title,
  level = 3,
  children,
}: {
  readonly title: string;
  readonly level?: 2 | 3;
  readonly children?: ComponentChild;
}): ComponentChild {
  const open = useSignal(false);
  return h(
    'details',
    {
      class: 'part inner',
      open: open.value,
      onToggle: (event: Event) => {
        open.value = (event.currentTarget as HTMLDetailsElement).open;
      },
    },
    [
      h('summary', { key: 'title' }, h(`h${level}`, {}, title)),
      open.value ? h('div', { key: 'in', class: 'fields' }, children) : null,
    ],
  );
}

function List({ shape, path, label, blank = false }: ShapeOf): ComponentChild {
  const value = said(path);
  const all: readonly Plain[] = Array.isArray(value) ? value : [];
  const item = shape.items ?? {};
  const add = (): void => {
    const first = blank || shape.examples === undefined ? emptyOf(item) : firstOf(shape);
    edit(
      all.length === 0 ? [{ path, value: [first] }] : [{ path: [...path, all.length], value: first }],
      `${label}: one more`,
    );
  };
  const take = (): void => {
    edit([{ path: all.length === 1 ? path : [...path, all.length - 1], value: undefined }], `${label}: the last out`);
  };
  return h('fieldset', { class: 'group' }, [
    h('legend', { key: 'legend' }, label),
    shape.description === undefined ? null : h('p', { key: 'about', class: 'note' }, shape.description),
    ...all.map((_, i) =>
      h(ShapeFields, { key: i, shape: item, path: [...path, i], label: `${label}, ${i + 1}`, blank }),
    ),
    h('div', { key: 'buttons', class: 'buttons' }, [
      h('button', { key: 'add', type: 'button', 'aria-label': `${label}: add one`, onClick: add }, 'Add one'),
      all.length === 0
        ? null
        : h(
            'button',
            { key: 'take', type: 'button', 'aria-label': `${label}: take the last out`, onClick: take },
            'Take the last out',
          ),
    ]),
    h(Told, { key: 'told', path }),
  ]);
}
