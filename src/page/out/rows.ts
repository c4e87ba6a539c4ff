import type { OutputOptions } from '../../outputs/options.ts';
import type { OutputId } from '../../outputs/records.ts';

/** An output as the page offers it: what it is for, and the formats that it is saved in. */
export interface Row {
  readonly key: string;
  readonly id: OutputId;
  readonly title: string;
  readonly about: string;
  readonly options: OutputOptions;
  readonly formats: readonly string[];
  /** Goes on paper, so that it can be printed from here. */
  readonly prints: boolean;
}

const DOCUMENT = ['pdf', 'svg'] as const;

const PAPERS: readonly Row[] = [
  {
    key: 'pattern',
    id: 'pattern',
    title: 'Pattern',
    about: 'full scale, for the back of the board; the first sheet checks the printer',
    options: {},
    formats: [...DOCUMENT, 'tiles'],
    prints: true,
  },
  {
    key: 'ticket',
    id: 'ticket',
    title: 'Bench ticket',
    about: 'every number in the order of the work',
    options: {},
    formats: DOCUMENT,
    prints: true,
  },
  {
    key: 'proof',
    id: 'proof',
    title: 'Proof',
    about: 'in colour and to scale, for the customer to sign',
    options: {},
    formats: DOCUMENT,
    prints: true,
  },
  {
    key: 'placement',
    id: 'placement',
    title: 'Placement',
    about: 'where the artwork and its hinges go on the backing',
    options: {},
    formats: DOCUMENT,
    prints: true,
  },
  {
    key: 'labels',
    id: 'labels',
    title: 'Labels',
    about: 'stickers for blanks and backs',
    options: {},
    formats: DOCUMENT,
    prints: true,
  },
  {
    key: 'blanks',
    id: 'blanks',
    title: 'List of blanks',
    about: 'every blank by board, with stops',
    options: {},
    formats: DOCUMENT,
    prints: true,
  },
  {
    key: 'stock',
    id: 'stock',
    title: 'Stock plan',
    about: 'the blanks on sheets of board, cut by cut',
    options: {},
    formats: DOCUMENT,
    prints: true,
  },
  {
    key: 'intake',
    id: 'intake',
    title: 'Intake form',
    about: 'to take the job in with the customer',
    options: {},
    formats: DOCUMENT,
    prints: true,
  },
];

const KINDS = ['laser', 'knife', 'bevel'] as const;

/** All that can come out of a piece: the papers, and a file for each machine of the shop, or for each kind of machine. */
export function rows(machines: readonly string[]): readonly Row[] {
  const named = machines.length > 0 ? machines : KINDS;
  return [
    ...PAPERS,
    ...named.map(
      (machine): Row => ({
        key: `cutfile ${machine}`,
        id: 'cutfile',
        title: `Cut file: ${machine}`,
        about:
          machines.length > 0
            ? 'for this machine of the shop'
            : 'with usual settings, since the shop’s file names no machine',
        options: { machine },
        formats: ['svg', 'dxf', 'hpgl'],
        prints: false,
      }),
    ),
  ];
}
