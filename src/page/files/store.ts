import type { Source } from '../../outputs/solve-job.ts';
import type { Calibrated } from '../../shop/readings/readings.ts';
import type { History } from '../state/history.ts';
import type { Home } from './homes.ts';

/** A piece as the browser keeps it. */
export interface Draft {
  readonly format: 1;
  readonly id: string;
  readonly file: string;
  readonly title: string;
  /** Where it is no piece. */
  readonly of?: 'shop' | 'readings';
  readonly calibrating?: Calibrated;
  /** The file of a folder that it came from. */
  readonly home?: Home;
  readonly text: string;
  readonly shop?: Source;
  readonly pictures: Readonly<Record<string, Blob>>;
  readonly history: History;
  /** Counts the saves, so that two windows on one piece notice one another. */
  readonly version: number;
  /** ms, to list the latest first. */
  readonly at: number;
}

const NAME = 'matwright';
const STORE = 'drafts';
/** What is kept beside drafts, each under a key of its own: ticks of a run, the day. */
const RECORDS = 'records';

let opened: Promise<IDBDatabase> | undefined;

export const newId = (): string => crypto.randomUUID();

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the storage gave no reason'));
  });

function database(): Promise<IDBDatabase> {
  opened ??= openDatabase().catch((error: unknown) => {
    // Another try is one.
    opened = undefined;
    throw error;
  });
  return opened;
}

function openDatabase(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 2);
    request.onupgradeneeded = () => {
      const stores = request.result.objectStoreNames;
      for (const name of [STORE, RECORDS].filter((each) => !stores.contains(each)))
        request.result.createObjectStore(name, { keyPath: 'id' });
    };
    request.onsuccess = () => {
      // A later page may want another form of it: it does not wait for this one.
      request.result.onversionchange = () => {
        request.result.close();
        opened = undefined;
      };
      // Somebody has emptied the browser's storage under this page.
      request.result.onclose = () => {
        opened = undefined;
      };
      resolve(request.result);
    };
    request.onerror = () => reject(request.error ?? new Error('the storage cannot be opened'));
  });
}

/** Drafts that can be read, the latest first, and how many records are of no use. */
export async function drafts(): Promise<{ readonly drafts: readonly Draft[]; readonly broken: number }> {
  const all: readonly unknown[] = await done((await database()).transaction(STORE).objectStore(STORE).getAll());
  const good = all.filter(isDraft);
  return { drafts: good.toSorted((a, b) => b.at - a.at), broken: all.length - good.length };
}

export async function draftOf(id: string): Promise<Draft | undefined> {
  const found: unknown = await done((await database()).transaction(STORE).objectStore(STORE).get(id));
  return isDraft(found) ? found : undefined;
}

/** Windows tell one another of every save. */
const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('matwright');

/** A save that another window has made; of no version where the draft is gone. */
export interface SavedThere {
  readonly id: string;
  readonly version: number;
}

/** Gives a way to hear no more. */
export function onSavedThere(hear: (saved: SavedThere) => void): () => void {
  const listen = ({ data }: MessageEvent<SavedThere>): void => hear(data);
  channel?.addEventListener('message', listen);
  return () => channel?.removeEventListener('message', listen);
}

export type Kept = { readonly ok: true } | { readonly ok: false; readonly newer: Draft };

/** Keeps a draft unless another window has kept a later one; what was written is read back and compared. */
export async function keep(draft: Draft, force: boolean): Promise<Kept> {
  const transaction = (await database()).transaction(STORE, 'readwrite', { durability: 'strict' });
  const store = transaction.objectStore(STORE);
  const before: unknown = await done(store.get(draft.id));
  if (!force && isDraft(before) && before.version >= draft.version) return { ok: false, newer: before };
  const finished = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error('the storage is full'));
  });
  const put = done(store.put(draft));
  await Promise.all([put, finished]);
  const back = await draftOf(draft.id);
  if (back?.text !== draft.text || back.version !== draft.version)
    throw new Error('what was kept reads back otherwise');
  channel?.postMessage({ id: draft.id, version: draft.version });
  return { ok: true };
}

export async function forget(id: string): Promise<void> {
  await done((await database()).transaction(STORE, 'readwrite').objectStore(STORE).delete(id));
  channel?.postMessage({ id, version: 0 });
}

/** What was kept under a key; undefined where there is nothing, or nothing of this form. */
export async function recordOf(id: string): Promise<unknown> {
  return valueIn(await done((await database()).transaction(RECORDS).objectStore(RECORDS).get(id)));
}

function valueIn(found: unknown): unknown {
  if (typeof found !== 'object' || found === null) return undefined;
  const { format, value } = found as { readonly format?: unknown; readonly value?: unknown };
  return format === 1 ? value : undefined;
}

export const keepRecord = (id: string, value: unknown): Promise<void> => changeRecord(id, () => value);

/** Makes what is kept under a key of what is kept there at this moment, so that no window undoes what another one did. */
export async function changeRecord(id: string, made: (before: unknown) => unknown): Promise<void> {
  const records = (await database()).transaction(RECORDS, 'readwrite', { durability: 'strict' }).objectStore(RECORDS);
  const value = made(valueIn(await done(records.get(id))));
  await done(records.put({ id, format: 1, value }));
}

/** Records of other programs, of later versions or broken ones are left alone. */
export function isDraft(value: unknown): value is Draft {
  if (typeof value !== 'object' || value === null) return false;
  const { format, id, file, text, history, version, pictures } = value as Partial<Draft>;
  return (
    format === 1 &&
    typeof id === 'string' &&
    typeof file === 'string' &&
    typeof text === 'string' &&
    typeof version === 'number' &&
    typeof pictures === 'object' &&
    Array.isArray(history?.past) &&
    Array.isArray(history.future)
  );
}
