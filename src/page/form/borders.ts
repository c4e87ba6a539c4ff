import { type ComponentChild, h } from 'preact';
import { SIDES } from '../../geometry/sides.ts';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { Choice, Field, Ways } from './field.ts';
import { Part } from './part.ts';
import { Rest } from './rest.ts';
import { plainText } from './typed.ts';

const BORDER = ['mat', 'border'];
const WEIGHTING = ['mat', 'weighting'];

/** Of the mat's keys. */
const ELSEWHERE = ['outer', 'frame', 'border', 'weighting', 'layers'];

type Way = 'one' | 'sides' | 'each';

function wayOf(border: Plain | undefined): Way {
  if (typeof border !== 'object' || border === null || Array.isArray(border))
    return border === undefined ? 'sides' : 'one';
  return Object.hasOwn(border, 'left') || Object.hasOwn(border, 'right') ? 'each' : 'sides';
}

/** Borders in the way in which the text says them, or another. */
export function Borders(): ComponentChild {
  const border = said(BORDER);
  const way = wayOf(border);
  const choose = (value: string): void => {
    const one = way === 'one' ? border : undefined;
    const side = (name: string): Plain | undefined => one ?? said([...BORDER, name]) ?? said([...BORDER, 'sides']);
    const sides = said([...BORDER, 'sides']) ?? side('left');
    const maps: Readonly<Record<string, Readonly<Record<string, Plain | undefined>>>> = {
      sides: { sides, top: side('top'), bottom: weighted() ? undefined : side('bottom') },
      each: Object.fromEntries(SIDES.map((each) => [each, each === 'bottom' && weighted() ? undefined : side(each)])),
    };
    const map = Object.fromEntries(
      Object.entries(maps[value] ?? {}).flatMap(([key, each]) => (each === undefined ? [] : [[key, each]])),
    );
    const next: Plain | undefined =
      value === 'one' ? (side('top') ?? sides) : Object.keys(map).length === 0 ? undefined : map;
    wished.set(value as Way);
    edit([{ path: BORDER, value: next }], 'how borders are said');
  };
  const now = border === undefined ? (wished.get() ?? 'sides') : way;
  const words = [
    ['one', 'One for all'],
    ['sides', 'Sides, top, bottom'],
    ['each', 'Each'],
  ] as const;
  const at = (name: string) => [...BORDER, name];
  const field = (label: string, name: string, size = name) =>
    h(Field, { key: name, label, path: at(name), sizes: [`border.${size}`] });
  const fields: Readonly<Record<Way, readonly ComponentChild[]>> = {
    one: [h(Field, { key: 'all', label: 'Border', path: BORDER, sizes: ['border.left'], example: '2 3/4' })],
    sides: [field('Sides', 'sides', 'left'), field('Top', 'top'), field('Bottom', 'bottom')],
    each: [field('Left', 'left'), field('Right', 'right'), field('Top', 'top'), field('Bottom', 'bottom')],
  };
  return h(Part, { title: 'Borders', open: true }, [
    h(Ways, { key: 'way', label: 'Borders are', words, now, choose }),
    h('div', { key: 'fields', class: 'fields pair' }, fields[now]),
    h(Weighting, { key: 'weighting' }),
    h(Rest, { key: 'rest', title: 'More of the borders', path: ['mat'], but: ELSEWHERE }),
  ]);
}

/** The way to say borders while the text says none. */
const wished = (() => {
  let way: Way | undefined;
  return {
    get: () => way,
    set: (next: Way) => {
      way = next;
    },
  };
})();

const weighted = (): boolean => ![undefined, 'none'].includes(said(WEIGHTING) as string | undefined);

const KINDS = [
  ['none', 'none'],
  ['add', 'so much more at the bottom'],
  ['ratio', 'bottom so many times the top'],
  ['diagonal', 'by the diagonal'],
] as const;

function Weighting(): ComponentChild {
  const value = said(WEIGHTING);
  const kind =
    typeof value === 'object'
      ? (KINDS.find(([each]) => Object.hasOwn(value, each))?.[0] ?? 'none')
      : plainText(value) || 'none';
  const values: Readonly<Record<string, Plain | undefined>> = {
    none: undefined,
    add: { add: '1/2 in' },
    ratio: { ratio: '4/3' },
    diagonal: 'diagonal',
  };
  return h('div', { class: 'fields' }, [
    h(Choice, {
      key: 'kind',
      label: 'Weighting',
      path: WEIGHTING,
      words: KINDS,
      now: kind,
      choose: (next) => [{ path: WEIGHTING, value: values[next] }],
    }),
    kind === 'add' || kind === 'ratio'
      ? h(Field, {
          key: 'much',
          label: kind === 'add' ? 'More at the bottom' : 'Bottom, times the top',
          path: [...WEIGHTING, kind],
          kind: kind === 'add' ? 'length' : 'text',
        })
      : null,
  ]);
}
