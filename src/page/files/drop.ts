import { takeFiles } from './take.ts';

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

async function filesIn(folder: FileSystemDirectoryHandle): Promise<readonly File[]> {
  const found: File[] = [];
  for await (const each of (
    folder as FileSystemDirectoryHandle & { values: () => AsyncIterable<FileSystemHandle> }
  ).values()) {
    if (each.kind === 'file') found.push(await (each as FileSystemFileHandle).getFile());
  }
  return found;
}
