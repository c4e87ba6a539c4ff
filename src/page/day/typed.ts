import { signal, useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import { press } from '../engine/engines.ts';
import { carried } from '../engine/scripts.ts';
import { shop } from '../files/open.ts';
import { saying } from '../state/place.ts';
import { told } from '../state/sentence.ts';
import { addPieces } from './day-state.ts';
import { Grid, gridTable } from './grid.ts';

interface Template {
  readonly name: string;
  readonly summary: string;
  readonly text: string;
}

/** A problem with the number of the row that it speaks of, as that stands beside it. */
interface OfRow {
  readonly problem: Problem;
  readonly row: number | undefined;
}

/** What is typed and not made yet: it stays while one looks something up elsewhere. */
const typing = {
  like: signal('single'),
  cells: signal<readonly (readonly string[])[]>([]),
  table: signal(''),
};

/** A row a print: typed cell by cell, or a whole table pasted whose first row names what each column is. */
export function Typed(): ComponentChild {
  const all = (carried('templates') as readonly Template[] | null) ?? [];
  const { like, cells, table } = typing;
  const wrong = useSignal<readonly OfRow[]>([]);
  /** Makes a piece of each row of a text; what is wrong is told by the row's number, `numberOf` a line. */
  const make = async (text: string, numberOf: (line: number) => number, done: () => void): Promise<void> => {
    const template = all.find(({ name }) => name === like.value);
    if (template === undefined) return;
    const found = await press.ask('table', {
      table: { text, file: 'the table' },
      template: { text: template.text, file: template.name },
      ...defined({ shop: shop.value }),
    });
    wrong.value = found.problems.map((problem) => {
      return { problem, row: problem.line === undefined ? undefined : numberOf(problem.line) };
    });
    if (!found.ok) return;
    if (!(await addPieces(found.value))) return;
    saying.value = `${found.value.length === 1 ? 'One piece' : `${found.value.length} pieces`} made of the table.`;
    done();
  };
  const typed = gridTable(cells.value);
  return h('section', { class: 'typed', 'aria-label': 'A table of prints' }, [
    h('h2', { key: 'title' }, 'A table of prints'),
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
    h(
      'p',
      { key: 'words', class: 'note' },
      'A row a print. A cell left empty is as in the mat that they are like; Enter goes down, and cells copied from a spreadsheet can be pasted into any cell.',
    ),
    h(Grid, { key: 'grid', cells: cells.value, set: (next) => (cells.value = next) }),
    h(
      'button',
      {
        key: 'make typed',
        type: 'button',
        class: 'main',
        disabled: typed === undefined,
        onClick: () =>
          typed === undefined
            ? undefined
            : void make(
                typed.text,
                (line) => typed.rows[line - 2] ?? line,
                () => (cells.value = []),
              ),
      },
      'Make these pieces',
    ),
    h('label', { key: 'label', for: 'table-text' }, 'The table'),
    h(
      'p',
      { key: 'about', class: 'note' },
      'Or paste a whole table: its first row says what each column is, title, customer, openings[0].artwork, mat.layers[0].board …',
    ),
    h('textarea', {
      key: 'area',
      id: 'table-text',
      rows: 5,
      spellcheck: false,
      wrap: 'off',
      value: table.value,
      onInput: (event: Event) => {
        table.value = (event.currentTarget as HTMLTextAreaElement).value;
      },
    }),
    h(
      'button',
      {
        key: 'make',
        type: 'button',
        disabled: table.value.trim() === '',
        onClick: () =>
          void make(
            table.value,
            (line) => line,
            () => (table.value = ''),
          ),
      },
      'Make a piece of each row',
    ),
    h(
      'ul',
      { key: 'told', class: 'told' },
      wrong.value.map(({ problem, row }, i) =>
        h('li', { key: i, class: problem.severity }, `${row === undefined ? '' : `Row ${row}: `}${told(problem)}`),
      ),
    ),
  ]);
}
