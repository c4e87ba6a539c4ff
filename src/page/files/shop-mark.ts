import { signal } from '@preact/signals';
import type { Source } from '../../outputs/solve-job.ts';
import { dataOf } from '../../read/edit/find-node.ts';
import { shop } from './open.ts';
import { keepRecord, recordOf } from './store.ts';

/** The file of the shop's mark, under the name that the shop gives it. */
interface KeptMark {
  readonly name: string;
  readonly blob: Blob;
}

const kept = signal<KeptMark | undefined>(undefined);
const RECORD = 'shop-mark';

/** As the shop's file names it; undefined where it names none. */
export function markName(of: Source | undefined = shop.value): string | undefined {
  try {
    const { shop: head } = dataOf(of?.text ?? '') as { readonly shop?: { readonly mark?: unknown } };
    return typeof head?.mark === 'string' ? head.mark : undefined;
  } catch {
    return undefined;
  }
}

const lastPart = (name: string): string => name.slice(name.lastIndexOf('/') + 1);

/** Whether a file that was dropped is the one that the shop names. */
export const isMark = (file: string): boolean => lastPart(markName() ?? '') === file;

/** Has it for all that is made from now on, after a reload too where the browser keeps anything. */
export async function takeMark(blob: Blob, name = markName()): Promise<void> {
  if (name === undefined) return;
  kept.value = { name, blob };
  try {
    await keepRecord(RECORD, kept.value);
  } catch {}
}

export async function takeKeptMark(): Promise<void> {
  const found = (await recordOf(RECORD).catch(() => undefined)) as Partial<KeptMark> | undefined;
  const { name, blob } = found ?? {};
  if (kept.value === undefined && typeof name === 'string' && blob instanceof Blob) kept.value = { name, blob };
}

/** What the shop's file names, by those names; nothing where its file is not on this page. */
export async function shopPictures(of: Source | undefined): Promise<Readonly<Record<string, Uint8Array>> | undefined> {
  const now = kept.value;
  if (now === undefined || now.name !== markName(of)) return undefined;
  return { [now.name]: new Uint8Array(await now.blob.arrayBuffer()) };
}
