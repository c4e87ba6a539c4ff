/** A way to save a file: those that can are tried in the order of their priority. */
export interface Saver {
  readonly name: string;
  readonly priority: number;
  readonly can: (target: Target) => boolean;
  /** Where it went, in words; throws where it could not be. */
  readonly save: (target: Target) => Promise<string>;
}

export interface Target {
  readonly file: string;
  readonly blob: Blob;
  /** Where the file came from, if the browser lets it be written again. */
  readonly handle?: FileSystemFileHandle;
}

const sameFile: Saver = {
  name: 'the same file',
  priority: 2,
  can: ({ handle }) => handle !== undefined && 'createWritable' in handle,
  save: async ({ handle, blob }) => {
    const stream = await handle!.createWritable();
    await stream.write(blob);
    await stream.close();
    const back = await (await handle!.getFile()).arrayBuffer();
    if (!sameBytes(back, await blob.arrayBuffer())) throw new Error('what was written reads back otherwise');
    return `into ${handle!.name}`;
  },
};

const download: Saver = {
  name: 'a download',
  priority: 1,
  can: () => true,
  save: async ({ file, blob }) => {
    const url = URL.createObjectURL(blob);
    const link = document.createElement('a');
    link.href = url;
    link.download = file;
    document.body.append(link);
    link.click();
    link.remove();
    // The browser reads the bytes a little later.
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
    return `as ${file} among your downloads`;
  },
};

const SAVERS: readonly Saver[] = [sameFile, download].sort((a, b) => b.priority - a.priority);

/** By the best way that works; says where the file went. */
export async function save(target: Target): Promise<string> {
  let last: unknown = new Error('no way to save');
  for (const saver of SAVERS.filter(({ can }) => can(target))) {
    try {
      return await saver.save(target);
    } catch (error) {
      last = error;
    }
  }
  throw last;
}

function sameBytes(a: ArrayBuffer, b: ArrayBuffer): boolean {
  const [left, right] = [new Uint8Array(a), new Uint8Array(b)];
  return left.length === right.length && left.every((byte, i) => byte === right[i]);
}
