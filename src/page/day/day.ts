import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Problem } from '../../problems/problem.ts';
import { dataOf } from '../../read/edit/find-node.ts';
import { startRun } from '../cutter/run.ts';
import { press } from '../engine/engines.ts';
import { carried } from '../engine/scripts.ts';
import { openShop } from '../files/desk.ts';
import { openDraft } from '../files/keeping.ts';
import { shop } from '../files/open.ts';
import type { Draft } from '../files/store.ts';
import { making, outcome, saveOutputs } from '../out/making.ts';
import { change } from '../state/history.ts';
import { saying } from '../state/place.ts';
import { told } from '../state/sentence.ts';
import { today } from '../state/today.ts';
import { addPieces, mark, markOf, ofTheRun, pieces, readDay, runSources } from './day-state.ts';
import { Sheets } from './sheets.ts';

/** Several pieces at once: what is due, cut and done, and everything that is made for all of them together. */
export function Day(): ComponentChild {
  useEffect(() => void readDay(), []);
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
    h(Typed, { key: 'typed' }),
    pieces.value.length === 0 ? null : h(Sheets, { key: 'sheets' }),
  ]);
}

const dueOf = ({ text }: Draft): string => {
  try {
    const { due } = dataOf(text) as { readonly due?: unknown };
    return due === undefined ? '' : String(due);
  } catch {
    return '';
  }
};

const HEADINGS = ['In the run', 'Piece', 'Due', 'Cut', 'Done'];

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
    h('td', { key: 'title' }, h('button', { type: 'button', class: 'plain', onClick: () => openDraft(draft) }, title)),
    h('td', { key: 'due' }, dueOf(draft)),
    tick('cut', 'cut'),
    tick('done', 'done'),
  ]);
}

const OUTPUTS = [
  ['ticket', 'Ticket book'],
  ['stock', 'Stock plan'],
  ['blanks', 'List of blanks'],
  ['labels', 'Labels'],
] as const;

/** What is made for the chosen ones together. */
function Together(): ComponentChild {
  const problems = useSignal<readonly Problem[]>([]);
  const run = ofTheRun();
  const busy = making.value !== undefined;
  const title = `${run.length === 1 ? 'one piece' : `${run.length} pieces`} of the day`;
  const cutThem = async (): Promise<void> => {
    const id = `day ${run
      .map((draft) => draft.id)
      .sort()
      .join(' ')}`;
    await startRun({ id, title }, await runSources());
  };
  const book = async (): Promise<void> => {
    const found = await press.ask('book', {
      jobs: await runSources(),
      date: today(),
      ...(shop.value === undefined ? {} : { shop: shop.value }),
    });
    problems.value = found.ok ? [] : found.problems;
    if (!found.ok) return;
    await openShop();
    change(found.value.shopText, 'stock plan booked');
    saying.value = 'The plan is booked in the shop’s file; Undo takes it back.';
  };
  return h('section', { class: 'together', 'aria-label': 'For the run' }, [
    h('h2', { key: 'title' }, `For the run: ${run.length === 1 ? 'one piece' : `${run.length} pieces`}`),
    h('div', { key: 'buttons', class: 'buttons' }, [
      h(
        'button',
        { key: 'cut', type: 'button', class: 'main', disabled: run.length === 0, onClick: () => void cutThem() },
        'Cut them as one run',
      ),
      ...OUTPUTS.map(([id, words]) =>
        h(
          'button',
          {
            key: id,
            type: 'button',
            disabled: busy || run.length === 0,
            onClick: () => saveOutputs('day', words, [{ id, options: {} }], false, runSources),
          },
          `Save: ${words}`,
        ),
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
    outcome.value?.key === 'day'
      ? h('div', { key: 'became', class: 'became', role: 'status' }, [
          h('p', { key: 'words' }, outcome.value.words),
          ...outcome.value.problems.map((problem, i) => h('p', { key: i, class: 'error' }, told(problem))),
        ])
      : null,
    ...problems.value.map((problem, i) => h('p', { key: `problem ${i}`, class: 'error' }, told(problem))),
  ]);
}

interface Template {
  readonly name: string;
  readonly summary: string;
  readonly text: string;
}

/** A row a print, typed or pasted from a spreadsheet: the first row names what each column is. */
function Typed(): ComponentChild {
  const all = (carried('templates') as readonly Template[] | null) ?? [];
  const like = useSignal('single');
  const table = useSignal('');
  const problems = useSignal<readonly Problem[]>([]);
  const make = async (): Promise<void> => {
    const template = all.find(({ name }) => name === like.value);
    if (template === undefined) return;
    const found = await press.ask('table', {
      table: { text: table.value, file: 'the table' },
      template: { text: template.text, file: template.name },
    });
    problems.value = found.problems;
    if (!found.ok) return;
    await addPieces(found.value);
    saying.value = `${found.value.length === 1 ? 'One piece' : `${found.value.length} pieces`} made of the table.`;
    if (found.problems.length === 0) table.value = '';
  };
  return h('section', { class: 'typed', 'aria-label': 'A table of prints' }, [
    h('h2', { key: 'title' }, 'A table of prints'),
    h(
      'p',
      { key: 'words', class: 'note' },
      'A row a print, typed or pasted from a spreadsheet. The first row says what each column is: title, customer, due, openings[0].artwork … A cell left empty is as in the mat that they are like.',
    ),
    h('div', { key: 'like', class: 'field choice' }, [
      h('label', { key: 'label', for: 'table-like' }, 'They are like'),
      h(
        'select',
        {
          key: 'select',
          id: 'table-like',
          value: like.value,
          onChange: (event: Event) => (like.value = (event.currentTarget as HTMLSelectElement).value),
        },
        all.map(({ name, summary }) => h('option', { key: name, value: name, selected: name === like.value }, summary)),
      ),
    ]),
    h('label', { key: 'label', for: 'table-text' }, 'The table'),
    h('textarea', {
      key: 'area',
      id: 'table-text',
      rows: 8,
      spellcheck: false,
      wrap: 'off',
      value: table.value,
      onInput: (event: Event) => {
        table.value = (event.currentTarget as HTMLTextAreaElement).value;
      },
    }),
    h(
      'button',
      { key: 'make', type: 'button', disabled: table.value.trim() === '', onClick: () => void make() },
      'Make a piece of each row',
    ),
    h(
      'ul',
      { key: 'told', class: 'told' },
      problems.value.map((problem, i) =>
        h(
          'li',
          { key: i, class: problem.severity },
          `${problem.line === undefined ? '' : `Row ${problem.line}: `}${told(problem)}`,
        ),
      ),
    ),
  ]);
}
