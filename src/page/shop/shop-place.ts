import { type ComponentChild, h } from 'preact';
import { CALIBRATED, type Calibrated } from '../../shop/readings/readings.ts';
import { openReadings } from '../files/desk.ts';
import { sectionShape } from '../form/shape.ts';
import { Opened, ShapeFields } from '../form/shape-fields.ts';
import { Unplaced } from '../form/told.ts';
import { open, problems } from '../state/piece.ts';
import { Readings } from './readings.ts';

/** Sections of the shop's file in the order in which one would tell them; every other one follows. */
const SECTIONS = [
  ['boards', 'Boards'],
  ['guide', 'Guide'],
  ['heads', 'Heads'],
  ['printers', 'Printers'],
  ['machines', 'Machines'],
  ['prices', 'Prices'],
  ['mouldings', 'Mouldings'],
  ['frames', 'Ready-made frames'],
  ['glazing', 'Glazing'],
  ['backing', 'Backing'],
  ['shelf', 'Shelf of offcuts'],
  ['stock', 'Breaking sheets down'],
  ['papers', 'Papers of its own'],
  ['sizes', 'Outer sizes it likes'],
  ['shop', 'Name and address'],
  ['make', 'What is made of a job'],
] as const;

const KINDS: Readonly<Record<Calibrated, string>> = {
  printer: 'Printer',
  guide: 'Guide',
  head: 'Head',
  bevel: 'Bevel',
  laser: 'Laser, by its coupon',
  knife: 'Drag knife, by its coupon',
  'bevel-coupon': 'Bevel head of a machine, by its coupon',
};

/** The shop as forms, and its tools calibrated step by step. */
export function ShopPlace(): ComponentChild {
  if (open.value?.of === 'readings') return h(Readings, {});
  return [
    h(
      'form',
      { key: 'form', class: 'form', 'aria-label': 'The shop', onSubmit: (event: Event) => event.preventDefault() },
      [
        h(Unplaced, { key: 'unplaced' }),
        ...SECTIONS.map(([name, title]) =>
          h(
            Opened,
            { key: name, level: 2, title: `${title}${wrongIn(name) ? ' (look here)' : ''}` },
            h(ShapeFields, { shape: sectionShape(name), path: [name], label: title }),
          ),
        ),
      ],
    ),
    h('section', { key: 'calibrate', class: 'calibrate', 'aria-label': 'Calibrate' }, [
      h('h2', { key: 'title' }, 'Calibrate'),
      h(
        'p',
        { key: 'words', class: 'note' },
        'First the printer, then the guide, then a head: each is read with the ones before. Print its sheet, measure, type the readings; nothing is written before you accept it.',
      ),
      h(
        'ul',
        { key: 'kinds', class: 'kinds' },
        CALIBRATED.map((kind) =>
          h(
            'li',
            { key: kind },
            h('button', { type: 'button', onClick: () => void openReadings(kind, begun(kind)) }, KINDS[kind]),
          ),
        ),
      ),
    ]),
  ];
}

const begun = (kind: Calibrated): string => `# Readings: ${KINDS[kind]}\n`;

const wrongIn = (section: string): boolean =>
  problems.value.some(({ path, severity }) => severity === 'error' && path[0] === section);
