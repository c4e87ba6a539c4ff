import { type ComponentChild, h } from 'preact';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { type Edit, edit } from '../state/edit.ts';
import { type Path, piece, said } from '../state/piece.ts';
import { BySides } from './by-sides.ts';
import { Choice, Field } from './field.ts';
import { Part } from './part.ts';
import { Rest } from './rest.ts';
import { Told } from './told.ts';
import { plainText } from './typed.ts';

const LAYERS = ['mat', 'layers'];

export function Layers(): ComponentChild {
  const layers = said(LAYERS);
  const count = Array.isArray(layers) ? layers.length : 1;
  const add = (): void => {
    const like: Plain = { board: { name: 'Slate', thickness: '1.4 mm', colour: '#5c6670' }, reveal: '1/4 in' };
    const [other] = (piece.value?.boards ?? []).slice(count);
    const layer: Plain = other === undefined ? like : { board: other.id, reveal: '1/4 in' };
    const first: Plain = { board: { name: 'Bone', thickness: '1.4 mm', colour: '#efe9dc' } };
    const next = Array.isArray(layers)
      ? { path: [...LAYERS, count], value: layer }
      : { path: LAYERS, value: [first, layer] };
    edit([next], 'another mat below');
  };
  const take = (): void => {
    edit([{ path: [...LAYERS, count - 1], value: undefined }], 'the lowest mat taken out');
  };
  return h(Part, { title: count > 1 ? `Layers (${count})` : 'Board', open: true }, [
    ...Array.from({ length: count }, (_, i) => h(Layer, { key: `layer ${i}`, index: i, alone: count === 1 })),
    h('div', { key: 'buttons', class: 'buttons' }, [
      h('button', { key: 'add', type: 'button', onClick: add }, 'Add a mat below'),
      count > 1 ? h('button', { key: 'take', type: 'button', onClick: take }, 'Take the lowest out') : null,
    ]),
  ]);
}

const nameOf = (index: number): string => (index === 0 ? 'Top mat' : `Under mat ${index}`);

function Layer({ index, alone }: { readonly index: number; readonly alone: boolean }): ComponentChild {
  const at = (...steps: readonly string[]) => [...LAYERS, index, ...steps];
  const board = said(at('board'));
  const inPlace = typeof board === 'object';
  const boards = piece.value?.boards ?? [];
  return h('fieldset', { class: 'group' }, [
    h('legend', { key: 'legend' }, alone ? 'Board' : nameOf(index)),
    boards.length === 0
      ? null
      : h(
          'div',
          { key: 'boards', class: 'swatches', role: 'group', 'aria-label': `Boards of the shop for ${nameOf(index)}` },
          boards.map(({ id, name, colour }) =>
            h(
              'button',
              {
                key: id,
                type: 'button',
                'aria-pressed': board === id,
                onClick: () => edit([{ path: at('board'), value: id }], `${nameOf(index)}: ${name}`),
              },
              [h(Swatch, { key: 'colour', colour }), name],
            ),
          ),
        ),
    inPlace || boards.length === 0
      ? h('div', { key: 'own', class: 'fields pair' }, [
          h(Field, {
            key: 'name',
            label: 'Board',
            path: inPlace ? at('board', 'name') : at('board'),
            kind: 'text',
            usual: '4-ply board',
          }),
          inPlace ? h(Field, { key: 'thickness', label: 'Thickness', path: at('board', 'thickness') }) : null,
          inPlace ? h(Colour, { key: 'colour', index }) : null,
        ])
      : null,
    index > 0
      ? h(BySides, {
          key: 'reveal',
          label: 'Reveal',
          path: at('reveal'),
          sizes: [`reveals[${index}]`],
          first: '1/4 in',
        })
      : null,
    index > 0 ? h(Field, { key: 'trim', label: 'Trim-back', path: at('trimBack'), usual: 'as usual' }) : null,
    h(Bevel, { key: 'bevel', path: at('bevel') }),
    inPlace ? h(Rest, { key: 'rest of it', title: 'More of this board', path: at('board'), but: IN_PLACE }) : null,
    h(Rest, { key: 'rest', title: 'More of this layer', path: at(), but: OWN }),
    h(Told, { key: 'told', path: at() }),
  ]);
}

/** Keys that have fields of their own, of a board in place and of a layer. */
const IN_PLACE = ['name', 'thickness', 'colour'];
const OWN = ['board', 'bevel', 'reveal', 'trimBack'];

/** Its angle, and which way it leans: a reverse one shows its slope at the back. */
function Bevel({ path }: { readonly path: Path }): ComponentChild {
  const value = said(path);
  const map = typeof value === 'object';
  const angle = map ? said([...path, 'angle']) : value;
  const reverse = map && said([...path, 'reverse']) === true;
  const lean = (next: string): readonly Edit[] => {
    const reversed: Plain = { ...(angle === undefined ? {} : { angle }), reverse: true };
    return [{ path, value: next === 'reverse' ? reversed : angle }];
  };
  return h('div', { class: 'fields pair' }, [
    h(Field, {
      key: 'angle',
      label: 'Bevel, degrees',
      path: map ? [...path, 'angle'] : path,
      kind: 'count',
      usual: 'as the head cuts',
    }),
    h(Choice, {
      key: 'lean',
      label: 'The slope shows',
      path: [...path, 'reverse'],
      words: [
        ['', 'on the face'],
        ['reverse', 'on the back: reverse bevel'],
      ],
      now: reverse ? 'reverse' : '',
      choose: lean,
    }),
  ]);
}

/** A board's colour; an element of SVG, since the policy of the page allows no styles in the markup. */
const Swatch = ({ colour }: { readonly colour: string }): ComponentChild =>
  h(
    'svg',
    { class: 'swatch', viewBox: '0 0 1 1', 'aria-hidden': 'true' },
    h('rect', { width: 1, height: 1, fill: colour }),
  );

function Colour({ index }: { readonly index: number }): ComponentChild {
  const path = [...LAYERS, index, 'board', 'colour'];
  const id = `colour-${index}`;
  return h('div', { class: 'field given' }, [
    h('label', { key: 'label', for: id }, 'Colour'),
    h('input', {
      key: 'input',
      id,
      type: 'color',
      value: plainText(said(path)) || '#f4f1e8',
      onInput: (event: Event) => edit([{ path, value: (event.currentTarget as HTMLInputElement).value }], 'colour', id),
    }),
    h(Told, { key: 'told', path }),
  ]);
}
