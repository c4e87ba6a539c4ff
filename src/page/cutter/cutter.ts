import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Steps } from '../engine/answers.ts';
import { open } from '../state/piece.ts';
import { place } from '../state/place.ts';
import { toldOf } from '../state/told-of.ts';
import { awake, keepAwake } from './awake.ts';
import { Board, topWords } from './board.ts';
import { Reading } from './reading.ts';
import { again, at, back, countDone, isDone, next, run, show, stepProblems, steps } from './run.ts';
import { stepLine, stepWords } from './words.ts';

/** A pedal sends the keys that turn a page. */
const FORWARD = new Set([' ', 'PageDown', 'ArrowRight', 'Enter']);
const BACKWARD = new Set(['PageUp', 'ArrowLeft', 'Backspace']);

/** Keys count wherever the focus is, but for the buttons of other things: there Enter and space are theirs. */
function onKey(event: KeyboardEvent): void {
  const target = event.target instanceof Element ? event.target.closest('button, summary, a, input') : null;
  const own = target === null || target.closest('.pedals') !== null;
  const presses = event.key === ' ' || event.key === 'Enter';
  if (event.ctrlKey || event.altKey || event.metaKey || (presses && !own)) return;
  const forward = FORWARD.has(event.key);
  if (!forward && !BACKWARD.has(event.key)) return;
  if (event.key === 'Enter' && target !== null) return;
  event.preventDefault();
  // A pedal that is held down is one step.
  if (event.repeat) return;
  if (forward) next();
  else back();
}

/** The order of work, one step a screen; nothing else is on it. */
export function Cutter(): ComponentChild {
  useEffect(keepAwake, []);
  // So that the pedal is heard, not the button that led here.
  useEffect(() => document.querySelector<HTMLElement>('main.cutter')?.focus(), []);
  useEffect(() => {
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, []);
  const listed = useSignal(false);
  const all = steps.value;
  if (all === undefined) {
    return h(
      'main',
      { class: 'cutter waiting', tabIndex: -1 },
      stepProblems.value.length === 0
        ? h(
            'p',
            { class: 'nothing', role: 'status' },
            run.value === undefined ? 'Open a piece first.' : 'Working the steps out …',
          )
        : h(
            'div',
            { class: 'told' },
            stepProblems.value.map((problem, i) => h('p', { key: i, class: 'error' }, toldOf(problem))),
          ),
    );
  }
  return h('main', { class: 'cutter', tabIndex: -1 }, [
    listed.value
      ? h(List, { key: 'list', all, close: () => (listed.value = false) })
      : at.value >= all.order.steps.length
        ? h(End, { key: 'end' })
        : h(One, { key: 'one', all, index: at.value }),
    h('div', { key: 'pedals', class: 'pedals' }, [
      h('button', { key: 'back', type: 'button', class: 'pedal', disabled: at.value === 0, onClick: back }, 'Back'),
      h('div', { key: 'middle', class: 'between' }, [
        h('p', { key: 'count' }, `${countDone.value} of ${all.order.steps.length} done`),
        h(
          'button',
          { key: 'all', type: 'button', 'aria-pressed': listed.value, onClick: () => (listed.value = !listed.value) },
          'All steps',
        ),
        awake.value === false
          ? h(
              'p',
              { key: 'awake', class: 'note' },
              'This browser does not keep the screen awake: set its sleep time longer.',
            )
          : null,
      ]),
      h(
        'button',
        {
          key: 'next',
          type: 'button',
          class: 'pedal main',
          disabled: at.value >= all.order.steps.length,
          onClick: next,
        },
        'Done, next',
      ),
    ]),
  ]);
}

function One({ all, index }: { readonly all: Steps; readonly index: number }): ComponentChild {
  const step = all.order.steps[index]!;
  const { title, big, unit, lines } = stepWords(index, all);
  const lot = 'lot' in step ? all.order.lots[step.lot] : undefined;
  const cut = step.kind === 'cut' ? step : undefined;
  return h('section', { class: cut === undefined ? 'step' : 'step with-board', 'aria-live': 'polite' }, [
    h('div', { key: 'words', class: 'told-step' }, [
      h('p', { key: 'what', class: 'piece' }, [
        lot === undefined ? '' : `${lot.title}: ${lot.name}`,
        cut === undefined ? '' : `, piece ${cut.piece} of ${cut.of}`,
        isDone(index) ? ' (done)' : '',
      ]),
      h('h2', { key: 'title' }, title),
      h('p', { key: 'big', class: 'reading' }, [
        h(Reading, { key: 'number', big }),
        unit === '' ? null : h('span', { key: 'unit', class: 'unit' }, ` ${unit}`),
      ]),
      h(
        'ul',
        { key: 'lines' },
        lines.map((line) => h('li', { key: line }, line)),
      ),
      lot === undefined
        ? null
        : h('p', { key: 'board', class: 'of' }, [
            `${lot.board.name}, ${lot.up === 'back' ? 'BACK' : 'FACE'} up`,
            cut === undefined ? '' : `, ${topWords(cut)}, depth ${cut.depth} mm`,
          ]),
    ]),
    cut === undefined ? null : h(Board, { key: 'board', step: cut, board: all.boards[cut.lot]! }),
  ]);
}

function End(): ComponentChild {
  return h('section', { class: 'step' }, [
    h('h2', { key: 'title' }, 'All steps are done'),
    h('p', { key: 'words', class: 'reading told-step' }, h(Reading, { big: 'Done' })),
    h('div', { key: 'ways', class: 'buttons' }, [
      h('button', { key: 'again', type: 'button', onClick: again }, 'The same once more, all ticks taken off'),
      open.value === undefined
        ? null
        : h('button', { key: 'piece', type: 'button', onClick: () => (place.value = 'describe') }, 'Back to the piece'),
    ]),
  ]);
}

function List({ all, close }: { readonly all: Steps; readonly close: () => void }): ComponentChild {
  return h(
    'ol',
    { class: 'steps', 'aria-label': 'All steps' },
    all.order.steps.map((step, i) =>
      h(
        'li',
        { key: i },
        h(
          'button',
          {
            type: 'button',
            ...(i === at.value ? { 'aria-current': 'step' as const } : {}),
            onClick: () => {
              show(i);
              close();
            },
          },
          `${isDone(i) ? '✓ ' : ''}${stepLine(step, i, all)}`,
        ),
      ),
    ),
  );
}
