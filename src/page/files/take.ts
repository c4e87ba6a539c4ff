import { dataOf } from '../../read/edit/find-node.ts';
import { addPieces } from '../day/day-state.ts';
import { plainText } from '../form/typed.ts';
import { edit } from '../state/edit.ts';
import { open, said } from '../state/piece.ts';
import { place, saying, trouble } from '../state/place.ts';
import { takeShop } from './desk.ts';
import { SHOP } from './kept-shop.ts';
import { openPiece } from './open.ts';
import { isMark, takeMark } from './shop-mark.ts';

/** Larger files are refused unread; the reader's own limit is lower, and says where. */
const MOST_BYTES = 4 * 1024 * 1024;
const MOST_PICTURE = 200 * 1024 * 1024;

const isText = (name: string): boolean => /\.(?:ya?ml|json)$/iu.test(name);
const isPicture = (name: string): boolean => /\.(?:jpe?g|png)$/iu.test(name);
/** A mark may be an SVG; nothing else of a piece is. */
const isDrawing = (name: string): boolean => /\.svg$/iu.test(name);
/** Whether a file is of any use here, by its name. */
export const isOurs = (name: string): boolean => isText(name) || isPicture(name) || isDrawing(name);
const isShop = (name: string): boolean => /^shop\.(?:ya?ml|json)$/iu.test(name);

/** Files that were chosen or dropped: the shop first, then pieces, then pictures for the one that is open. Gives the ids of what was made of them. */
export async function takeFiles(files: readonly File[]): Promise<ReadonlyMap<File, string>> {
  const taken = new Map<File, string>();
  const texts = files.filter(({ name }) => isText(name));
  trouble.value = undefined;
  for (const file of texts.filter(({ name }) => isShop(name))) {
    const words = await textOf(file);
    if (words === undefined) continue;
    await takeShop({ file: file.name, text: words });
    taken.set(file, SHOP);
    saying.value = `The shop is now ${file.name}.`;
  }
  // Now that the shop is known: its mark is no picture of a piece.
  const marks = files.filter(({ name }) => (isPicture(name) || isDrawing(name)) && isMark(name));
  for (const file of marks) {
    const blob = await heldOf(file);
    if (blob === undefined) continue;
    await takeMark(blob);
    saying.value = `${file.name} is the shop’s mark.`;
  }
  const pictures = files.filter((file) => isPicture(file.name) && !marks.includes(file));
  const strange = files.filter((file) => !isText(file.name) && !isPicture(file.name) && !marks.includes(file));
  const held = await Promise.all(pictures.map(async (file) => [file.name, await heldOf(file)] as const));
  const beside = Object.fromEntries(held.flatMap(([name, blob]) => (blob === undefined ? [] : [[name, blob]])));
  const jobs = texts.filter(({ name }) => !isShop(name));
  if (jobs.length > 1) {
    await takeDay(jobs, beside);
    return taken;
  }
  for (const file of jobs) {
    const words = await textOf(file);
    if (words !== undefined) {
      taken.set(file, openPiece({ file: file.name, text: words, pictures: beside }));
      saying.value = `${file.name} is open.`;
    }
  }
  if (jobs.length === 0) {
    for (const [i, [name, blob]] of held.entries())
      if (blob !== undefined) showPicture(name, blob, openingFor(name, i));
  }
  if (strange.length > 0) {
    const names = strange.map(({ name }) => name).join(', ');
    tell(
      `${names}: neither a job (.yaml, .json) nor a picture (.jpg, .png), nor the mark that the shop’s file names, so nothing was done with it.`,
    );
  }
  return taken;
}

/** Several jobs are a day: each is kept, none is opened before the others. */
async function takeDay(jobs: readonly File[], pictures: Readonly<Record<string, Blob>>): Promise<void> {
  const all = [];
  for (const file of jobs) {
    const words = await textOf(file);
    if (words !== undefined) all.push({ file: file.name, title: titleOf(words) ?? file.name, text: words });
  }
  const kept = await addPieces(all, pictures);
  place.value = 'day';
  if (kept) saying.value = `${all.length} pieces are kept.`;
}

function titleOf(words: string): string | undefined {
  try {
    const { title } = dataOf(words) as { readonly title?: unknown };
    return title === undefined ? undefined : String(title);
  } catch {
    return undefined;
  }
}

/** The opening that names the picture, else the next one. */
function openingFor(name: string, next: number): number {
  const all = said(['openings']);
  const count = Array.isArray(all) ? all.length : 1;
  for (let i = 0; i < count; i++) if (plainText(said(['openings', i, 'picture'])) === name) return i;
  return Math.min(next, count - 1);
}

export async function takePicture(file: File, opening: number): Promise<void> {
  const blob = await heldOf(file);
  if (blob !== undefined) showPicture(file.name, blob, opening);
}

function showPicture(name: string, blob: Blob, opening: number): void {
  const now = open.value;
  if (now === undefined || now.of !== undefined) {
    tell('Open a piece first, then drop the picture on it.');
    return;
  }
  open.value = { ...now, pictures: { ...now.pictures, [name]: blob } };
  edit([{ path: ['openings', opening, 'picture'], value: name }], `picture ${name}`);
}

/** The bytes themselves: a file that is changed on the disk later can be read no more. */
async function heldOf(file: File): Promise<Blob | undefined> {
  if (file.size > MOST_PICTURE) {
    tell(`${file.name} is larger than 200 MB; save it smaller.`);
    return undefined;
  }
  try {
    return new Blob([await file.arrayBuffer()], { type: file.type });
  } catch (error) {
    tell(`${file.name} could not be read (${error instanceof Error ? error.message : String(error)}).`);
    return undefined;
  }
}

async function textOf(file: File): Promise<string | undefined> {
  if (file.size > MOST_BYTES) {
    tell(`${file.name} is larger than 4 MB and was not read; a job has at most 256 KiB.`);
    return undefined;
  }
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await file.arrayBuffer());
  } catch {
    tell(`${file.name} is no text in UTF-8; save it so.`);
    return undefined;
  }
}

const tell = (words: string): void => {
  trouble.value = { words, ways: [] };
};
