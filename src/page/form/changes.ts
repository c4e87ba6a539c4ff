import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { dataOf } from '../../read/edit/find-node.ts';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { differences } from '../state/differences.ts';
import { type Change, history } from '../state/history.ts';
import { text } from '../state/piece.ts';
import { plainText } from './typed.ts';

/** The latest alone: more would be no list that anybody reads. */
const MOST = 20;
/** Values that one change is told by. */
const MOST_VALUES = 3;

/** What was changed, the latest first: the old value, the new one, and how long ago. */
export function Changes(): ComponentChild {
  const open = useSignal(false);
  const { past } = history.value;
  if (past.length === 0) return null;
  const texts = [...past.map(({ before }) => before), text.value];
  const latest = past.map((change, i) => ({ change, after: texts[i + 1]!, number: i + 1 })).slice(-MOST);
  return h(
    'details',
    {
      class: 'part',
      open: open.value,
      onToggle: (event: Event) => {
        open.value = (event.currentTarget as HTMLDetailsElement).open;
      },
    },
    [
      h('summary', { key: 'title' }, h('h2', {}, `Changes (${past.length})`)),
      open.value
        ? h(
            'ol',
            { key: 'list', class: 'changes', reversed: true, start: past.length },
            latest.reverse().map(({ change, after, number }) => h(One, { key: number, change, after })),
          )
        : null,
    ],
  );
}

function One({ change, after }: { readonly change: Change; readonly after: string }): ComponentChild {
  const all = differences(read(change.before), read(after));
  const told = all.slice(0, MOST_VALUES).map(({ old, now }) => `${shownValue(old)} → ${shownValue(now)}`);
  const more = all.length > MOST_VALUES ? [`and ${all.length - MOST_VALUES} more`] : [];
  return h('li', {}, [
    h('strong', { key: 'what' }, change.what),
    ` ${[...told, ...more].join('; ') || 'spacing or comments'}`,
    change.at === undefined ? null : h('span', { key: 'age', class: 'age' }, ` ${age(Date.now() - change.at)}`),
  ]);
}

const shownValue = (value: Plain | undefined): string => (value === undefined ? 'nothing' : plainText(value));

function read(words: string): Plain | undefined {
  try {
    return dataOf(words);
  } catch {
    return undefined;
  }
}

const AGES = [
  [86_400_000, 'd'],
  [3_600_000, 'h'],
  [60_000, 'min'],
] as const;

function age(ms: number): string {
  const found = AGES.find(([long]) => ms >= long);
  return found === undefined ? 'just now' : `${Math.floor(ms / found[0])} ${found[1]} ago`;
}
