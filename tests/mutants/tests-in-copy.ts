import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Asked } from './standing.ts';

/** What a run of tests in the copy came to. */
export interface Outcome {
  /** Files in the order in which they ran, without those that were not reached any more. */
  readonly files: readonly { readonly file: string; readonly passed: boolean; readonly seconds: number }[];
  /** False where it was stopped, or fell over. */
  readonly ended: boolean;
}

/** All files in one process, one after the other as they are given, each module read in once: a file costs its tests alone. */
const CONFIG = `
import { defineConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';
const here = (name) => new URL(name, import.meta.url).pathname;
class AsGiven extends BaseSequencer {
  async sort(files) {
    const order = process.env.IN_ORDER.split(',');
    const place = (file) => order.findIndex((name) => file.moduleId.endsWith(name));
    return [...files].sort((a, b) => place(a) - place(b));
  }
}
export default defineConfig({
  resolve: { alias: [{ find: /^fast-check$/, replacement: here('./seeded.ts') }] },
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: [here('./svg-window.ts'), here('./reached-setup.ts')],
    globalSetup: here('./run-folder.ts'),
    testTimeout: 60_000,
    isolate: false,
    pool: 'forks',
    poolOptions: { forks: { singleFork: true } },
    sequence: { sequencer: AsGiven },
  },
});
`;

/** What the files of tests append to, a line each. */
const SETUP = `
import { appendFileSync } from 'node:fs';
import { afterAll, expect } from 'vitest';
globalThis.__reached = new Set();
afterAll(() => {
  if (process.env.REACHED === undefined) return;
  const line = JSON.stringify({ file: expect.getState().testPath, marks: [...globalThis.__reached] });
  appendFileSync(process.env.REACHED, line + '\\n');
});
`;

export function prepareCopy(folder: string): void {
  writeFileSync(join(folder, 'tests/in-order.config.ts'), CONFIG);
  writeFileSync(join(folder, 'tests/reached-setup.ts'), SETUP);
}

/** Runs files of tests in a process group of their own, which say what they come by. */
export function runTests(
  folder: string,
  files: readonly string[],
  { limit, reached }: { readonly limit: number; readonly reached: string },
): Promise<Outcome> {
  const results = join(folder, 'results.json');
  rmSync(results, { force: true });
  const args = ['run', '--config', 'tests/in-order.config.ts', '--reporter=json', `--outputFile=${results}`];
  const env = {
    ...process.env,
    CI: '',
    IN_ORDER: files.join(','),
    REACHED: reached,
  };
  return new Promise((done) => {
    const child = spawn(process.execPath, ['node_modules/vitest/vitest.mjs', ...args, ...files], {
      cwd: folder,
      stdio: 'ignore',
      detached: true,
      env,
    });
    const timer = setTimeout(() => stop(child), 1000 * limit);
    child.on('exit', () => {
      clearTimeout(timer);
      stop(child);
      done(read(folder, results));
    });
  });
}

/** Runs files of tests up to the first that fails, by a process that stands by in the copy; stopped, it is started anew. */
export class Standing {
  readonly #folder: string;
  #child: ChildProcess | undefined;

  constructor(folder: string) {
    this.#folder = folder;
  }

  async #ready(): Promise<ChildProcess> {
    if (this.#child !== undefined) return this.#child;
    const child = spawn(process.execPath, ['--import', 'tsx', 'tests/mutants/standing.ts'], {
      cwd: this.#folder,
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
      detached: true,
      env: { ...process.env, CI: '' },
    });
    this.#child = child;
    await new Promise((ready) => child.once('message', ready));
    return child;
  }

  /** What says of no test that it failed, and not of every file that it passed, says nothing: a new process is asked. */
  async run(asked: Asked, limit: number): Promise<Outcome> {
    const first = await this.#once(asked, limit);
    const whole = first.files.length === asked.files.length || first.files.some(({ passed }) => !passed);
    if (!first.ended || whole) return first;
    this.stop();
    return this.#once(asked, limit);
  }

  async #once(asked: Asked, limit: number): Promise<Outcome> {
    const child = await this.#ready();
    return new Promise((done) => {
      const end = (outcome: Outcome): void => {
        clearTimeout(timer);
        child.removeAllListeners();
        if (!outcome.ended) this.stop();
        done(outcome);
      };
      const timer = setTimeout(() => end({ files: [], ended: false }), 1000 * limit);
      child.once('message', (outcome) => end(outcome as Outcome));
      child.once('exit', () => end({ files: [], ended: false }));
      child.send(asked);
    });
  }

  stop(): void {
    if (this.#child !== undefined) stop(this.#child);
    this.#child = undefined;
  }
}

function stop(child: ChildProcess): void {
  try {
    process.kill(-child.pid!, 'SIGKILL');
  } catch {
    // It is gone already.
  }
}

interface Results {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

function read(folder: string, results: string): Outcome {
  let told: Results;
  try {
    told = JSON.parse(readFileSync(results, 'utf8')) as Results;
  } catch {
    return { files: [], ended: false };
  }
  const files = told.testResults
    // Those after the first failure are listed with tests that were never run.
    .filter(
      ({ status, assertionResults: tests }) => status === 'failed' || tests.some((each) => each.status === 'passed'),
    )
    .map(({ name, status, startTime, endTime }) => ({
      file: name.slice(folder.length + 1),
      passed: status === 'passed',
      seconds: (endTime - startTime) / 1000,
    }));
  return { files, ended: true };
}
