import { effect, signal, untracked } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import { plainText } from '../form/typed.ts';
import { history } from '../state/history.ts';
import { open, said, text } from '../state/piece.ts';
import { trouble } from '../state/place.ts';
import { savedAt, saveJob } from './handles.ts';
import { homes } from './homes.ts';
import { SHOP } from './kept-shop.ts';
import { newId, openPiece, shop } from './open.ts';
import { type Draft, draftOf, keep } from './store.ts';

/** How it stands with the draft in this browser. */
export const kept = signal<'not yet' | 'kept' | 'failed' | 'newer'>('not yet');

/** What can be kept, all but the count of its saves. */
type Unkept = Omit<Draft, 'version'>;

/** Saves of the piece that is open, as this window knows them. */
const versions = new Map<string, number>();
/** What lies in this browser as this window last kept or opened it: the same again is no save, and no news to other windows. */
const asKept = new Map<string, Unkept>();
/** Waits for a pause, so that a drag is not a save a frame. */
const PAUSE = 250;

const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('matwright');

let timer: ReturnType<typeof setTimeout> | undefined;
/** What changed last and is not kept yet. */
let waiting: Unkept | undefined;
let running: Promise<void> = Promise.resolve();

/** What is open as it is at this moment, all but its version. */
function draftNow(): Unkept | undefined {
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

/** The title follows from the text, and when it was is no part of it. */
function same(a: Unkept | undefined, b: Unkept): boolean {
  if (a === undefined || a.shop?.text !== b.shop?.text || a.shop?.file !== b.shop?.file) return false;
  const files = new Set([...Object.keys(a.pictures), ...Object.keys(b.pictures)]);
  return (
    (['file', 'text', 'history', 'home'] as const).every((key) => a[key] === b[key]) &&
    [...files].every((file) => a.pictures[file] === b.pictures[file])
  );
}

async function keepNow(now = draftNow(), force = false): Promise<void> {
  if (now === undefined || (!force && same(asKept.get(now.id), now))) return;
  const version = (versions.get(now.id) ?? 0) + 1;
  const draft: Draft = { ...now, version };
  try {
    const result = await keep(draft, force);
    if (result.ok) {
      versions.set(now.id, version);
      asKept.set(now.id, now);
      if (open.value?.id === now.id) kept.value = 'kept';
      channel?.postMessage({ id: now.id, version });
      return;
    }
    if (open.value?.id === now.id) tellNewer(result.newer);
    // Nobody is there any more to choose: it lies beside the other's.
    else await keepBeside(now);
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

const keepBeside = (left: Unkept): Promise<unknown> => keep({ ...left, id: newId(), version: 1 }, false);

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message || error.name : String(error));

function again(force = false): void {
  trouble.value = undefined;
  waiting = undefined;
  running = running.then(() => keepNow(draftNow(), force));
}

function tellNewer(newer: Draft): void {
  const what = newer.of === 'shop' ? 'the shop' : newer.of === 'readings' ? 'these readings' : 'this piece';
  kept.value = 'newer';
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
export function know(draft: Draft): void {
  versions.set(draft.id, draft.version);
  asKept.set(draft.id, draft);
}

/** Puts a draft on the bench again, with its history. */
function openDraft(draft: Draft): void {
  know(draft);
  // The other was taken: what was typed here is not put over it.
  if (waiting?.id === draft.id) waiting = undefined;
  trouble.value = undefined;
  kept.value = 'kept';
  if (draft.home !== undefined) homes.set(draft.id, draft.home);
  openPiece(draft);
}

/** Opens what was kept as it lies there now: the list that it was chosen from may be an older one. */
export async function openKept(draft: Draft): Promise<void> {
  await keepAll();
  // Another window has a later one: this one's is not thrown away with the choice.
  if (waiting?.id === draft.id) await keepBeside(waiting);
  openDraft((await draftOf(draft.id).catch(() => undefined)) ?? draft);
}

/** Whatever was changed so far lies in the browser then, or it was told why not. */
export function keepAll(): Promise<void> {
  // Between two windows, it waits for the choice.
  if (kept.value !== 'newer') keepWaiting();
  return running;
}

/** Something else may be open by now: what waits is kept as it was left. */
function keepWaiting(): void {
  clearTimeout(timer);
  const left = waiting;
  waiting = undefined;
  if (left !== undefined) running = running.then(() => keepNow(left));
}

/** Another piece is open now: what was said of the one before does not hold for it. */
function leave(): void {
  keepWaiting();
  if (kept.value === 'newer') trouble.value = undefined;
  const now = draftNow();
  kept.value = now !== undefined && same(asKept.get(now.id), now) ? 'kept' : 'not yet';
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
    const unchanged = now.every((each, i) => each === last[i]);
    last = now;
    if (opened) untracked(leave);
    if (unchanged || open.value === undefined) return;
    // What was only opened and never changed need not be kept.
    if (opened && history.value.past.length === 0) return;
    clearTimeout(timer);
    waiting = untracked(draftNow);
    // Until one of the two is chosen, nothing is put over the other.
    if (kept.peek() !== 'newer') timer = setTimeout(keepWaiting, PAUSE);
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
