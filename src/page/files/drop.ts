import { isOurs, takeFiles } from './take.ts';

/** Files and folders may be dropped anywhere on the page. */
export function takeDrops(): void {
  addEventListener('dragover', (event) => event.preventDefault());
  addEventListener('drop', (event) => {
    event.preventDefault();
    const items = [...(event.dataTransfer?.items ?? [])].filter(({ kind }) => kind === 'file');
    // Everything is asked for before anything is waited for: afterwards the items are empty.
    const found = items.map((item) => filesOf(item));
    void Promise.all(found).then((files) => takeFiles(files.flat()));
  });
}

interface WithHandle {
  readonly getAsFileSystemHandle?: () => Promise<FileSystemHandle | null>;
}

async function filesOf(item: DataTransferItem & WithHandle): Promise<readonly File[]> {
  const plain = item.getAsFile();
  const handle = await item.getAsFileSystemHandle?.().catch(() => null);
  if (handle?.kind === 'directory') return filesIn(handle as FileSystemDirectoryHandle);
  return plain === null ? [] : [plain];
}

/** Folders within folders, and files of all of them, that are looked through: a whole disk dropped by mistake is not. */
const DEEPEST = 6;
const MOST_FILES = 2_000;

type Folder = FileSystemDirectoryHandle & { readonly values: () => AsyncIterable<FileSystemHandle> };

async function filesIn(folder: FileSystemDirectoryHandle, found: File[] = [], depth = 0): Promise<readonly File[]> {
  for await (const each of (folder as Folder).values()) {
    if (found.length >= MOST_FILES) break;
    if (each.kind === 'file') {
      if (isOurs(each.name)) found.push(await (each as FileSystemFileHandle).getFile());
    } else if (depth < DEEPEST && !each.name.startsWith('.')) {
      await filesIn(each as FileSystemDirectoryHandle, found, depth + 1);
    }
  }
  return found;
}
