import { type ComponentChild, h } from 'preact';
import { defined } from '../../problems/defined.ts';
import type { Calibrated } from '../../shop/readings/readings.ts';
import type { JobSource, ReadingGroup, Wanted } from '../engine/answers.ts';
import { discardReadings, openShop } from '../files/desk.ts';
import { shop } from '../files/open.ts';
import { keyWords, readingsShape } from '../form/shape.ts';
import { ShapeFields } from '../form/shape-fields.ts';
import { OneTold, unplaced } from '../form/told.ts';
import { plainText } from '../form/typed.ts';
import { making, printOutput, saveOutputs } from '../out/making.ts';
import { calibration } from '../state/calibration.ts';
import { change } from '../state/history.ts';
import { open, said, text } from '../state/piece.ts';
import { saying } from '../state/place.ts';

/** A coupon is cut beside no job: any mat does. */
const ANY_MAT = 'mat: {outer: 10 x 12 in}\nopenings: [{size: 6 x 8 in}]\n';

const NONE = async (): Promise<readonly JobSource[]> => [];
const ANY = async (): Promise<readonly JobSource[]> => [
  { text: ANY_MAT, file: 'coupon.yaml', pictures: {}, ...defined({ shop: shop.value }) },
];

/** Calibrating in three steps: print or cut, type what was measured, look and accept. */
export function Readings(): ComponentChild {
  const kind = open.value!.calibrating!;
  return [
    h(
      'form',
      { key: 'form', class: 'form', 'aria-label': 'Readings', onSubmit: (event: Event) => event.preventDefault() },
      [
        h('h2', { key: 'one' }, '1. Print or cut what is measured'),
        h(Sheet, { key: 'sheet', kind }),
        h('h2', { key: 'two' }, '2. Type what was measured'),
        h('p', { key: 'unit', class: 'note' }, 'Bare numbers are millimetres here, whatever unit the page shows.'),
        ...Object.entries(readingsShape(kind).properties ?? {}).map(([key, shape]) =>
          h(ShapeFields, { key, shape, path: [key], label: keyWords(key), blank: true }),
        ),
      ],
    ),
    h('section', { key: 'outcome', class: 'calibrate', 'aria-label': 'What the readings come to' }, [
      h('h2', { key: 'three' }, '3. Look at what they come to'),
      h(Outcome, { key: 'outcome', kind }),
      h('div', { key: 'ways', class: 'buttons' }, [
        h(
          'button',
          { key: 'back', type: 'button', onClick: () => void openShop() },
          'Back to the shop, the readings kept',
        ),
      ]),
    ]),
  ];
}

const PAPER_JIGS: readonly Calibrated[] = ['printer', 'guide', 'head', 'bevel'];

function Sheet({ kind }: { readonly kind: Calibrated }): ComponentChild {
  const busy = making.value !== undefined;
  const head = plainText(said(['head']));
  const machine = plainText(said(['machine']));
  if (PAPER_JIGS.includes(kind)) {
    const wanted: Wanted = { id: 'jig', options: { kind, ...(head === '' ? {} : { head }) } };
    return h('div', { class: 'buttons' }, [
      h(
        'button',
        { key: 'print', type: 'button', disabled: busy, onClick: () => printOutput('jig', 'the sheet', wanted, NONE) },
        'Print its sheet',
      ),
      h(
        'button',
        {
          key: 'save',
          type: 'button',
          disabled: busy,
          onClick: () => saveOutputs('jig', 'the sheet', [wanted], false, NONE),
        },
        'Save it as PDF',
      ),
    ]);
  }
  const wanted: Wanted = { id: 'cutfile', options: { machine, coupon: true } };
  return h('div', { class: 'buttons' }, [
    h(
      'button',
      {
        key: 'save',
        type: 'button',
        disabled: busy || machine === '',
        onClick: () => saveOutputs('jig', 'the coupon', [wanted], false, ANY),
      },
      machine === '' ? 'Name the machine below, then save its coupon' : `Save the coupon for ${machine}`,
    ),
  ]);
}

function Outcome({ kind }: { readonly kind: Calibrated }): ComponentChild {
  const found = calibration.value;
  const told = found?.told;
  const wrong = unplaced();
  const all = wrong.map((problem, i) => h(OneTold, { key: `told ${i}`, problem, path: problem.path }));
  if (told === undefined || !told.ok) {
    return h('div', { class: 'told', role: 'status' }, [
      h('p', { key: 'none', class: 'note' }, 'Nothing yet: what is missing or wrong is said at its field.'),
      ...all,
    ]);
  }
  const { words, shopText, offer, groups } = told.value;
  // What was typed since is not in it yet.
  const behind = found?.text !== text.value || found.shop?.text !== open.value?.shop?.text;
  const accept = async (accepted: string): Promise<void> => {
    await openShop();
    void discardReadings(kind);
    change(accepted, `${kind} calibrated`);
    saying.value = `The ${kind} is calibrated; save the shop to a file.`;
  };
  return h('div', { class: 'outcome' }, [
    h('div', { key: 'told', class: 'told' }, all),
    ...groups.map((group) => h(Scatter, { key: group.name, group })),
    h(
      'ul',
      { key: 'words', class: 'words' },
      words.map((line) => h('li', { key: line }, line)),
    ),
    shopText === undefined
      ? null
      : h(
          'button',
          { key: 'accept', type: 'button', class: 'main', disabled: behind, onClick: () => void accept(shopText) },
          'Accept it into the shop',
        ),
    offer === undefined
      ? null
      : h('div', { key: 'offer', class: 'told' }, [
          h('p', { key: 'question', class: 'warning' }, offer.question),
          h(
            'button',
            { key: 'yes', type: 'button', disabled: behind, onClick: () => void accept(offer.shopText) },
            'Yes, accept that too',
          ),
        ]),
  ]);
}

const WIDE = 320;
const TALL = 56;

/** Readings on a line: their mean, the band of one standard deviation to either side, and what stands out hollow. */
function Scatter({ group }: { readonly group: ReadingGroup }): ComponentChild {
  const { name, dots, mean, scatter } = group;
  const values = dots.map(({ value }) => value);
  const reach = Math.max(0.05, ...values.map((value) => Math.abs(value - mean)), 1.5 * scatter);
  const x = (value: number): number => WIDE / 2 + ((value - mean) / reach) * (WIDE / 2 - 14);
  const out = dots.filter((dot) => dot.out).length;
  const said = `mean ${mean.toFixed(2)} mm, scatter ${scatter.toFixed(2)} mm, ${dots.length} readings${out === 0 ? '' : `, ${out} to look at`}`;
  return h('figure', { class: 'scatter' }, [
    h('figcaption', { key: 'words' }, `${keyWords(name)}: ${said}`),
    h(
      'svg',
      { key: 'picture', viewBox: `0 0 ${WIDE} ${TALL}`, role: 'img', 'aria-label': `${keyWords(name)}: ${said}` },
      [
        h('rect', {
          key: 'band',
          class: 'band',
          x: x(mean - scatter),
          y: 8,
          width: x(mean + scatter) - x(mean - scatter),
          height: TALL - 16,
        }),
        h('line', { key: 'axis', class: 'axis', x1: 4, x2: WIDE - 4, y1: TALL / 2, y2: TALL / 2 }),
        h('line', { key: 'mean', class: 'mean', x1: WIDE / 2, x2: WIDE / 2, y1: 6, y2: TALL - 6 }),
        ...dots.map(({ value, out: wild }, i) =>
          h('circle', {
            key: i,
            class: wild ? 'dot wild' : 'dot',
            cx: x(value),
            cy: TALL / 2 + ((i % 3) - 1) * 7,
            r: wild ? 7 : 4.5,
          }),
        ),
      ],
    ),
  ]);
}
