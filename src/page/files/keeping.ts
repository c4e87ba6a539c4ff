import { effect, signal, untracked } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import { plainText } from '../form/typed.ts';
import { history } from '../state/history.ts';
import { open, said, text } from '../state/piece.ts';
import { trouble } from '../state/place.ts';
import { savedAt, saveJob } from './handles.ts';
import { homes } from './homes.ts';
import { SHOP } from './kept-shop.ts';
import { openPiece, shop } from './open.ts';
import { type Draft, draftOf, keep } from './store.ts';

/** How it stands with the draft in this browser. */
export const kept = signal<'not yet' | 'kept' | 'failed' | 'newer'>('not yet');

/** Saves of the piece that is open, as this window knows them. */
const versions = new Map<string, number>();
/** Waits for a pause, so that a drag is not a save a frame. */
const PAUSE = 250;

const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('matwright');

let timer: ReturnType<typeof setTimeout> | undefined;
/** What changed last and is not kept yet. */
let waiting: Omit<Draft, 'version'> | undefined;
let running: Promise<void> = Promise.resolve();

/** What is open as it is at this moment, all but its version. */
function draftNow(): Omit<Draft, 'version'> | undefined {
  const now = open.value;
  if (now === undefined) return undefined;
  return {
    format: 1,
    id: now.id,
    file: now.file,
    title: plainText(said(['title'])) || now.file,
    text: text.value,
    pictures: now.pictures,
    history: history.value,
    at: Date.now(),
    ...defined({ shop: now.shop, of: now.of, calibrating: now.calibrating, home: homes.get(now.id) }),
  };
}

async function keepNow(now = draftNow(), force = false): Promise<void> {
  if (now === undefined) return;
  const version = (versions.get(now.id) ?? 0) + 1;
  const draft: Draft = { ...now, version };
  try {
    const result = await keep(draft, force);
    if (result.ok) {
      versions.set(now.id, version);
      if (open.value?.id === now.id) kept.value = 'kept';
      channel?.postMessage({ id: now.id, version });
      return;
    }
    kept.value = 'newer';
    tellNewer(result.newer);
  } catch (error) {
    kept.value = 'failed';
    trouble.value = {
      words: `This browser could not keep the last change (${reasonOf(error)}). It is still on this page: save the piece to a file before you close it.`,
      ways: [
        { words: 'Save to a file', go: () => void saveJob() },
        { words: 'Try again', go: () => again() },
      ],
    };
  }
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message || error.name : String(error));

function again(force = false): void {
  trouble.value = undefined;
  running = running.then(() => keepNow(draftNow(), force));
}

function tellNewer(newer: Draft): void {
  const what = newer.of === 'shop' ? 'the shop' : newer.of === 'readings' ? 'these readings' : 'this piece';
  trouble.value = {
    words: `Another window has changed ${what} since. Nothing of either was lost: keep one of the two.`,
    ways: [
      {
        words: 'Keep what is here',
        go: () => {
          versions.set(newer.id, newer.version);
          again(true);
        },
      },
      { words: 'Take the other', go: () => openDraft(newer) },
    ],
  };
}

/** A draft goes on where another save of it left off. */
export const knowVersion = (id: string, version: number): void => {
  versions.set(id, version);
};

/** Puts a draft on the bench again, with its history. */
export function openDraft(draft: Draft): void {
  versions.set(draft.id, draft.version);
  trouble.value = undefined;
  kept.value = 'kept';
  if (draft.home !== undefined) homes.set(draft.id, draft.home);
  openPiece(draft);
}

/** Something else may be open by now: what waits is kept as it was left. */
function keepWaiting(): void {
  clearTimeout(timer);
  const left = waiting;
  waiting = undefined;
  if (left !== undefined) running = running.then(() => keepNow(left));
}

/** The shop is changed in another window and lies on no desk here: pieces have it as it is there. */
async function followOther(version: number): Promise<void> {
  const newer = await draftOf(SHOP).catch(() => undefined);
  if (newer === undefined || newer.version < version || open.value?.id === SHOP) return;
  versions.set(SHOP, newer.version);
  shop.value = { file: newer.file, text: newer.text };
  const now = open.value;
  if (now !== undefined) open.value = { ...now, shop: shop.value };
}

/** From now on every change is kept. */
export function keepChanges(): void {
  let last: readonly unknown[] = [];
  effect(() => {
    const now: readonly unknown[] = [
      open.value?.id,
      text.value,
      open.value?.pictures,
      open.value?.shop,
      // Where it was saved is kept with it.
      savedAt.value,
    ];
    const opened = now[0] !== last[0];
    const same = now.every((each, i) => each === last[i]);
    last = now;
    if (opened) keepWaiting();
    if (same || open.value === undefined) return;
    // What was only opened and never changed need not be kept.
    if (opened && history.value.past.length === 0) return;
    if (kept.peek() === 'newer') return;
    clearTimeout(timer);
    waiting = untracked(draftNow);
    timer = setTimeout(keepWaiting, PAUSE);
  });
  addEventListener('pagehide', () => {
    clearTimeout(timer);
    waiting = undefined;
    void keepNow();
  });
  channel?.addEventListener('message', (event: MessageEvent<{ readonly id: string; readonly version: number }>) => {
    const { id, version } = event.data;
    if (id === SHOP && open.value?.id !== SHOP) void followOther(version);
    if (id === open.value?.id && version > (versions.get(id) ?? 0)) {
      kept.value = 'newer';
      void draftOf(id).then((newer) => {
        if (newer !== undefined) tellNewer(newer);
      });
    }
  });
}
