import { useSignal, useSignalEffect } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import type { OutputId } from '../../outputs/records.ts';
import type { Laid as LaidPages, Told } from '../engine/answers.ts';
import { press } from '../engine/engines.ts';
import { TakenBack } from '../engine/worker.ts';
import { sources } from '../out/sources.ts';
import { mistake } from '../state/mistake.ts';
import { open, text } from '../state/piece.ts';
import { told as said } from '../state/sentence.ts';
import { pageElement } from './pages.ts';

/** ms without a change, so that pages are not laid at every key. */
const PAUSE = 600;

export interface LaidOf {
  readonly id: OutputId;
  readonly words: string;
}

/** The pages of an output, laid anew when the piece has changed. */
export function Laid({ id, words }: LaidOf): ComponentChild {
  const laid = useSignal<Told<LaidPages> | undefined>(undefined);
  useSignalEffect(() => {
    const asked = text.value;
    if (open.value === undefined) return;
    const lay = (): void => {
      void sources()
        .then((jobs) => press.ask('lay', { jobs, wanted: { id, options: {} } }))
        .then((told) => {
          if (text.peek() === asked) laid.value = told;
        })
        .catch((error: unknown) => {
          if (error instanceof TakenBack) return;
          laid.value = { ok: false, problems: [mistake(error)] };
        });
    };
    const timer = setTimeout(lay, laid.peek() === undefined ? 0 : PAUSE);
    return () => clearTimeout(timer);
  });
  const told = laid.value;
  if (told === undefined) return h('p', { class: 'nothing', role: 'status' }, 'Laying it out …');
  if (!told.ok) {
    return h(
      'div',
      { class: 'told' },
      told.problems.map((problem, i) => h('p', { key: i, class: 'error' }, said(problem))),
    );
  }
  const { documents, notes } = told.value;
  return h('div', { class: 'laid' }, [
    h('p', { key: 'words', class: 'note' }, `${words}. ${documents.map(({ said }) => said).join('; ')}.`),
    h(
      'div',
      { key: 'pages', class: 'pages' },
      documents.flatMap(({ name, document }) =>
        document.pages.map((page, i) =>
          h('figure', { key: `${name}-${i}` }, [
            pageElement(document, page, `${id}-${name}-${i}`, {}),
            h('figcaption', { key: 'name' }, `${page.name}`),
          ]),
        ),
      ),
    ),
    ...notes.map((note, i) => h('p', { key: `note ${i}`, class: 'note' }, note)),
  ]);
}
