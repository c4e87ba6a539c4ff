import { type Draft, draftOf, isDraft, keep, newId } from './store.ts';

/**
 * What was changed in the last moment before a window went. The browser's store answers too late then, so it is put
 * where writing is done at once, and kept as every other draft when a page is opened next.
 */
const BEFORE = 'matwright left ';

/** Pictures are no text: those that lie in the store already go on with it. */
export function leaveBehind(draft: Draft): void {
  try {
    localStorage.setItem(`${BEFORE}${draft.id}`, JSON.stringify({ ...draft, pictures: {} }));
  } catch {
    // There is nobody any more to be told.
  }
}

let running: Promise<void> | undefined;

/** Keeps what windows left behind; beside the other where one that is later lies there. */
export function keepLeft(): Promise<void> {
  running ??= keepAllLeft().finally(() => {
    running = undefined;
  });
  return running;
}

async function keepAllLeft(): Promise<void> {
  for (const key of leftKeys()) {
    const draft = read(key);
    if (draft !== undefined) await keepOne(draft);
    localStorage.removeItem(key);
  }
}

function leftKeys(): readonly string[] {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(BEFORE));
  } catch {
    return [];
  }
}

function read(key: string): Draft | undefined {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? '');
    return isDraft(found) ? found : undefined;
  } catch {
    return undefined;
  }
}

async function keepOne(left: Draft): Promise<void> {
  const before = await draftOf(left.id);
  // It had come as far as the store after all.
  if (before?.text === left.text) return;
  const draft: Draft = { ...left, pictures: before?.pictures ?? {} };
  const result = await keep(draft, false);
  if (!result.ok && result.newer.text !== left.text) await keep({ ...draft, id: newId(), version: 1 }, false);
}
