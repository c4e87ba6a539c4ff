import { type ComponentChild, h } from 'preact';
import { change, endRun } from '../state/history.ts';
import { open, problems, text } from '../state/piece.ts';
import { isHere, toldOf } from '../state/told-of.ts';

/** The text of what is open, beside its form: each follows the other, and wrong lines are marked. */
export function TextView(): ComponentChild {
  const lines = text.value.split('\n');
  const wrong = new Map(
    problems.value
      .filter(isHere)
      .flatMap(({ line, severity }) => (line === undefined ? [] : [[line, severity] as const])),
  );
  const go = (line: number, column: number): void => {
    const area = document.getElementById('text') as HTMLTextAreaElement | null;
    const start = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0) + Math.max(0, column - 1);
    area?.focus();
    area?.setSelectionRange(start, start);
  };
  const { of } = open.value ?? {};
  const title =
    of === 'shop' ? 'The shop’s file as text' : of === 'readings' ? 'The readings as text' : 'The job as text';
  return h('section', { class: 'text', 'aria-label': title }, [
    h('h2', { key: 'title' }, h('label', { for: 'text' }, title)),
    h('div', { key: 'lined', class: 'lined' }, [
      h(
        'ol',
        { key: 'lines', class: 'lines', 'aria-hidden': 'true' },
        lines.map((_, i) => h('li', { key: i, class: wrong.get(i + 1) ?? '' }, String(i + 1))),
      ),
      h('textarea', {
        key: 'area',
        id: 'text',
        spellcheck: false,
        wrap: 'off',
        rows: Math.max(12, lines.length + 1),
        value: text.value,
        'aria-describedby': 'text-told',
        onInput: (event: Event) => change((event.currentTarget as HTMLTextAreaElement).value, 'the text', 'text'),
        onBlur: endRun,
      }),
    ]),
    h(
      'ul',
      { key: 'told', id: 'text-told', class: 'told' },
      problems.value.map((problem, i) => {
        const { line, column, severity } = problem;
        return h('li', { key: i, class: severity }, [
          line === undefined || !isHere(problem)
            ? null
            : h('button', { key: 'go', type: 'button', onClick: () => go(line, column ?? 1) }, `Line ${line}`),
          ` ${toldOf(problem)}`,
        ]);
      }),
    ),
  ]);
}
