import { ChangedMeanwhile } from '../files/plan.ts';
import { pieceOf, type TextChange } from '../files/text-change.ts';
import { write } from './output.ts';

/**
 * Puts another text in the place of one that was read before, whole or not at all, and only if that is still as it was
 * read. Without `before` there must be no file yet. A link is followed, and stays one.
 */
export const replaceText = (file: string, before: string | undefined, after: string): Promise<void> =>
  write([pieceOf({ file, before, after })]);

/** Several texts, all or none. */
export const replaceTexts = (changes: readonly TextChange[]): Promise<void> => write(changes.map(pieceOf));

/** Texts by file where none of them is yet: all or none. */
export const writeNew = (texts: readonly (readonly [file: string, text: string])[]): Promise<void> =>
  write(texts.map(([file, after]) => pieceOf({ file, before: undefined, after })));

/** Others may change the same file: each attempt after the first means that another has come through. */
const ATTEMPTS = 50;

/**
 * Does something that reads a file, works out its change and replaces it, and does it once more from the reading on where somebody else
 * has changed the file meanwhile: so of many at once every change ends up in it.
 */
export async function againIfChanged<T>(work: () => Promise<T>): Promise<T> {
  for (let left = ATTEMPTS; ; left -= 1) {
    try {
      return await work();
    } catch (problem) {
      if (left <= 1 || !(problem instanceof ChangedMeanwhile)) throw problem;
    }
  }
}
