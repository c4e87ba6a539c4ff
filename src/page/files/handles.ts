import { signal } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import { open, text } from '../state/piece.ts';
import { saying, trouble } from '../state/place.ts';
import { save } from './savers.ts';
import { takeFiles } from './take.ts';

/** Files that the browser lets be written again, by the piece that came out of them. */
const handles = new Map<string, FileSystemFileHandle>();

/** When the piece that is open was last saved to a file, and the text that went there. */
export const savedAt = signal<{ readonly id: string; readonly time: string; readonly text: string } | undefined>(
  undefined,
);

interface WithPickers {
  readonly showOpenFilePicker?: (options: object) => Promise<readonly FileSystemFileHandle[]>;
}

/** Opens files by the browser's own dialog, keeping the right to save back where it gives one. */
export async function chooseFiles(fallback: () => void): Promise<void> {
  const pick = (globalThis as WithPickers).showOpenFilePicker;
  if (pick === undefined) return fallback();
  try {
    const chosen = await pick({ multiple: true });
    await takeFiles(await Promise.all(chosen.map((each) => each.getFile())));
    const now = open.value;
    const own = chosen.find(({ name }) => name === now?.file);
    if (now !== undefined && own !== undefined) handles.set(now.id, own);
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'AbortError')) fallback();
  }
}

const clock = (): string => {
  const now = new Date();
  return `${String(now.getHours()).padStart(2, '0')}:${String(now.getMinutes()).padStart(2, '0')}`;
};

/** The job's text, to the file that it came from or as a download. */
export async function saveJob(): Promise<void> {
  const now = open.value;
  if (now === undefined) return;
  const words = text.value;
  const handle = handles.get(now.id);
  const blob = new Blob([words], { type: 'application/yaml' });
  try {
    const where = await save({ file: now.file, blob, ...defined({ handle }) });
    savedAt.value = { id: now.id, time: clock(), text: words };
    saying.value = `Saved ${where} at ${clock()}.`;
  } catch (error) {
    trouble.value = {
      words: `The piece was not saved: ${error instanceof Error ? error.message : String(error)}. Its text can be copied from the text beside the form.`,
      ways: [{ words: 'Try again', go: () => void saveJob() }],
    };
  }
}
