import { signal } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import { type Open, open, text } from '../state/piece.ts';
import { saying, type Trouble, trouble } from '../state/place.ts';
import { saveToFolder, takeThere } from './from-folder.ts';
import { homes } from './homes.ts';
import { save } from './savers.ts';
import { ChangedThere, served } from './served.ts';

/** Files that the browser lets be written again, by the piece that came out of them. */
const handles = new Map<string, FileSystemFileHandle>();

/** When pieces were last saved to a file, and the text that went there, by their ids. */
export const savedAt = signal<Readonly<Record<string, { readonly time: string; readonly text: string }>>>({});

/** From now on the piece is saved back to this file. */
export function saveBackTo(id: string, handle: FileSystemFileHandle): void {
  handles.set(id, handle);
}

const clock = (): string => {
  const now = new Date();
  return `${String(now.getHours()).padStart(2, '0')}:${String(now.getMinutes()).padStart(2, '0')}`;
};

type How = 'as usual' | 'over what is there' | 'as a download';

let saving: Promise<void> = Promise.resolve();

/** The job's text, to the folder that the page was served with, to the file that it came from or as a download; one after the other. */
export function saveJob(how: How = 'as usual'): Promise<void> {
  const [now, words] = [open.value, text.value];
  if (now !== undefined) saving = saving.then(() => saveNow(now, words, how));
  return saving;
}

async function saveNow(now: Open, words: string, how: How): Promise<void> {
  const handle = handles.get(now.id);
  const blob = new Blob([words], { type: 'application/yaml' });
  const file = now.file.slice(now.file.lastIndexOf('/') + 1);
  trouble.value = undefined;
  try {
    const where =
      served() !== undefined && how !== 'as a download'
        ? await saveToFolder(now.id, now.file, words, how === 'over what is there')
        : await save({ file, blob, ...defined({ handle }) });
    savedAt.value = { ...savedAt.value, [now.id]: { time: clock(), text: words } };
    saying.value = `Saved ${where} at ${clock()}.`;
  } catch (error) {
    trouble.value = failure(error, now.id, now.file);
  }
}

/** What is said where a file was not saved, and the ways out of it. */
function failure(error: unknown, id: string, file: string): Trouble {
  const reason = error instanceof Error ? error.message : String(error);
  if (error instanceof ChangedThere) {
    return {
      of: id,
      words: `${file} in the folder was changed by something else meanwhile; nothing was saved over it.`,
      ways: [
        { words: 'Save over it', go: () => void saveJob('over what is there') },
        { words: 'Take what is there', go: () => void takeThere(id, homes.get(id)?.name ?? file) },
        { words: 'Save as a download', go: () => void saveJob('as a download') },
      ],
    };
  }
  return {
    of: id,
    words: `The piece was not saved: ${reason}. It is still on this page, and its text can be copied from the text beside the form.`,
    ways: [
      { words: 'Try again', go: () => void saveJob() },
      ...(served() === undefined ? [] : [{ words: 'Save as a download', go: () => void saveJob('as a download') }]),
    ],
  };
}
