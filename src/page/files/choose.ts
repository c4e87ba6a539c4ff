import { open } from '../state/piece.ts';
import { saveBackTo } from './handles.ts';
import { takeFiles } from './take.ts';

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
    if (now !== undefined && own !== undefined) saveBackTo(now.id, own);
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'AbortError')) fallback();
  }
}
