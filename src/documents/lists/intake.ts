import type { BenchJob } from '../../bench/bench-job.ts';
import type { Drawing, Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { defined } from '../../problems/defined.ts';
import { showDay } from '../../read/fields/day.ts';
import type { Margined } from '../../settle/settled.ts';
import type { PriceList } from '../../stock/prices.ts';
import { type Block, beside, moved, padded, stacked } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import { boxItem, rule } from '../../text/figures.ts';
import { capHeight } from '../../text/line.ts';
import { fittedLine, level, line, paragraph, type TextBlock } from '../../text/paragraph.ts';
import { runsBlock, tickBlock } from '../../text/signs.ts';
import { BOLD, FINE, TEXT } from '../../text/styles.ts';
import type { Units } from '../../units/units.ts';
import { benchArea, listedSheets } from '../bench-page.ts';
import { letterheadBlock, type ShownLetterhead } from '../words/letterhead-block.ts';
import { type Field, intakeFields, paidWords } from './intake-fields.ts';

const UNIT_NAMES: Readonly<Record<Units, string>> = { in: 'inches', mm: 'millimetres', cm: 'centimetres' };

/** Room for a line written by hand. */
const ROW = 6.6;
const ABOVE = 2;
const LABEL = 36;

export interface IntakeOptions {
  readonly paper: Margined;
  readonly fonts: Fonts;
  /** Of the shop. */
  readonly letterhead?: ShownLetterhead;
  readonly prices?: PriceList;
}

/** The form in which a job is taken in with the customer; with a job its fields are filled as far as the job knows. */
export function intakeSheets(
  work: BenchJob | undefined,
  units: Units,
  { paper, fonts, letterhead, prices }: IntakeOptions,
): readonly Drawing[] {
  const entries = intakeFields(work, units, prices).flatMap(({ title, fields }): readonly Entry[] => [
    { kind: 'section', text: title },
    ...fields.map((field): Entry => ({ kind: 'figure', make: (width) => fieldBlock(field, width, fonts) })),
  ]);
  const title = work === undefined ? 'Intake' : `${work.job.title}, intake`;
  const intro = `Lengths in ${UNIT_NAMES[units]}; width × height, seen from the face`;
  return listedSheets({
    title,
    name: 'Intake',
    intro,
    group: 'intake',
    entries,
    jobs: work === undefined ? [] : [work],
    paper,
    fonts,
    foot: claimStub(work, { letterhead, prices }, benchArea(paper).width, fonts),
    ...defined({ aside: letterhead && letterheadBlock(letterhead, letterhead.shown === undefined ? 60 : 80, fonts) }),
  });
}

/** What the customer takes along: torn off along the dashes, it says whose it is, what was left, and what is still to be paid. */
function claimStub(
  work: BenchJob | undefined,
  {
    letterhead,
    prices,
  }: Partial<Record<'letterhead', ShownLetterhead | undefined> & Record<'prices', PriceList | undefined>>,
  width: number,
  fonts: Fonts,
): Block {
  const { price, deposit, balance } = paidWords(prices);
  const half = (width - 8) / 2;
  const due = work?.job.due;
  const left = [
    lineBlock('Job number', work?.number, half, fonts),
    lineBlock('Customer', work?.job.customer, half, fonts),
    lineBlock('What was left', work?.job.title, half, fonts),
  ];
  const right = [
    lineBlock('Ready by', due === undefined ? undefined : showDay(due), half, fonts),
    lineBlock('Price', price, half, fonts),
    lineBlock('Deposit, balance', deposit && [deposit, balance].filter(Boolean).join(', '), half, fonts),
  ];
  const head = level([
    [0, line('Claim stub', BOLD, fonts)],
    [
      half + 8,
      fittedLine(
        letterhead === undefined ? '' : [letterhead.name, ...letterhead.address].join(', '),
        half,
        FINE,
        fonts,
      ),
    ],
  ]);
  const columns = beside(stacked(left, 0), stacked(right, 0), 8);
  const body = padded(stacked([head, columns], 1), 4);
  return { ...body, items: [rule('hidden', 0, width, 0), ...body.items] };
}

function fieldBlock(field: Field, width: number, fonts: Fonts): Block {
  switch (field.kind) {
    case 'line':
      return lineBlock(field.label, field.value, width, fonts);
    case 'choice':
      return choiceBlock(field.label, field.options, width, fonts);
    case 'measure':
      return measureBlock(width, fonts);
    default: {
      const never: never = field;
      return never;
    }
  }
}

/** The label, and a line behind it; what is filled in stands on the line, and on more of them where it is long. */
function lineBlock(label: string, value: string | undefined, width: number, fonts: Fonts): Block {
  const words = level([
    [0, fittedLine(label, LABEL - 2, TEXT, fonts)],
    [LABEL, paragraph(value ?? '', width - LABEL, BOLD, fonts)],
  ]);
  const height = Math.max(ROW, ABOVE + words.height + 1);
  return {
    items: [...moved(words.items, 0, height - words.height - 1), rule('write', LABEL, width, height - 0.6)],
    width,
    height,
  };
}

function choiceBlock(
  label: string,
  options: readonly { readonly word: string; readonly chosen: boolean }[],
  width: number,
  fonts: Fonts,
): Block {
  const runs = options.map(({ word, chosen }): readonly TextBlock[] => {
    const said = line(word, TEXT, fonts);
    // More room behind a word than before it: each belongs to the square at its left.
    return [tickBlock(TEXT, fonts, chosen), { ...said, width: said.width + 2.6 }];
  });
  return level([
    [0, fittedLine(label, LABEL - 2, TEXT, fonts)],
    [LABEL, runsBlock(runs, width - LABEL, TEXT, fonts)],
  ]);
}

/** The work with a line at each of its four sides: both directions are measured at both ends. */
function measureBlock(width: number, fonts: Fonts): Block {
  const height = 42;
  const [w, h] = [0.36 * width, 21];
  const [x, y] = [(width - w) / 2, (height - h) / 2];
  const wide = 0.28 * width;
  const cap = capHeight(FINE, fonts);
  const at = (word: string, left: number, base: number): readonly Item[] => {
    const said = fittedLine(word, wide, FINE, fonts);
    return [
      rule('write', left, left + wide, base),
      ...moved(said.items, left + (wide - said.width) / 2, base + 1.1 + cap - said.base),
    ];
  };
  const inner = paragraph('measure both ends of each direction', w - 4, FINE, fonts);
  const middle = y + h / 2;
  return {
    items: [
      boxItem(box(x, y, w, h), undefined, 'edge'),
      ...moved(inner.items, x + 2, middle - inner.height / 2),
      ...at('width at the top', (width - wide) / 2, y - 2.4 - cap),
      ...at('width at the bottom', (width - wide) / 2, y + h + 5),
      ...at('height at the left', x - wide - 3, middle + 1),
      ...at('height at the right', x + w + 3, middle + 1),
    ],
    width,
    height: height + 2,
  };
}
