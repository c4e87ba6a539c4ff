import type { Source } from '../../outputs/solve-job.ts';
import { EMPTY } from '../state/history.ts';
import { draftOf, keep } from './store.ts';

/** The id that the shop's draft has. */
export const SHOP = 'shop';

/** A shop that was chosen or dropped is there again after a reload; where the browser keeps nothing, that is told elsewhere. */
export async function keepShop({ file, text }: Source): Promise<void> {
  try {
    const before = await draftOf(SHOP);
    if (before?.text === text) return;
    const version = (before?.version ?? 0) + 1;
    const own = { format: 1, id: SHOP, of: 'shop', title: 'The shop', pictures: {}, history: EMPTY } as const;
    await keep({ ...own, file, text, version, at: Date.now() }, true);
  } catch {}
}
