import { effect, signal, untracked } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import { plainText } from '../form/typed.ts';
import { type Change, history } from '../state/history.ts';
import { open, said, text } from '../state/piece.ts';
import { trouble } from '../state/place.ts';
import { takeShopOf } from './from-folder.ts';
import { savedAt, saveJob } from './handles.ts';
import { homes } from './homes.ts';
import { SHOP } from './kept-shop.ts';
import { leaveBehind } from './left.ts';
import { beginOpening, openPiece, shop } from './open.ts';
import { served } from './served.ts';
import { type Draft, draftOf, forget, keep, newId, onSavedThere, type SavedThere } from './store.ts';

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

let timer: ReturnType<typeof setTimeout> | undefined;
/** What changed last and is not known to be kept. */
let waiting: Unkept | undefined;
/** What is on its way into the store. */
let onItsWay: Unkept | undefined;
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

/** The same texts, one after the other: that a run has ended is no change. */
const sameSteps = (a: readonly Change[], b: readonly Change[]): boolean =>
  a === b || (a.length === b.length && a.every(({ before }, i) => before === b[i]!.before));

/** The title follows from the text, the shop is kept by itself, and when it was is no part of it. */
function same(a: Unkept | undefined, b: Unkept): boolean {
  if (a === undefined) return false;
  const files = new Set([...Object.keys(a.pictures), ...Object.keys(b.pictures)]);
  return (
    (['file', 'text', 'home'] as const).every((key) => a[key] === b[key]) &&
    sameSteps(a.history.past, b.history.past) &&
    sameSteps(a.history.future, b.history.future) &&
    [...files].every((file) => a.pictures[file] === b.pictures[file])
  );
}

/** It lies in the store, or somebody has chosen otherwise. */
function settle(now: Unkept): void {
  if (waiting === now) waiting = undefined;
}

async function keepNow(now: Unkept, force = false): Promise<void> {
  if (!force && same(asKept.get(now.id), now)) return settle(now);
  const version = (versions.get(now.id) ?? 0) + 1;
  try {
    const result = await keep({ ...now, version }, force);
    if (result.ok) {
      versions.set(now.id, version);
      asKept.set(now.id, now);
      settle(now);
      if (open.value?.id === now.id) kept.value = 'kept';
      return;
    }
    if (open.value?.id === now.id) {
      tellNewer(result.newer);
      return;
    }
    // Nobody is there any more to choose: it lies beside the other's.
    await keepBeside(now);
    settle(now);
  } catch (error) {
    tellFailed(error, now);
  }
}

function tellFailed(error: unknown, now: Unkept): void {
  const here = open.value?.id === now.id;
  if (here) kept.value = 'failed';
  // Another piece is open, whose changes wait from now on.
  else leaveBehind({ ...now, version: (versions.get(now.id) ?? 0) + 1 });
  trouble.value = {
    words: `This browser could not keep the last change${here ? '' : ` of ${now.title}`} (${reasonOf(error)}). It is still on this page: save the piece to a file before you close it.`,
    ways: [
      here
        ? { words: 'Save to a file', go: () => void saveJob() }
        : { words: 'Back to that piece', go: () => openPiece({ ...now, shop: shop.value ?? now.shop }) },
      { words: 'Try again', go: () => again(open.value?.id === now.id ? draftNow() : now) },
    ],
  };
}

const keepBeside = (left: Unkept): Promise<unknown> => keep({ ...left, id: newId(), version: 1 }, false);

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message || error.name : String(error));

function again(now = draftNow(), force = false): void {
  trouble.value = undefined;
  if (now === undefined) return;
  waiting = now;
  running = running.then(() => keepNow(now, force));
}

function tellNewer(newer: Draft): void {
  const what = newer.of === 'shop' ? 'the shop' : newer.of === 'readings' ? 'these readings' : 'this piece';
  kept.value = 'newer';
  trouble.value = {
    of: newer.id,
    words: `Another window has changed ${what} since. Nothing of either was lost: keep one of the two.`,
    ways: [
      {
        words: 'Keep what is here',
        go: () => {
          versions.set(newer.id, newer.version);
          again(draftNow(), true);
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
  // Of another piece it holds still, where there is a way out of it.
  if (trouble.value?.of === draft.id || trouble.value?.ways.length === 0) trouble.value = undefined;
  kept.value = 'kept';
  if (draft.home !== undefined) homes.set(draft.id, draft.home);
  // The shop that is there now: the one that it was kept with may have been set anew since.
  openPiece({ ...draft, shop: shop.value ?? draft.shop });
}

/** The shop that this browser keeps, where none is there yet. */
export async function takeKeptShop(): Promise<void> {
  if (shop.value !== undefined) return;
  const draft = await draftOf(SHOP).catch(() => undefined);
  if (draft !== undefined && shop.value === undefined) shop.value = { file: draft.file, text: draft.text };
}

/** Opens what was kept as it lies there now: the list that it was chosen from may be an older one. */
export async function openKept(draft: Draft): Promise<void> {
  const wanted = beginOpening();
  await keepAll();
  // A list may be clicked before the page has begun otherwise.
  await takeKeptShop();
  if (waiting?.id === draft.id) {
    // It could not be kept: what is on this page is the later one.
    if (kept.value !== 'newer') {
      openPiece({ ...waiting, shop: shop.value ?? waiting.shop });
      return;
    }
    // Another window has a later one: this one's is not thrown away with the choice.
    await keepBeside(waiting);
  }
  // The shop beside the file that it came from; where nobody serves it any more, the one that is there.
  if (draft.home !== undefined && served() !== undefined) await takeShopOf(draft.home.name).catch(() => undefined);
  const now = (await draftOf(draft.id).catch(() => undefined)) ?? draft;
  if (wanted()) openDraft(now);
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
  if (left === undefined || left === onItsWay) return;
  onItsWay = left;
  running = running.then(async () => {
    await keepNow(left);
    if (onItsWay === left) onItsWay = undefined;
  });
}

/** A draft goes; where it is open it stays on the bench, kept anew with the next change. */
export async function forgetDraft(id: string): Promise<void> {
  await running;
  if (waiting?.id === id) waiting = undefined;
  await forget(id);
  unknow(id);
}

function unknow(id: string): void {
  versions.delete(id);
  asKept.delete(id);
  if (open.value?.id === id) kept.value = 'not yet';
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
    if (waiting === undefined) return;
    const version = (versions.get(waiting.id) ?? 0) + 1;
    // Nobody has chosen between this and another window's: it lies beside.
    leaveBehind(kept.peek() === 'newer' ? { ...waiting, id: newId(), version: 1 } : { ...waiting, version });
  });
  onSavedThere(hear);
}

function hear({ id, version }: SavedThere): void {
  if (version === 0) unknow(id);
  if (id === SHOP && open.value?.id !== SHOP) void followOther(version);
  if (id === open.value?.id && version > (versions.get(id) ?? 0)) {
    kept.value = 'newer';
    void draftOf(id).then((newer) => {
      if (newer !== undefined && open.value?.id === id) tellNewer(newer);
    });
  }
}
