import { useSignal, useSignalEffect } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { useEffect } from 'preact/hooks';
import type { OutputOptions } from '../../outputs/options.ts';
import type { OutputId } from '../../outputs/records.ts';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import { dataOf } from '../../read/edit/find-node.ts';
import { startRun } from '../cutter/run.ts';
import { press } from '../engine/engines.ts';
import { openShop } from '../files/desk.ts';
import { openKept } from '../files/keeping.ts';
import { shop } from '../files/open.ts';
import { type Draft, onSavedThere } from '../files/store.ts';
import { becameOf, DAY_KEY, making, printOutput, saveOutputs } from '../out/making.ts';
import { drawSmall, Small, type ToDraw } from '../picture/small.ts';
import { change } from '../state/history.ts';
import { saying } from '../state/place.ts';
import { today } from '../state/today.ts';
import { toldOf } from '../state/told-of.ts';
import { mark, markOf, ofTheRun, pieces, readDay, runSources } from './day-state.ts';
import { Sheets } from './sheets.ts';
import { Typed } from './typed.ts';

/** Several pieces at once: what is due, cut and done, and everything that is made for all of them together. */
export function Day(): ComponentChild {
  useEffect(() => void readDay(), []);
  useEffect(() => onSavedThere(() => void readDay()), []);
  useSignalEffect(() => void drawSmall(pieces.value.map(toDraw)));
  return h('main', { class: 'day' }, [
    h('section', { key: 'pieces', 'aria-label': 'Pieces of the day' }, [
      h('h2', { key: 'title' }, `Pieces (${pieces.value.length})`),
      pieces.value.length === 0
        ? h(
            'p',
            { key: 'none', class: 'note' },
            'None yet: drop several jobs on the page, type a table below, or change a piece; each is kept here.',
          )
        : h(Table, { key: 'table' }),
    ]),
    pieces.value.length === 0 ? null : h(Together, { key: 'together' }),
    pieces.value.length === 0 ? null : h(Sheets, { key: 'sheets' }),
    h(Typed, { key: 'typed' }),
  ]);
}

/** As it is at this save. */
const toDraw = ({ id, version, file, text, pictures }: Draft): ToDraw => ({
  key: `${id} ${version}`,
  file,
  text,
  pictures,
});

const dueOf = ({ text }: Draft): string => {
  try {
    const { due } = dataOf(text) as { readonly due?: unknown };
    return due === undefined ? '' : String(due);
  } catch {
    return '';
  }
};

const HEADINGS = ['In the run', 'Picture', 'Piece', 'Due', 'Cut', 'Done'];

function Table(): ComponentChild {
  return h('div', { class: 'table' }, [
    h('table', { key: 'table' }, [
      h(
        'thead',
        { key: 'head' },
        h(
          'tr',
          {},
          HEADINGS.map((each) => h('th', { key: each, scope: 'col' }, each)),
        ),
      ),
      h(
        'tbody',
        { key: 'body' },
        pieces.value.map((draft) => h(Line, { key: draft.id, draft })),
      ),
    ]),
  ]);
}

function Line({ draft }: { readonly draft: Draft }): ComponentChild {
  const { id, title } = draft;
  const now = markOf(id);
  const tick = (key: 'chosen' | 'cut' | 'done', words: string) =>
    h('td', { key }, [
      h('label', { class: 'tick-cell' }, [
        h('input', {
          type: 'checkbox',
          'aria-label': `${title}: ${words}`,
          checked: now[key] === true,
          onChange: () => mark(id, { [key]: now[key] !== true }),
        }),
      ]),
    ]);
  return h('tr', {}, [
    tick('chosen', 'in the run'),
    h('td', { key: 'picture' }, h(Small, { of: toDraw(draft).key, pictures: draft.pictures })),
    h(
      'td',
      { key: 'title' },
      h('button', { type: 'button', class: 'plain', onClick: () => void openKept(draft) }, title),
    ),
    h('td', { key: 'due' }, dueOf(draft)),
    tick('cut', 'cut'),
    tick('done', 'done'),
  ]);
}

const OUTPUTS: readonly (readonly [id: OutputId, words: string, options: OutputOptions])[] = [
  ['ticket', 'Run list', { run: true }],
  ['ticket', 'Ticket book', {}],
  ['stock', 'Stock plan', {}],
  ['blanks', 'List of blanks', {}],
  ['labels', 'Labels', {}],
];

/** What is made for the chosen ones together. */
function Together(): ComponentChild {
  const problems = useSignal<readonly Problem[]>([]);
  const run = ofTheRun();
  const busy = making.value !== undefined;
  const became = becameOf(DAY_KEY);
  const title = `${run.length === 1 ? 'one piece' : `${run.length} pieces`} of the day`;
  const cutThem = (): Promise<void> => {
    const id = `day ${run
      .map((draft) => draft.id)
      .sort()
      .join(' ')}`;
    return startRun({ id, title }, runSources);
  };
  const book = async (): Promise<void> => {
    const jobs = await runSources();
    const before = shop.value;
    const found = await press.ask('book', { jobs, date: today(), ...defined({ shop: before }) });
    if (shop.value?.text !== before?.text) {
      saying.value = 'The shop was changed while the plan was worked out, so nothing was booked: book it once more.';
      return;
    }
    problems.value = found.ok ? [] : found.problems;
    if (!found.ok) return;
    const { shopText, number, words } = found.value;
    if (shopText === shop.value?.text) {
      saying.value = `Plan ${number} has nothing to book: no sheet of it is counted, and nothing comes off the shelf or onto it.`;
      return;
    }
    await openShop();
    change(shopText, `stock plan ${number} booked`);
    saying.value = `Plan ${number} is booked in the shop’s file (${words.join('; ')}); Undo takes it back.`;
  };
  return h('section', { class: 'together', 'aria-label': 'For the run' }, [
    h('h2', { key: 'title' }, `For the run: ${run.length === 1 ? 'one piece' : `${run.length} pieces`}`),
    h('div', { key: 'buttons', class: 'buttons' }, [
      h(
        'button',
        { key: 'cut', type: 'button', class: 'main', disabled: run.length === 0, onClick: () => void cutThem() },
        'Cut them as one run',
      ),
      h(
        'button',
        {
          key: 'book',
          type: 'button',
          disabled: busy || run.length === 0 || shop.value === undefined,
          onClick: () => void book(),
        },
        'Book the stock plan as cut',
      ),
    ]),
    h(
      'ul',
      { key: 'outputs', class: 'outputs' },
      OUTPUTS.map(([id, words, options]) => {
        const wanted = { id, options };
        const off = busy || run.length === 0;
        return h('li', { key: words }, [
          h('span', { key: 'words' }, words),
          h(
            'button',
            {
              key: 'print',
              type: 'button',
              disabled: off,
              'aria-label': `Print ${words}`,
              onClick: () => printOutput(DAY_KEY, words, wanted, runSources),
            },
            'Print',
          ),
          h(
            'button',
            {
              key: 'save',
              type: 'button',
              disabled: off,
              'aria-label': `Save ${words}`,
              onClick: () => saveOutputs(DAY_KEY, words, [wanted], false, runSources),
            },
            'Save',
          ),
        ]);
      }),
    ),
    became !== undefined
      ? h('div', { key: 'became', class: 'became', role: 'status' }, [
          h('p', { key: 'words' }, became.words),
          ...became.problems.map((problem, i) => h('p', { key: i, class: 'error' }, toldOf(problem))),
        ])
      : null,
    ...problems.value.map((problem, i) => h('p', { key: `problem ${i}`, class: 'error' }, toldOf(problem))),
  ]);
}
