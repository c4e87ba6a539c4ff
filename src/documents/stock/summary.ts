import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { defined } from '../../problems/defined.ts';
import { boardTitle } from '../../shop/board.ts';
import type { Prices } from '../../shop/prices.ts';
import { type JobToCut, jobName } from '../../stock/blanks.ts';
import type { BoardLayouts } from '../../stock/layouts.ts';
import { money } from '../../stock/prices.ts';
import type { Entry } from '../../text/entries.ts';
import { level, paragraph } from '../../text/paragraph.ts';
import { inBold } from '../../text/styles.ts';
import { listedSheets } from '../bench-page.ts';
import { fine } from '../words/fine.ts';
import type { BoardRecord, StockRecord } from './record.ts';
import type { StockSheetOptions } from './sheet.ts';
import { blankName, percent, type Tape, tapeSize } from './words.ts';

type Money = Pick<Prices, 'currency' | 'decimals'>;

const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** What is fetched, how good the plan is and what goes back onto the shelf, in front of the sheets. */
export function stockSummary(
  day: readonly BoardLayouts[],
  record: StockRecord,
  jobs: readonly JobToCut[],
  prices: Money,
  { paper, tape, fonts, number }: StockSheetOptions,
): readonly Drawing[] {
  const shelved = day.flatMap(({ board, layouts }) =>
    layouts.flatMap(({ offcuts, numbers }) =>
      offcuts.flatMap((offcut) =>
        offcut.marks.map(
          (mark, i) => `${mark}: ${boardTitle(board.material)}, ${tapeSize(offcut, tape)}, from sheet ${numbers[i]}`,
        ),
      ),
    ),
  );
  const actions = (texts: readonly string[]): readonly Entry[] => texts.map((text) => ({ kind: 'action', text }));
  const entries: readonly Entry[] = [
    { kind: 'section', text: 'Fetch' },
    ...actions(record.boards.flatMap(fetched)),
    ...record.boards.flatMap((board): readonly Entry[] => [
      {
        kind: 'section',
        ...defined({ colour: board.colour }),
        text: boardTitle(board),
        aside: `${fine(board.thickness)}, ${plural(board.blanks, 'blank')}`,
      },
      ...figures(board, prices),
    ]),
    ...(shelved.length === 0
      ? []
      : [{ kind: 'section', text: 'Onto the shelf', aside: 'write the mark on each' } as const, ...actions(shelved)]),
    { kind: 'section', text: 'Where each blank lies' },
    ...whereabouts(day, jobs, tape, fonts),
    ...(number === undefined || record.plan?.idle !== false ? [] : whenCut(number)),
  ];
  const of = jobs.length === 1 ? jobName(jobs, 0) : plural(jobs.length, 'job');
  const cost = record.cost === undefined ? '' : `, ${money(record.cost, prices)}`;
  const name = number === undefined ? 'Stock plan' : `Stock plan ${number}`;
  const intro = `${of}: ${plural(record.sheets, 'new sheet')}${cost}`;
  return listedSheets({ title: 'Stock plan', name, intro, group: 'stock', entries, jobs, paper, fonts });
}

function fetched({ fetch, shelf, fallouts, ...board }: BoardRecord): readonly string[] {
  const name = boardTitle(board);
  return [
    ...fetch.map(({ sheet, count }) => `${name}: ${plural(count, 'sheet')} of ${sheet}`),
    ...(shelf.length === 0 ? [] : [`${name}, from the shelf: ${shelf.join(', ')}`]),
    ...(fallouts === 0 ? [] : [`${name}: ${plural(fallouts, 'fallout')}, as the mats are cut`]),
  ];
}

function figures(board: BoardRecord, prices: Money): readonly Entry[] {
  const row = (name: string, value: string): Entry => ({ kind: 'row', name, value });
  return [
    row('Sheets', `${board.sheets}`),
    row('Proof', proofOf(board, prices)),
    row('Cost', board.cost === undefined ? 'no price listed' : money(board.cost, prices)),
    ...(board.credit === undefined ? [] : [row('Less offcuts', money(board.credit, prices))]),
    ...(board.other === undefined ? [] : [row('Or', otherOf(board.other, prices))]),
    row('Yield', percent(board.yield)),
    row('Kept', percent(board.kept)),
    row('Waste', percent(board.waste)),
  ];
}

/** How good the plan is, in what counts first. */
function proofOf({ first, bound, verdict, gap }: BoardRecord, prices: Money): string {
  if (first === 'sheets') {
    return gap === 0 ? `${verdict}: no plan needs fewer than ${bound.value}` : `${verdict}, which is ${bound.value}`;
  }
  const least = money(bound.value, prices);
  return gap === 0
    ? `${verdict}: no plan costs less than ${least}`
    : `at most ${money(gap, prices)} above the least possible, which is ${least} or more`;
}

/** The best plan by the other rule. */
function otherOf({ first, count, cost }: NonNullable<BoardRecord['other']>, prices: Money): string {
  const said = `${plural(count, 'sheet')} for ${money(cost, prices)}`;
  return `${said}, where ${first === 'cost' ? 'the least cost counts' : 'the fewest sheets count'} first`;
}

const whenCut = (number: string): readonly Entry[] => [
  { kind: 'section', text: 'When all is cut', aside: 'counts and shelf' },
  { kind: 'action', text: `book it: matwright stock --cut ${number}` },
];

/** Room for the numbers of sheets. */
const WHERE = 27;

/** Every blank with its sheets, job by job. */
function whereabouts(
  day: readonly BoardLayouts[],
  jobs: readonly JobToCut[],
  tape: Tape,
  fonts: Fonts,
): readonly Entry[] {
  const all = day.flatMap(({ board, layouts }) =>
    [...board.blanks].map(([id, blank]) => {
      const on = layouts.filter(({ pieces }) => pieces.some(({ piece }) => piece === id));
      return { blank, sheets: on.flatMap(({ numbers }) => numbers) };
    }),
  );
  const sorted = all.sort((a, b) => a.blank.job - b.blank.job || (a.blank.layer ?? 99) - (b.blank.layer ?? 99));
  return sorted.map(({ blank, sheets }): Entry => {
    const count = blank.count === 1 ? '' : `${blank.count} of `;
    const words = `${count}${blankName({ blank }, jobs)}, ${tapeSize(blank, tape)}`;
    const where = `${sheets.length === 1 ? 'sheet' : 'sheets'} ${listed(sheets)}`;
    return {
      kind: 'figure',
      make: (width, { text }) =>
        level([
          [0, paragraph(words, width - WHERE - 2, text, fonts)],
          [width - WHERE, paragraph(where, WHERE, inBold(text), fonts)],
        ]),
    };
  });
}

/** `1, 2, 4 to 6`. */
function listed(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  const said = ([from, to]: readonly [number, number]): string =>
    to - from < 2 ? `${from}, ${to}` : `${from} to ${to}`;
  return runs.map((run) => (run[0] === run[1] ? `${run[0]}` : said(run))).join(', ');
}
