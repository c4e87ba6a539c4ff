import { signal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { view } from '../state/looking.ts';
import { open, piece, stale } from '../state/piece.ts';
import { Backs } from './back.ts';
import { Describe } from './described.ts';
import { Face } from './face.ts';
import { Laid } from './laid.ts';
import { measured, measuring, toggleMeasure } from './measure.ts';
import { pieceUrls } from './urls.ts';

export type Tab = 'face' | 'back' | 'paper' | 'boards';
const tab = signal<Tab>('face');
const sizesShown = signal(true);
const zoom = signal(1);

const TABS: readonly (readonly [Tab, string])[] = [
  ['face', 'Face'],
  ['back', 'Back'],
  ['paper', 'Paper'],
  ['boards', 'Boards'],
];

const MOST_ZOOM = 8;

/** The piece, in the ways in which it can be seen. */
export function Picture(): ComponentChild {
  const now = tab.value;
  return h('section', { class: 'picture', 'aria-label': 'Picture of the piece' }, [
    h('div', { key: 'bar', class: 'bar' }, [h(Tabs, { key: 'tabs' }), h(Tools, { key: 'tools' })]),
    stale.value && piece.value !== undefined
      ? h('p', { key: 'stale', class: 'stale' }, 'This is the piece as it last went together.')
      : null,
    h(
      'div',
      {
        key: 'wall',
        class: `wall ${now}`,
        id: 'picture-panel',
        role: 'tabpanel',
        'aria-labelledby': `tab-${now}`,
        tabIndex: now === 'face' ? -1 : 0,
      },
      h(Shown, { tab: now }),
    ),
    h(
      'p',
      { key: 'measured', class: 'measured', 'aria-live': 'polite' },
      measuring.value && now === 'face' ? measured() : '',
    ),
    h(Describe, { key: 'described' }),
  ]);
}

function Shown({ tab: now }: { readonly tab: Tab }): ComponentChild {
  const shown = piece.value;
  if (shown === undefined) return h('p', { class: 'nothing' }, 'The mat shows here as soon as the sizes go together.');
  switch (now) {
    case 'face':
      return h(Face, {
        piece: shown,
        zoom: zoom.value,
        sizes: sizesShown.value,
        pictures: pieceUrls(open.value?.pictures ?? {}),
      });
    case 'back':
      return h(Backs, { piece: shown, zoom: zoom.value });
    case 'paper':
      return h(Laid, { key: 'paper', id: 'pattern', words: 'The pattern’s sheets, as they will be printed' });
    case 'boards':
      return h(Laid, { key: 'boards', id: 'stock', words: 'The sheets of board, and what is cut from them' });
    default: {
      const never: never = now;
      throw new TypeError(`unknown tab ${JSON.stringify(never)}`);
    }
  }
}

function choose(next: Tab): void {
  tab.value = next;
  view.value = next === 'back' ? 'back' : 'face';
}

function Tabs(): ComponentChild {
  const onKeyDown = (event: KeyboardEvent): void => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const at = TABS.findIndex(([each]) => each === tab.value);
    const [next] = TABS[(at + by + TABS.length) % TABS.length]!;
    choose(next);
    document.getElementById(`tab-${next}`)?.focus();
  };
  return h(
    'div',
    { class: 'tabs', role: 'tablist', 'aria-label': 'What is shown', onKeyDown },
    TABS.map(([each, words]) =>
      h(
        'button',
        {
          key: each,
          id: `tab-${each}`,
          type: 'button',
          role: 'tab',
          'aria-selected': tab.value === each,
          'aria-controls': 'picture-panel',
          tabIndex: tab.value === each ? 0 : -1,
          onClick: () => choose(each),
        },
        words,
      ),
    ),
  );
}

function Tools(): ComponentChild {
  if (tab.value === 'paper' || tab.value === 'boards') return null;
  const by = (factor: number) => () => {
    zoom.value = Math.min(MOST_ZOOM, Math.max(1, zoom.value * factor));
  };
  const button = (key: string, words: string, label: string, more: object) =>
    h('button', { key, type: 'button', 'aria-label': label, title: label, ...more }, words);
  return h('div', { class: 'tools' }, [
    tab.value === 'face'
      ? button('sizes', 'Sizes', 'Sizes beside the edges', {
          'aria-pressed': sizesShown.value,
          onClick: () => (sizesShown.value = !sizesShown.value),
        })
      : null,
    tab.value === 'face'
      ? button('measure', 'Measure', 'Measure between two edges', {
          'aria-pressed': measuring.value,
          onClick: toggleMeasure,
        })
      : null,
    button('out', '−', 'Smaller', { disabled: zoom.value <= 1, onClick: by(1 / 1.5) }),
    button('in', '+', 'Larger', { disabled: zoom.value >= MOST_ZOOM, onClick: by(1.5) }),
  ]);
}
