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
    const files = await Promise.all(chosen.map((each) => each.getFile()));
    const taken = await takeFiles(files);
    for (const [i, file] of files.entries()) {
      const id = taken.get(file);
      if (id !== undefined) saveBackTo(id, chosen[i]!);
    }
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'AbortError')) fallback();
  }
}
