import { signal } from '@preact/signals';
import type { Source } from '../../outputs/solve-job.ts';
import { dataOf } from '../../read/edit/find-node.ts';
import { change } from '../state/history.ts';
import { trouble } from '../state/place.ts';
import { type Home, homes } from './homes.ts';
import { SHOP, takenWords } from './kept-shop.ts';
import { beginOpening, openPiece, shop } from './open.ts';
import { GoneThere, type Held, saveServed, served, servedFile, servedNames } from './served.ts';
import { markName, takeMark } from './shop-mark.ts';
import { draftOf } from './store.ts';

/** Jobs of the folder that the page was served with. */
export const jobNames = signal<readonly string[]>([]);
let allNames: readonly string[] = [];

const isText = (name: string): boolean => /\.(?:ya?ml|json)$/iu.test(name);
const isShopName = (name: string): boolean => /(?:^|\/)shop\.(?:ya?ml|json)$/iu.test(name);
const folderOf = (name: string): string => name.slice(0, name.lastIndexOf('/') + 1);
const decode = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);

/** Looks through the folder, and takes the shop that lies in it. */
export async function readFolder(): Promise<void> {
  if (served() === undefined) return;
  try {
    allNames = await servedNames();
    jobNames.value = allNames.filter((name) => isText(name) && !isShopName(name) && !/schema\.json$/u.test(name));
    await takeShopOf('');
  } catch (error) {
    tellFailed('The folder could not be read', error);
  }
}

/** The mark that the shop names, beside its file. */
async function readMark(own: Source): Promise<void> {
  const name = markName(own);
  const file = `${folderOf(own.file)}${name}`;
  if (name !== undefined && allNames.includes(file)) await takeMark(new Blob([(await servedFile(file)).bytes]), name);
}

/** From now on the shop is the one beside a job, else in the nearest folder above it within the one that is served. */
export async function takeShopOf(job: string): Promise<void> {
  for (let at = folderOf(job); ; at = folderOf(at.slice(0, -1))) {
    const name = `${at}shop.yaml`;
    if (allNames.includes(name)) {
      const held = await servedFile(name);
      const now = shop.value;
      if (now === undefined || !isOf(homes.get(SHOP), held)) shop.value = await shopFrom(held);
      homes.set(SHOP, { name, mark: held.mark });
      await readMark(shop.value!);
      return;
    }
    if (at === '') return;
  }
}

const isOf = (home: Home | undefined, { name, mark }: Held): boolean => home?.name === name && home.mark === mark;

/** Where the file is as it was when the browser kept a change of it, that change holds; else the file. */
async function shopFrom(held: Held): Promise<Source> {
  const draft = await draftOf(SHOP).catch(() => undefined);
  return { file: held.name, text: draft !== undefined && isOf(draft.home, held) ? draft.text : decode(held.bytes) };
}

/** Opens a job of the folder with its shop and the pictures that it names. */
export async function openFromFolder(name: string): Promise<void> {
  const wanted = beginOpening();
  try {
    const { bytes, mark } = await servedFile(name);
    const text = decode(bytes);
    const pictures: Record<string, Blob> = {};
    for (const picture of picturesOf(text)) {
      const file = `${folderOf(name)}${picture}`;
      if (allNames.includes(file)) pictures[picture] = new Blob([(await servedFile(file)).bytes]);
    }
    if (wanted()) await takeShopOf(name);
    if (!wanted()) return;
    const id = openPiece({ file: name, text, pictures });
    homes.set(id, { name, mark });
  } catch (error) {
    tellFailed(`${name} could not be opened`, error);
  }
}

/** What lies in the folder now, for who finds it changed: the shop's file is a change on the desk, a job another piece. */
export async function takeThere(id: string, name: string): Promise<void> {
  if (id !== SHOP) return openFromFolder(name);
  try {
    const { bytes, mark } = await servedFile(name);
    change(decode(bytes), takenWords(name));
    homes.set(SHOP, { name, mark });
    trouble.value = undefined;
  } catch (error) {
    tellFailed(`${name} could not be read`, error);
  }
}

function picturesOf(text: string): readonly string[] {
  try {
    const { openings } = dataOf(text) as { readonly openings?: readonly { readonly picture?: unknown }[] };
    return (openings ?? []).flatMap(({ picture }) => (typeof picture === 'string' ? [picture] : []));
  } catch {
    return [];
  }
}

/** Saves where a piece came from; a new one gets a name of its own there. */
export async function saveToFolder(id: string, file: string, text: string, force = false): Promise<string> {
  const home = homes.get(id) ?? { name: file, mark: undefined };
  const over = force ? await markThere(home.name) : home.mark;
  const mark = await saveServed(home.name, text, over).catch((error: unknown) => {
    // It was removed there: nothing is written over where it is saved anew.
    if (error instanceof GoneThere && over !== undefined) return saveServed(home.name, text, undefined);
    throw error;
  });
  homes.set(id, { name: home.name, mark });
  if (!allNames.includes(home.name)) void readFolder();
  return `into ${home.name}`;
}

async function markThere(name: string): Promise<string | undefined> {
  try {
    return (await servedFile(name)).mark;
  } catch (error) {
    if (error instanceof GoneThere) return undefined;
    throw error;
  }
}

function tellFailed(what: string, error: unknown): void {
  trouble.value = { words: `${what}: ${error instanceof Error ? error.message : String(error)}.`, ways: [] };
}
