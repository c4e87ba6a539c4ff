import { useSignal, useSignalEffect } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { piece, problems } from '../state/piece.ts';
import { toldOf } from '../state/told-of.ts';
import { becameOf, making, printOutput, saveOutputs, stop } from './making.ts';
import { type Row, rows } from './rows.ts';
import { countTakes, takesWords } from './takes.ts';

/** All that can come out of the piece: printed from here, or saved. */
export function Out(): ComponentChild {
  const now = piece.value;
  if (now === undefined || problems.value.some(({ severity }) => severity === 'error')) {
    return h(
      'section',
      { class: 'out' },
      h('p', { class: 'nothing' }, 'The sizes do not go together yet: put them right first, then print.'),
    );
  }
  const all = rows(now.machines);
  const busy = making.value !== undefined;
  // What nobody has a machine or an artwork for is made by itself alone.
  const whole = all
    .filter(({ id }) => id !== 'cutfile' || now.machines.length > 0)
    .filter(({ id }) => id !== 'placement' || now.report.openings.some(({ artwork }) => artwork !== undefined));
  return h('section', { class: 'out', 'aria-label': 'What can come out' }, [
    h('div', { key: 'all', class: 'all' }, [
      h(
        'p',
        { key: 'words', class: 'note' },
        'Print at 100 %, without fitting to the page. The first sheet has a line of 100 mm: measure it before you cut.',
      ),
      h(
        'button',
        {
          key: 'zip',
          type: 'button',
          class: 'main',
          disabled: busy,
          onClick: () =>
            saveOutputs(
              'all',
              'everything',
              whole.map(({ id, options }) => ({ id, options })),
              true,
            ),
        },
        'Save everything as one zip',
      ),
      h(Became, { key: 'became', of: 'all' }),
    ]),
    h(Counting, { key: 'counting', all }),
    h(Progress, { key: 'progress' }),
    h(
      'ul',
      { key: 'rows', class: 'rows' },
      all.map((row) => h(OutRow, { key: row.key, row, busy })),
    ),
    h(
      'p',
      { key: 'png', class: 'note' },
      'PNG is not made here: the program for it would double the size of this page. The command line makes it.',
    ),
  ]);
}

/** Shows nothing: as long as the rows are to be seen, what they take is counted. */
function Counting({ all }: { readonly all: readonly Row[] }): ComponentChild {
  useSignalEffect(() => countTakes(all));
  return null;
}

function OutRow({ row, busy }: { readonly row: Row; readonly busy: boolean }): ComponentChild {
  const format = useSignal(row.formats[0]!);
  const id = `format-${row.key.replaceAll(' ', '-')}`;
  const { key, title, about, formats, prints, options } = row;
  const wanted = { id: row.id, options };
  const saved = { id: row.id, options: { ...options, format: [format.value] } };
  return h('li', { class: 'row' }, [
    h('div', { key: 'what' }, [
      h('h2', { key: 'title' }, title),
      h('p', { key: 'about' }, about),
      h('p', { key: 'takes', class: 'takes' }, takesWords(key)),
    ]),
    h('div', { key: 'do', class: 'buttons' }, [
      prints
        ? h(
            'button',
            {
              key: 'print',
              type: 'button',
              disabled: busy,
              'aria-label': `Print ${title}`,
              onClick: () => printOutput(key, title, wanted),
            },
            'Print',
          )
        : null,
      h(
        'select',
        {
          key: 'format',
          id,
          'aria-label': `Format of ${title}`,
          value: format.value,
          onChange: (event: Event) => (format.value = (event.currentTarget as HTMLSelectElement).value),
        },
        formats.map((each) => h('option', { key: each, value: each }, NAMES[each] ?? each)),
      ),
      h(
        'button',
        {
          key: 'save',
          type: 'button',
          disabled: busy,
          'aria-label': `Save ${title}`,
          onClick: () => saveOutputs(key, title, [saved], false),
        },
        'Save',
      ),
    ]),
    h(Became, { key: 'became', of: key }),
  ]);
}

const NAMES: Readonly<Record<string, string>> = {
  pdf: 'PDF',
  svg: 'SVG',
  tiles: 'SVG, each sheet',
  dxf: 'DXF',
  hpgl: 'HP-GL',
};

function Progress(): ComponentChild {
  const now = making.value;
  if (now === undefined) return null;
  return h('div', { class: 'progress', role: 'status' }, [
    h('span', { key: 'what' }, `Making ${now.what}`),
    h('progress', {
      key: 'bar',
      'aria-label': `Making ${now.what}`,
      ...(now.of === 0 ? {} : { value: now.done, max: now.of }),
    }),
    h('button', { key: 'stop', type: 'button', onClick: stop }, 'Stop'),
  ]);
}

function Became({ of }: { readonly of: string }): ComponentChild {
  const now = becameOf(of);
  if (now === undefined) return null;
  return h('div', { class: 'became', role: 'status' }, [
    now.words === '' ? null : h('p', { key: 'words' }, now.words),
    ...now.problems.map((problem, i) => h('p', { key: i, class: 'error' }, toldOf(problem))),
  ]);
}
