import type { BenchJob } from '../../bench/bench-job.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { defined } from '../../problems/defined.ts';
import { showDay } from '../../read/fields/day.ts';
import { money, type PriceList } from '../../stock/prices.ts';
import { showSize } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { length, sides, size } from '../proof/words.ts';
import { fine } from '../words/fine.ts';

/** A line to write on, words to tick, or the figure in which the artwork is measured. */
export type Field =
  | { readonly kind: 'line'; readonly label: string; readonly value?: string }
  | {
      readonly kind: 'choice';
      readonly label: string;
      readonly options: readonly { readonly word: string; readonly chosen: boolean }[];
    }
  | { readonly kind: 'measure' };

export interface FieldGroup {
  readonly title: string;
  readonly fields: readonly Field[];
}

const line = (label: string, value?: string): Field => ({
  kind: 'line',
  label,
  ...defined({ value: value === undefined || value === '' ? undefined : value }),
});

/** `of` names the option that is ticked; nothing is where the job is not known. */
const choice = (label: string, words: readonly string[], ...of: readonly (string | undefined)[]): Field => ({
  kind: 'choice',
  label,
  options: words.map((word) => ({ word, chosen: of.includes(word) })),
});

/** Boards that the form has room for, whatever the job has. */
const LEAST_BOARDS = 3;

/**
 * The fields of the form, the same for an empty one and for one filled in from a job; a job of more layers or works has
 * a line more for each.
 */
export function intakeFields(work: BenchJob | undefined, units: Units, prices?: PriceList): readonly FieldGroup[] {
  const paid = paidWords(prices);
  const { job, mat } = work ?? {};
  return [
    {
      title: 'Customer',
      fields: [
        line('Name', job?.customer),
        line('Telephone or mail'),
        line('Job number', work?.number),
        line('Date, and wanted by', job?.due === undefined ? undefined : showDay(job.due)),
        line('How many alike', job === undefined ? undefined : `${job.count}`),
      ],
    },
    {
      title: 'The work',
      fields: [
        line('Title', job?.title),
        line('What it is, on what'),
        { kind: 'measure' },
        ...artLines(mat, units),
        line('Thickness with support', job?.mat.frame?.art === undefined ? undefined : fine(job.mat.frame.art)),
        line('Clear of the signature'),
        line('Clear of the plate mark'),
        line('Condition, value'),
        choice('May it be', ['hinged', 'trimmed', 'ask a conservator']),
      ],
    },
    { title: 'Mat', fields: mat === undefined || job === undefined ? matFields() : filledMatFields(mat, job) },
    {
      title: 'Frame',
      fields: [
        line('Frame or moulding', job?.mat.frame?.name),
        line('Inside, in the rebate', frameSize(job)),
        line('Glazing', job?.mat.frame?.glazing?.name),
        line('Backing', job?.mat.frame?.backing?.name),
        line('Hangs by'),
      ],
    },
    {
      title: 'Agreed',
      fields: [
        line('Price', paid.price),
        line('Deposit', paid.deposit),
        line('Balance', paid.balance),
        line('Customer’s initials'),
        line('Our initials'),
      ],
    },
  ];
}

/** What all of the job costs, what was paid, what is left. */
export function paidWords(
  prices: PriceList | undefined,
): Readonly<Partial<Record<'price' | 'deposit' | 'balance', string>>> {
  if (prices === undefined) return {};
  const { total, all, deposit, balance } = prices;
  const whole = all?.total ?? total;
  const said = (amount: number | undefined) => (amount === undefined ? undefined : money(amount, prices));
  return defined({ price: said(whole), deposit: said(deposit), balance: said(balance) });
}

function artLines(mat: Mat | undefined, units: Units): readonly Field[] {
  const art = mat?.openings.flatMap(({ artwork }) => (artwork === undefined ? [] : [size(artwork.size, units)])) ?? [];
  const label = (i: number): string => (i === 0 ? 'The smaller counts' : `Work ${i + 1}`);
  return art.length === 0 ? [line(label(0))] : art.map((text, i) => line(label(i), text));
}

const COVERS = ['covered by the mat', 'floated'] as const;
const BEVELS = ['bevel', 'reverse', 'square'] as const;
const WEIGHTS = ['even', 'more below'] as const;

function matFields(): readonly Field[] {
  return [
    choice('The edges are', COVERS),
    line('By how much'),
    line('Mat outside'),
    choice('Borders', WEIGHTS),
    line('Top, sides, bottom'),
    ...boardLines([]),
    choice('Cut', BEVELS),
    line('Shape of the opening'),
    line('Lines, lettering'),
  ];
}

function filledMatFields(mat: Mat, job: Job): readonly Field[] {
  const { units } = job;
  const art = mat.openings.flatMap(({ artwork }) => (artwork === undefined ? [] : [artwork]));
  const first = art[0];
  const margin = first === undefined ? undefined : sides(absolute(first.overlap), units);
  const { bevel } = mat.layers[0]!;
  const cut = bevel.angle === 90 ? 'square' : bevel.reverse ? 'reverse' : 'bevel';
  const shapes = [...new Set(mat.openings.map(({ shape }) => shape))].join(', ');
  const count = mat.openings.length === 1 ? shapes : `${mat.openings.length} openings: ${shapes}`;
  const lines = job.openings.flatMap(({ decor }) => decor ?? []);
  const said = [
    ...lines.map(({ kind, distance, sides: along }) => {
      const where = along === undefined ? '' : ` along ${along.join(' and ')}`;
      return `${kind} ${length(distance, units)} outside${where}`;
    }),
    ...(job.lettering ?? []).map(({ text }) => `lettering ${text}`),
  ].join(', ');
  return [
    choice('The edges are', COVERS, first === undefined ? undefined : first.floated ? COVERS[1] : COVERS[0]),
    line('By how much', margin),
    line('Mat outside', size(mat.outer, units)),
    choice('Borders', WEIGHTS, mat.border.bottom - mat.border.top > 0.01 ? WEIGHTS[1] : WEIGHTS[0]),
    line('Top, sides, bottom', sides(mat.border, units)),
    ...boardLines(
      mat.layers.map(({ board }, i) => {
        const reveal =
          mat.openings.length === 1 && i > 0 ? `, reveal ${sides(mat.openings[0]!.layers[i]!.reveal, units)}` : '';
        return `${board.name}, ${fine(board.thickness)}${reveal}`;
      }),
    ),
    choice('Cut', BEVELS, cut),
    line('Shape of the opening', count),
    line('Lines, lettering', said),
  ];
}

const boardLines = (boards: readonly string[]): readonly Field[] =>
  Array.from({ length: Math.max(LEAST_BOARDS, boards.length) }, (_, i) =>
    line(i === 0 ? 'Top mat' : `Under mat ${i}, reveal`, boards[i]),
  );

const absolute = (by: {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}) => ({
  top: Math.abs(by.top),
  right: Math.abs(by.right),
  bottom: Math.abs(by.bottom),
  left: Math.abs(by.left),
});

function frameSize(job: Job | undefined): string | undefined {
  const { inside, nominal } = job?.mat.frame ?? {};
  if (job === undefined || (inside === undefined && nominal === undefined)) return undefined;
  const text = fraction(showSize(inside ?? nominal!, job.units));
  return inside === undefined ? `${text}, nominal` : text;
}
