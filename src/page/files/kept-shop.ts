import type { Source } from '../../outputs/solve-job.ts';
import { EMPTY, type History, stepTo } from '../state/history.ts';
import { type Draft, draftOf, keep } from './store.ts';

/** The id that the shop's draft has. */
export const SHOP = 'shop';

/** A shop that was chosen or dropped is there again after a reload; where the browser keeps nothing, that is told elsewhere. */
export async function keepShop({ file, text }: Source): Promise<void> {
  try {
    const before = await draftOf(SHOP);
    if (before?.text === text) return;
    const version = (before?.version ?? 0) + 1;
    const own = { format: 1, id: SHOP, of: 'shop', title: 'The shop', pictures: {} } as const;
    const history = takenOver(before, file);
    await keep({ ...own, file, text, history, version, at: Date.now() }, true);
  } catch {}
}

/** What the browser kept of the shop is one step behind a file that was taken since: it may have been saved nowhere. */
export const takenOver = (before: Draft | undefined, file: string): History =>
  before === undefined || before.file !== file ? EMPTY : stepTo(before.history, before.text, takenWords(file));

export const takenWords = (file: string): string => `${file} taken`;
