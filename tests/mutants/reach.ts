import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Mutant } from './sites.ts';

/** A file of tests: how long it takes, and which of the mutants stand in functions that it runs. */
export interface TestFile {
  readonly file: string;
  readonly seconds: number;
  readonly reaches: ReadonlySet<number>;
}

interface Insert {
  readonly at: number;
  readonly text: string;
}

const tell = (mark: string): string => `globalThis.__reached?.add(${JSON.stringify(mark)})`;

const markOf = ({ file, within }: Mutant): string => `${file}:${within?.start ?? 'file'}`;

/** The text of a file whose functions tell when they run, those alone that hold a mutant. */
export function telling(text: string, mutants: readonly Mutant[]): string {
  const inserts = new Map<string, readonly Insert[]>();
  for (const mutant of mutants) {
    const [mark, { within }] = [markOf(mutant), mutant];
    if (within === undefined) inserts.set(mark, [{ at: text.length, text: `\n;${tell(mark)};\n` }]);
    else if (within.block) inserts.set(mark, [{ at: within.start + 1, text: `${tell(mark)};` }]);
    else
      inserts.set(mark, [
        { at: within.start, text: `(${tell(mark)}, ` },
        { at: within.end, text: ')' },
      ]);
  }
  return [...inserts.values()]
    .flat()
    .sort((a, b) => b.at - a.at)
    .reduce((now, { at, text: added }) => now.slice(0, at) + added + now.slice(at), text);
}

/** What the files of tests append to, a line each. */
const SETUP = `
import { appendFileSync } from 'node:fs';
import { afterAll, expect } from 'vitest';
globalThis.__reached = new Set();
afterAll(() => {
  const line = JSON.stringify({ file: expect.getState().testPath, marks: [...globalThis.__reached] });
  appendFileSync(process.env.REACHED, line + '\\n');
});
`;

const CONFIG = `
import { mergeConfig } from 'vitest/config';
import base from './vitest.config.ts';
export default mergeConfig(base, { test: { setupFiles: [new URL('./reached-setup.ts', import.meta.url).pathname] } });
`;

/** Runs every file of tests once in the copy, and reads which mutants it comes by. Files that fail are left out. */
export function reachOf(folder: string, mutants: readonly Mutant[], tests: readonly string[]): readonly TestFile[] {
  const kept = mkdtempSync(join(tmpdir(), 'reached-'));
  const [told, results] = [join(kept, 'told'), join(kept, 'results.json')];
  const files = [...new Set(mutants.map(({ file }) => file))];
  const texts = new Map(files.map((file) => [file, readFileSync(join(folder, 'src', file), 'utf8')]));
  try {
    writeFileSync(told, '');
    writeFileSync(join(folder, 'tests/reached-setup.ts'), SETUP);
    writeFileSync(join(folder, 'tests/reached.config.ts'), CONFIG);
    for (const [file, text] of texts)
      writeFileSync(
        join(folder, 'src', file),
        telling(
          text,
          mutants.filter((mutant) => mutant.file === file),
        ),
      );
    const args = ['run', '--config', 'tests/reached.config.ts', '--maxWorkers=1', '--minWorkers=1'];
    spawnSync(
      process.execPath,
      ['node_modules/vitest/vitest.mjs', ...args, '--reporter=json', `--outputFile=${results}`, ...tests],
      { cwd: folder, stdio: 'ignore', env: { ...process.env, CI: '', REACHED: told } },
    );
    return read(folder, mutants, told, results);
  } finally {
    for (const [file, text] of texts) writeFileSync(join(folder, 'src', file), text);
    rmSync(kept, { recursive: true, force: true });
  }
}

interface Results {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly startTime: number;
    readonly endTime: number;
  }[];
}

function read(folder: string, mutants: readonly Mutant[], told: string, results: string): readonly TestFile[] {
  const ran = (JSON.parse(readFileSync(results, 'utf8')) as Results).testResults;
  const marks = new Map(
    readFileSync(told, 'utf8')
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => JSON.parse(line) as { readonly file: string; readonly marks: readonly string[] })
      .map((line) => [line.file, new Set(line.marks)]),
  );
  return ran
    .filter(({ status }) => status === 'passed')
    .map(({ name, startTime, endTime }) => ({
      file: name.slice(folder.length + 1),
      seconds: (endTime - startTime) / 1000,
      reaches: new Set(mutants.flatMap((mutant, i) => (marks.get(name)?.has(markOf(mutant)) === true ? [i] : []))),
    }));
}
