import { type ComponentChild, h } from 'preact';

/** What is mostly told apart from print to print, by where a job says it. */
const COLUMNS = [
  ['title', 'Title'],
  ['customer', 'Customer'],
  ['openings[0].artwork', 'Artwork'],
  ['mat.outer', 'Outer size'],
  ['count', 'How many'],
  ['due', 'Due'],
] as const;

/** Rows that stand there before anything is typed; below what is typed one more is always empty. */
const FIRST = 3;

type Cells = readonly (readonly string[])[];

const isEmpty = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '');

/** A cell that begins with a quote would be taken for a quoted one. */
const quoted = (cell: string): string => (cell.startsWith('"') ? `"${cell.replaceAll('"', '""')}"` : cell);

/** What was typed as a table with its headings, and the number of each of its rows on the screen; undefined where nothing was. */
export function gridTable(cells: Cells): { readonly text: string; readonly rows: readonly number[] } | undefined {
  const rows = cells.flatMap((row, i) => (isEmpty(row) ? [] : [{ row, number: i + 1 }]));
  if (rows.length === 0) return undefined;
  const lines = rows.map(({ row }) => COLUMNS.map((_, i) => quoted((row[i] ?? '').trim())).join('\t'));
  const headings = COLUMNS.map(([path]) => path).join('\t');
  return { text: `${[headings, ...lines].join('\n')}\n`, rows: rows.map(({ number }) => number) };
}

/** The cells with others put in from one of them on, to the right and down; what has no column is left out. */
function pasted(cells: Cells, row: number, column: number, text: string): Cells {
  const all = text.replace(/\r?\n$/u, '').split(/\r?\n/u);
  const count = Math.max(cells.length, row + all.length);
  return Array.from({ length: count }, (_, r) => {
    const given = all[r - row]?.split('\t') ?? [];
    return COLUMNS.map((_column, c) => given[c - column] ?? cells[r]?.[c] ?? '');
  });
}

export interface GridOf {
  readonly cells: Cells;
  readonly set: (cells: Cells) => void;
}

/** A table to type into. */
export function Grid({ cells, set }: GridOf): ComponentChild {
  const count = Math.max(FIRST, cells.length + (isEmpty(cells.at(-1) ?? ['']) ? 0 : 1));
  const idOf = (row: number, column: number): string => `cell-${row}-${column}`;
  const cell = (row: number, column: number): ComponentChild =>
    h(
      'td',
      { key: column },
      h('input', {
        id: idOf(row, column),
        type: 'text',
        autoComplete: 'off',
        spellcheck: false,
        'aria-label': `${COLUMNS[column]![1]}, row ${row + 1}`,
        value: cells[row]?.[column] ?? '',
        onInput: (event: Event) => set(pasted(cells, row, column, (event.currentTarget as HTMLInputElement).value)),
        onPaste: (event: ClipboardEvent) => {
          const text = event.clipboardData?.getData('text/plain') ?? '';
          if (!/[\t\n]/u.test(text)) return;
          event.preventDefault();
          set(pasted(cells, row, column, text));
        },
        onKeyDown: (event: KeyboardEvent) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          document.getElementById(idOf(row + 1, column))?.focus();
        },
      }),
    );
  return h('div', { class: 'table' }, [
    h('table', { key: 'table', class: 'grid' }, [
      h(
        'thead',
        { key: 'head' },
        h('tr', {}, [
          h('th', { key: 'number', scope: 'col' }, 'Row'),
          ...COLUMNS.map(([path, words]) => h('th', { key: path, scope: 'col' }, words)),
        ]),
      ),
      h(
        'tbody',
        { key: 'body' },
        Array.from({ length: count }, (_, row) =>
          h('tr', { key: row }, [
            h('th', { key: 'number', scope: 'row' }, String(row + 1)),
            ...COLUMNS.map((_column, column) => cell(row, column)),
          ]),
        ),
      ),
    ]),
  ]);
}
