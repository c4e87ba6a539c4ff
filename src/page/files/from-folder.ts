import { signal } from '@preact/signals';
import type { Source } from '../../outputs/solve-job.ts';
import { dataOf } from '../../read/edit/find-node.ts';
import { trouble } from '../state/place.ts';
import { homes } from './homes.ts';
import { openPiece, shop } from './open.ts';
import { saveServed, served, servedFile, servedNames } from './served.ts';
import { markName, takeMark } from './shop-mark.ts';

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
    const own = await nearestShop('');
    if (own !== undefined) {
      shop.value = own;
      await readMark(own);
    }
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

/** The shop beside a job, else in the nearest folder above it within the one that is served. */
async function nearestShop(job: string): Promise<Source | undefined> {
  for (let at = folderOf(job); ; at = folderOf(at.slice(0, -1))) {
    const name = `${at}shop.yaml`;
    if (allNames.includes(name)) return { file: name, text: decode((await servedFile(name)).bytes) };
    if (at === '') return undefined;
  }
}

/** Opens a job of the folder with its shop and the pictures that it names. */
export async function openFromFolder(name: string): Promise<void> {
  try {
    const { bytes, mark } = await servedFile(name);
    const text = decode(bytes);
    const own = await nearestShop(name);
    if (own !== undefined) await readMark(own);
    const pictures: Record<string, Blob> = {};
    for (const picture of picturesOf(text)) {
      const file = `${folderOf(name)}${picture}`;
      if (allNames.includes(file)) pictures[picture] = new Blob([(await servedFile(file)).bytes]);
    }
    const id = openPiece({ file: name, text, pictures, shop: own });
    homes.set(id, { name, mark });
  } catch (error) {
    tellFailed(`${name} could not be opened`, error);
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
  const mark = force ? (await servedFile(home.name)).mark : home.mark;
  homes.set(id, { name: home.name, mark: await saveServed(home.name, text, mark) });
  if (!allNames.includes(home.name)) void readFolder();
  return `into ${home.name}`;
}

function tellFailed(what: string, error: unknown): void {
  trouble.value = { words: `${what}: ${error instanceof Error ? error.message : String(error)}.`, ways: [] };
}
