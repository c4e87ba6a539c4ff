import { signal } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import type { JobSource } from '../engine/answers.ts';
import { keepAll } from '../files/keeping.ts';
import { shop } from '../files/open.ts';
import { shopPictures } from '../files/shop-mark.ts';
import { changeRecord, type Draft, drafts, keep, newId, recordOf } from '../files/store.ts';
import { EMPTY } from '../state/history.ts';
import { trouble } from '../state/place.ts';

/** What the day knows of a piece that is kept in this browser. */
export interface Mark {
  readonly chosen?: boolean;
  readonly cut?: boolean;
  readonly done?: boolean;
}

export const pieces = signal<readonly Draft[]>([]);
const marks = signal<Readonly<Record<string, Mark>>>({});

const DAY = 'day';

export async function readDay(): Promise<void> {
  try {
    await keepAll();
    const [{ drafts: all }, kept] = await Promise.all([drafts(), recordOf(DAY)]);
    pieces.value = all.filter(({ of }) => of === undefined).toReversed();
    marks.value = marksOf(kept);
  } catch (error) {
    tell('The day could not be read', error);
  }
}

const marksOf = (kept: unknown): Readonly<Record<string, Mark>> =>
  typeof kept === 'object' && kept !== null ? (kept as Readonly<Record<string, Mark>>) : {};

export const markOf = (id: string): Mark => marks.value[id] ?? {};

export function mark(id: string, more: Mark): void {
  const withIt = (all: Readonly<Record<string, Mark>>) => ({ ...all, [id]: { ...all[id], ...more } });
  marks.value = withIt(marks.value);
  // Another window may have ticked too since the day was read.
  changeRecord(DAY, (kept) => withIt(marksOf(kept))).catch((error: unknown) =>
    tell('This browser could not keep the last tick', error),
  );
}

/** The chosen ones; all that are not done where none is chosen. */
export function ofTheRun(): readonly Draft[] {
  const chosen = pieces.value.filter(({ id }) => markOf(id).chosen === true);
  return chosen.length > 0 ? chosen : pieces.value.filter(({ id }) => markOf(id).done !== true);
}

/** The jobs of the run that is shown, as they are kept at this moment, all of the shop that is there now. */
export async function runSources(): Promise<readonly JobSource[]> {
  const shown = new Set(ofTheRun().map(({ id }) => id));
  await readDay();
  const run = pieces.value.filter(({ id }) => shown.has(id));
  return Promise.all(
    run.map(async ({ id, file, text, pictures, shop: own }): Promise<JobSource> => {
      const bytes = await Promise.all(
        Object.entries(pictures).map(async ([name, blob]) => [name, new Uint8Array(await blob.arrayBuffer())] as const),
      );
      const used = shop.value ?? own;
      const more = defined({ shop: used, shopPictures: await shopPictures(used) });
      return { piece: id, file, text, pictures: Object.fromEntries(bytes), ...more };
    }),
  );
}

/** Keeps new pieces and chooses them; false where one of them could not be kept, which is told. */
export async function addPieces(
  all: readonly { readonly file: string; readonly title: string; readonly text: string }[],
  pictures: Readonly<Record<string, Blob>> = {},
): Promise<boolean> {
  let kept = true;
  for (const { file, title, text } of all) {
    const id = newId();
    const own = { format: 1, id, file, title, text, pictures, history: EMPTY, version: 1, at: Date.now() } as const;
    try {
      await keep({ ...own, ...defined({ shop: shop.value }) }, false);
      mark(id, { chosen: true });
    } catch (error) {
      tell(`This browser could not keep ${title}, nor what comes after it`, error);
      kept = false;
      break;
    }
  }
  await readDay();
  return kept;
}

export function tell(what: string, error: unknown): void {
  trouble.value = { words: `${what} (${error instanceof Error ? error.message : String(error)}).`, ways: [] };
}
