import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { defined } from '../../problems/defined.ts';
import type { StockSheet, StockSheets, Told } from '../engine/answers.ts';
import { press } from '../engine/engines.ts';
import { shop } from '../files/open.ts';
import { changeRecord, recordOf } from '../files/store.ts';
import { mistake } from '../state/mistake.ts';
import { toldOf } from '../state/told-of.ts';
import { ofTheRun, pieces, runSources, tell } from './day-state.ts';
import { SheetPicture } from './sheet-picture.ts';

/** Under it the ticks of a plan are kept. */
const recordOfPlan = (plan: string): string => `sheets ${plan}`;
const key = ({ name }: StockSheet, cut: number): string => `${name}, cut ${cut}`;

/** Sheets of board as pictures, each cut with its stop, ticked as it is made; laid when it is asked for, since it takes a while. */
export function Sheets(): ComponentChild {
  const laid = useSignal<{ readonly of: string; readonly told: Told<StockSheets> } | undefined>(undefined);
  const made = useSignal<ReadonlySet<string>>(new Set());
  const lay = async (): Promise<void> => {
    let of = '';
    try {
      const jobs = await runSources();
      of = followsFrom(jobs.map(({ piece }) => piece));
      const found = await press.ask('sheets', { jobs, ...defined({ shop: shop.value }) });
      made.value = found.ok ? await ticksOf(found.value.plan) : new Set();
      laid.value = { of, told: found };
    } catch (error) {
      laid.value = { of, told: { ok: false, problems: [mistake(error)] } };
    }
  };
  // Sheets of another run would be cut for nothing.
  const now = laid.value?.of === followsFrom(ofTheRun().map(({ id }) => id)) ? laid.value.told : undefined;
  const tick = (plan: string, each: string): void => {
    const on = !made.value.has(each);
    const withIt = (ticks: ReadonlySet<string>): ReadonlySet<string> =>
      new Set(on ? [...ticks, each] : [...ticks].filter((other) => other !== each));
    made.value = withIt(made.value);
    changeRecord(recordOfPlan(plan), (kept) => [...withIt(ticksIn(kept))]).catch((error: unknown) =>
      tell('This browser could not keep the last tick', error),
    );
  };
  return h('section', { class: 'sheets', 'aria-label': 'Sheets of board' }, [
    h('h2', { key: 'title' }, 'Sheets of board'),
    h(
      'button',
      { key: 'lay', type: 'button', disabled: ofTheRun().length === 0, onClick: () => void lay() },
      'Lay the blanks on sheets',
    ),
    now === undefined
      ? null
      : now.ok
        ? h(
            'div',
            { key: 'sheets', class: 'to-cut' },
            now.value.sheets.map((sheet) =>
              h(Sheet, { key: sheet.name, sheet, made: made.value, tick: (each) => tick(now.value.plan, each) }),
            ),
          )
        : h(
            'div',
            { key: 'wrong', class: 'told' },
            now.problems.map((problem, i) => h('p', { key: i, class: 'error' }, toldOf(problem))),
          ),
  ]);
}

/** What sheets follow from: the pieces of the run as they are kept, and the shop. */
function followsFrom(run: readonly (string | undefined)[]): string {
  const versions = new Map(pieces.value.map(({ id, version }) => [id, version]));
  return JSON.stringify([run.map((id) => [id, versions.get(id ?? '')]), shop.value]);
}

/** The same jobs, sheets and shelf have the same plan: what was ticked of it is ticked still. */
const ticksOf = async (plan: string): Promise<ReadonlySet<string>> =>
  ticksIn(await recordOf(recordOfPlan(plan)).catch(() => undefined));

const ticksIn = (kept: unknown): ReadonlySet<string> => new Set(Array.isArray(kept) ? kept.map(String) : []);

interface SheetOf {
  readonly sheet: StockSheet;
  readonly made: ReadonlySet<string>;
  readonly tick: (each: string) => void;
}

function Sheet({ sheet, made, tick }: SheetOf): ComponentChild {
  const { name, board, count, stops, pieces } = sheet;
  const cuts = stops.flatMap((stop) => stop.cuts);
  const isMade = (cut: number): boolean => made.has(key(sheet, cut));
  const next = cuts.find(({ cut }) => !isMade(cut))?.cut;
  const names = [...new Map(pieces.map((piece) => [piece.key, piece.words]))];
  const title = `${name}, ${board}`;
  return h('article', { class: 'sheet-to-cut', 'aria-label': title }, [
    h('h3', { key: 'title' }, title),
    count === 1 ? null : h('p', { key: 'count', class: 'note' }, `Cut ${count} like this.`),
    h('div', { key: 'both', class: 'both' }, [
      h(SheetPicture, { key: 'picture', sheet, isMade, ...defined({ next }) }),
      h('div', { key: 'words' }, [
        h('p', { key: 'pieces', class: 'note' }, names.map(([letter, words]) => `${letter}: ${words}`).join('; ')),
        cuts.length === 0 ? h('p', { key: 'none' }, 'Nothing is cut: it is used whole.') : null,
        ...stops.map((stop, i) =>
          h('fieldset', { key: i, class: 'stop' }, [
            h('legend', { key: 'stop' }, stop.words),
            ...stop.cuts.map(({ cut, words }) =>
              h('label', { key: cut, class: cut === next ? 'tick-cell next' : 'tick-cell' }, [
                h('input', {
                  key: 'box',
                  type: 'checkbox',
                  checked: isMade(cut),
                  onChange: () => tick(key(sheet, cut)),
                }),
                h('span', { key: 'words' }, `Cut ${cut}: ${words}`),
              ]),
            ),
          ]),
        ),
      ]),
    ]),
  ]);
}
