import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import type { Laid, Told } from '../engine/answers.ts';
import { press } from '../engine/engines.ts';
import { shop } from '../files/open.ts';
import { pageElement } from '../picture/pages.ts';
import { mistake } from '../state/mistake.ts';
import { told } from '../state/sentence.ts';
import { ofTheRun, runSources } from './day-state.ts';

/** Sheets of board with their cuts, each ticked as it is made; laid when it is asked for, since it takes a while. */
export function Sheets(): ComponentChild {
  const laid = useSignal<Told<Laid> | undefined>(undefined);
  const made = useSignal<ReadonlySet<string>>(new Set());
  const lay = async (): Promise<void> => {
    try {
      const jobs = await runSources();
      const asked = { jobs, wanted: { id: 'stock' as const, options: {} } };
      laid.value = await press.ask('lay', shop.value === undefined ? asked : { ...asked, shop: shop.value });
    } catch (error) {
      laid.value = { ok: false, problems: [mistake(error)] };
    }
  };
  const now = laid.value;
  const tick = (key: string): void => {
    const next = new Set(made.value);
    if (!next.delete(key)) next.add(key);
    made.value = next;
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
            { key: 'pages', class: 'pages' },
            now.value.documents.flatMap(({ name, document }) =>
              document.pages.map((page, i) => {
                const key = `day-${name}-${i}`;
                return h('figure', { key }, [
                  pageElement(document, page, key, {}),
                  h('label', { key: 'made', class: 'tick-cell' }, [
                    h('input', {
                      key: 'box',
                      type: 'checkbox',
                      checked: made.value.has(key),
                      onChange: () => tick(key),
                    }),
                    h('span', { key: 'words' }, `${page.name}: made`),
                  ]),
                ]);
              }),
            ),
          )
        : h(
            'div',
            { key: 'wrong', class: 'told' },
            now.problems.map((problem, i) => h('p', { key: i, class: 'error' }, told(problem))),
          ),
  ]);
}
