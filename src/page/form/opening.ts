import { type ComponentChild, h } from 'preact';
import type { Plain } from '../../read/edit/yaml-print.ts';
import type { Field as ShapeField } from '../../shapes/shape.ts';
import { SHAPE_KINDS, SHAPES, type ShapeKind } from '../../shapes/shapes.ts';
import type { Edit } from '../state/edit.ts';
import { edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { BySides } from './by-sides.ts';
import { Decoration } from './decoration.ts';
import { Choice, Field, Ways } from './field.ts';
import { PictureField } from './picture-field.ts';
import { Rest } from './rest.ts';
import { plainText } from './typed.ts';

const shapeWords = SHAPE_KINDS.map((kind) => [kind, kind.replace('-', ' ')] as const);
/** Of an opening's keys; a shape's are there with that shape. */
const OWN = [
  ...['name', 'shape', 'artwork', 'size', 'overlap', 'float', 'place', 'lines', 'picture'],
  ...SHAPE_KINDS.flatMap((kind) => Object.keys(SHAPES[kind].fields)),
];
const fieldsOf = (kind: ShapeKind): Readonly<Record<string, ShapeField>> => SHAPES[kind].fields;

export function OpeningFields({
  index,
  several,
}: {
  readonly index: number;
  readonly several: boolean;
}): ComponentChild {
  const at = (...steps: readonly string[]) => ['openings', index, ...steps];
  const shape =
    SHAPE_KINDS.find((kind) => kind === said(at('shape'))) ??
    (said(at('outline')) === undefined ? 'rectangle' : 'outline');
  const name = `openings[${index}]`;
  const art =
    said(at('artwork')) !== undefined || (said(at('size')) === undefined && said(at('overlap')) !== undefined);
  const floats = said(at('float')) !== undefined;
  const chooseWhat = (value: string): void => {
    const size = plainText(said(at(art ? 'artwork' : 'size'))) || '8 x 10 in';
    if (value === 'artwork')
      edit(
        [
          { path: at('artwork'), value: size },
          { path: at('size'), value: undefined },
        ],
        'sized by its artwork',
      );
    else
      edit(
        [
          { path: at('size'), value: size },
          ...['artwork', 'overlap', 'float'].map((key) => ({ path: at(key), value: undefined })),
        ],
        'sized by itself',
      );
  };
  const chooseEdge = (value: string): void => {
    const [from, to] = value === 'float' ? ['overlap', 'float'] : ['float', 'overlap'];
    const amount = plainText(said(at(from!))) || '1/4 in';
    edit(
      [
        { path: at(from!), value: undefined },
        { path: at(to!), value: amount },
      ],
      value === 'float' ? 'the artwork floats' : 'the mat overlaps',
    );
  };
  return h('div', { class: 'fields' }, [
    several ? h(Field, { key: 'name', label: 'Name', path: at('name'), kind: 'text' }) : null,
    h(Ways, {
      key: 'what',
      label: 'Its size comes from',
      words: [
        ['artwork', 'the artwork'],
        ['size', 'the opening itself'],
      ],
      now: art ? 'artwork' : 'size',
      choose: chooseWhat,
    }),
    art
      ? h(Field, {
          key: 'artwork',
          label: 'Artwork',
          path: at('artwork'),
          sizes: [`${name}.artwork.width`, `${name}.artwork.height`],
          example: '10 1/2 x 13 1/2',
        })
      : h(Field, {
          key: 'size',
          label: 'Opening',
          path: at('size'),
          sizes: [`${name}.opening.width`, `${name}.opening.height`],
          example: '10 x 13',
        }),
    art
      ? h(Ways, {
          key: 'edge',
          label: 'Edge of the artwork',
          words: [
            ['overlap', 'under the mat'],
            ['float', 'floats, seen'],
          ],
          now: floats ? 'float' : 'overlap',
          choose: chooseEdge,
        })
      : null,
    art
      ? floats
        ? h(BySides, { key: 'float', label: 'Shown around it', path: at('float'), first: '1/4 in' })
        : h(BySides, {
            key: 'overlap',
            label: 'Overlap',
            path: at('overlap'),
            sizes: [`${name}.overlap.left`],
            first: '1/4 in',
          })
      : null,
    h(Choice, {
      key: 'shape',
      label: 'Shape',
      path: at('shape'),
      words: shapeWords,
      now: shape,
      choose: (kind) => shapeEdits(index, shape, kind as ShapeKind),
    }),
    ...Object.entries(fieldsOf(shape)).map(([key, field]) => shapeField(key, field, at(key))),
    several ? h(Place, { key: 'place', index }) : null,
    h(Decoration, { key: 'lines', index }),
    art ? h(PictureField, { key: 'picture', index }) : null,
    h(Rest, { key: 'rest', title: 'More of the opening', path: at(), but: OWN }),
  ]);
}

function shapeField(key: string, field: ShapeField, path: readonly (string | number)[]): ComponentChild {
  const label = `${key.charAt(0).toUpperCase()}${key.slice(1)}`;
  switch (field.kind) {
    case 'choice':
      return h(Choice, {
        key,
        label,
        path,
        words: field.words.map((word) => [word, word] as const),
        now: plainText(said(path)) || field.usual,
      });
    case 'length':
      return h(Field, { key, label, path, usual: 'as usual', example: field.examples[0] ?? '' });
    case 'count':
      return h(Field, {
        key,
        label,
        path,
        kind: 'count',
        ...(field.usual === undefined ? {} : { usual: String(field.usual) }),
      });
    case 'outline':
      return h(Field, { key, label: 'Outline, as path data', path, kind: 'text', example: field.examples[0] ?? '' });
    default: {
      const never: never = field;
      throw new TypeError(`unknown field ${JSON.stringify(never)}`);
    }
  }
}

/** Another shape brings what it needs and leaves behind what only the old one has. */
function shapeEdits(index: number, from: ShapeKind, to: ShapeKind): readonly Edit[] {
  const [old, next] = [fieldsOf(from), fieldsOf(to)];
  const at = (key: string) => ['openings', index, key];
  const gone = Object.keys(old).filter((key) => next[key] === undefined && said(at(key)) !== undefined);
  const needed = Object.entries(next).flatMap(([key, field]): Edit[] => {
    const usual = field.kind === 'outline' ? undefined : field.usual;
    if (usual !== undefined || said(at(key)) !== undefined || field.kind === 'choice') return [];
    const [example] = field.examples;
    return example === undefined ? [] : [{ path: at(key), value: example }];
  });
  return [
    ...gone.map((key): Edit => ({ path: at(key), value: undefined })),
    { path: at('shape'), value: to === 'rectangle' ? undefined : to },
    ...needed,
  ];
}

const PLACES = [
  ['rows', 'in the rows'],
  ['place', 'its own place'],
  ['below', 'below another'],
] as const;

/** What the one before it is called, or the one behind the first. */
const another = (index: number): string => {
  const other = index === 0 ? 1 : index - 1;
  return plainText(said(['openings', other, 'name'])) || `opening ${other + 1}`;
};

function Place({ index }: { readonly index: number }): ComponentChild {
  const at = (...steps: readonly string[]) => ['openings', index, 'place', ...steps];
  const own = said(at()) !== undefined;
  const below = said(at('below')) !== undefined;
  const choose = (value: string): void => {
    const next: Readonly<Record<string, Plain>> = {
      place: { left: '2 in', top: '2 in' },
      below: { below: another(index), gap: '1 in' },
    };
    edit([{ path: at(), value: next[value] }], 'where it lies');
  };
  const side = (label: string, key: string) => h(Field, { key, label, path: at(key), usual: 'centred' });
  return h('div', { class: 'fields' }, [
    h(Ways, { key: 'way', label: 'It lies', words: PLACES, now: below ? 'below' : own ? 'place' : 'rows', choose }),
    own && below ? h(Field, { key: 'below', label: 'Below', path: at('below'), kind: 'text' }) : null,
    own && below ? h(Field, { key: 'gap', label: 'Gap', path: at('gap') }) : null,
    own && !below
      ? h('div', { key: 'sides', class: 'fields pair' }, [
          said(at('right')) === undefined ? side('From the left', 'left') : side('From the right', 'right'),
          said(at('bottom')) === undefined ? side('From the top', 'top') : side('From the bottom', 'bottom'),
        ])
      : null,
  ]);
}
