import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { vi } from 'vitest';
import { main } from '../../src/cli/main.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** What lies in the folder afterwards, the given files left out. */
  readonly made: readonly string[];
}

/** Runs a command in this process, in a folder of its own that holds `files`; `{}` in an argument stands for the folder. */
export async function run(
  args: readonly string[],
  files: Readonly<Record<string, string | Uint8Array>> = {},
): Promise<Ran> {
  const folder = await mkdtemp(join(tmpdir(), 'matwright-'));
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
    for (const [name, text] of Object.entries(files)) await writeFile(join(folder, name), text);
    const code = await main(
      args.map((arg) => arg.replace('{}', folder)),
      'test',
    );
    const made = (await readdir(folder, { recursive: true })).filter((name) => !(name in files)).sort();
    return { code, out: out.replaceAll(folder, '{}'), err: err.replaceAll(folder, '{}'), made };
  } finally {
    for (const spy of spies) spy.mockRestore();
    process.exitCode = before;
    await rm(folder, { recursive: true, force: true });
  }
}
