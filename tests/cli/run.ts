import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { vi } from 'vitest';
import { main } from './program.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** What lies in the folder afterwards, the given files and lists of what was made left out. */
  readonly made: readonly string[];
}

type Files = Readonly<Record<string, string | Uint8Array>>;

/** Runs a command in this process (of the sources or of the built program, see `program.ts`), in a folder of its own that holds `files`; `{}` in an argument stands for the folder. */
export const run = (args: readonly string[], files: Files = {}): Promise<Ran> =>
  inFolder(files, (folder) => folder.run(...args));

/** A folder for several commands one after the other. */
export interface Folder {
  readonly run: (...args: readonly string[]) => Promise<Ran>;
  readonly text: (name: string) => string;
  readonly put: (name: string, text: string) => void;
  readonly at: (name: string) => string;
}

export async function inFolder<T>(files: Files, work: (folder: Folder) => Promise<T>): Promise<T> {
  const top = mkdtempSync(join(tmpdir(), 'matwright-'));
  const put = (name: string, text: string | Uint8Array): void => writeFileSync(join(top, name), text);
  try {
    for (const [name, text] of Object.entries(files)) put(name, text);
    return await work({
      run: (...args) => runIn(top, args, files),
      text: (name) => readFileSync(join(top, name), 'utf8'),
      at: (name) => join(top, name),
      put,
    });
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
}

async function runIn(folder: string, args: readonly string[], files: Files): Promise<Ran> {
  let [out, err] = ['', ''];
  const collect = (add: (text: string) => void) => (chunk: unknown) => {
    add(String(chunk));
    return true;
  };
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(collect((text) => (out += text)) as never),
    vi.spyOn(process.stderr, 'write').mockImplementation(collect((text) => (err += text)) as never),
  ];
  const before = process.exitCode;
  process.exitCode = undefined;
  try {
    const code = await main(args.map((arg) => arg.replace('{}', folder)));
    const made = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
      (name) => !(name in files) && !name.endsWith('.matwright.json'),
    );
    return { code, out: out.replaceAll(folder, '{}'), err: err.replaceAll(folder, '{}'), made: made.sort() };
  } finally {
    for (const spy of spies) spy.mockRestore();
    process.exitCode = before;
  }
}
