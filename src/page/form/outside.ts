import { type ComponentChild, h } from 'preact';
import { edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { Choice, Field, Ways } from './field.ts';
import { Part } from './part.ts';
import { Rest } from './rest.ts';
import { plainText } from './typed.ts';

const FRAME = ['mat', 'frame'];
const OUTER = ['mat', 'outer'];

/** What the mat is for: a frame, or a size of its own. */
export function Outside(): ComponentChild {
  const frame = said(FRAME);
  const framed = frame !== undefined;
  const choose = (value: string): void => {
    const size = plainText(said(framed ? [...FRAME, 'inside'] : OUTER));
    const set = size === '' ? undefined : size;
    if (value === 'frame')
      edit(
        [
          { path: OUTER, value: undefined },
          { path: FRAME, value: { inside: set ?? '16 x 20' } },
        ],
        'for a frame',
      );
    else
      edit(
        [
          { path: FRAME, value: undefined },
          { path: OUTER, value: set },
        ],
        'a mat by its own size',
      );
  };
  const words = [
    ['mat', 'A mat by itself'],
    ['frame', 'A frame'],
  ] as const;
  return h(Part, { title: 'What it is for', open: true }, [
    h(Ways, { key: 'for', label: 'It is for', words, now: framed ? 'frame' : 'mat', choose }),
    framed
      ? h(FrameFields, { key: 'frame' })
      : h(Field, {
          key: 'outer',
          label: 'Outer size',
          path: OUTER,
          sizes: ['outer.width', 'outer.height'],
          example: '16 x 20',
        }),
  ]);
}

/** Of the frame's keys. */
const OWN = ['inside', 'nominal', 'ready', 'clearance', 'lip', 'width'];

function FrameFields(): ComponentChild {
  const at = (key: string) => [...FRAME, key];
  if (typeof said(FRAME) === 'string') return h(Field, { label: 'Ready-made frame', path: FRAME, kind: 'text' });
  const kind = ['nominal', 'ready'].find((key) => said(at(key)) !== undefined) ?? 'inside';
  const words = [
    ['inside', 'measured in the rebate'],
    ['nominal', 'as it is sold'],
    ['ready', 'a frame of the shop'],
  ] as const;
  const choose = (next: string) =>
    [
      { path: at(kind), value: undefined },
      { path: at(next), value: plainText(said(at(kind))) || '16 x 20' },
    ].reverse();
  return h('div', { class: 'fields' }, [
    h(Choice, { key: 'kind', label: 'Its size is', path: at('kind'), words, now: kind, choose }),
    h(Field, {
      key: 'size',
      label: 'Frame',
      path: at(kind),
      ...(kind === 'ready' ? { kind: 'text' as const } : {}),
      example: '16 x 20',
    }),
    kind === 'inside'
      ? h(Field, { key: 'clearance', label: 'Clearance over all', path: at('clearance'), usual: '1/8 in or 3 mm' })
      : null,
    h(Field, { key: 'lip', label: 'Lip', path: at('lip'), usual: '1/4 in or 6 mm' }),
    h(Field, { key: 'width', label: 'Width of the moulding', path: at('width'), usual: 'as an example' }),
    h('p', { key: 'outer', class: 'note' }, 'The mat’s outer size follows: frame less clearance.'),
    h(Rest, { key: 'rest', title: 'More of the frame', path: FRAME, but: OWN }),
  ]);
}
