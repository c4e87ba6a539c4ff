import { signal } from '@preact/signals';
import { zipSync } from 'fflate';
import type { OutputFile } from '../../outputs/write.ts';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import type { JobSource, Wanted } from '../engine/answers.ts';
import { press } from '../engine/engines.ts';
import { TakenBack } from '../engine/worker.ts';
import { shop } from '../files/open.ts';
import { save } from '../files/savers.ts';
import { saveServedOutputs, served } from '../files/served.ts';
import { open } from '../state/piece.ts';
import { saying } from '../state/place.ts';
import { printPages } from './print.ts';
import { sources } from './sources.ts';

/** What is being made, and how far it is. */
export interface Making {
  readonly what: string;
  readonly done: number;
  readonly of: number;
}
export const making = signal<Making | undefined>(undefined);
/** What became of the last that was made, by the row's key. */
export const outcome = signal<
  { readonly key: string; readonly words: string; readonly problems: readonly Problem[] } | undefined
>(undefined);

const TYPES: Readonly<Record<string, string>> = {
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  zip: 'application/zip',
};
const typeOf = (name: string): string => TYPES[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/octet-stream';
const blobOf = ({ name, bytes }: OutputFile): Blob => new Blob([new Uint8Array(bytes)], { type: typeOf(name) });

/** Day of every entry, so that the same piece gives the same zip. */
const DAY = new Date(1980, 0, 1);

const stem = (): string => (open.value?.file ?? 'piece').replace(/\.[^.]*$/u, '');

/** Runs what is asked of the press, with progress, and says what became of it. */
async function run(key: string, what: string, go: () => Promise<readonly Problem[] | string>): Promise<void> {
  making.value = { what, done: 0, of: 0 };
  outcome.value = undefined;
  try {
    const result = await go();
    if (typeof result === 'string') {
      saying.value = result;
      outcome.value = { key, words: result, problems: [] };
    } else outcome.value = { key, words: '', problems: result };
  } catch (error) {
    const words =
      error instanceof TakenBack
        ? 'Stopped; nothing was saved.'
        : `That failed: ${error instanceof Error ? error.message : String(error)}`;
    outcome.value = { key, words, problems: [] };
  } finally {
    making.value = undefined;
  }
}

const step = (what: string) => (next: { readonly done: number; readonly of: number }) => {
  making.value = { what, done: next.done, of: next.of };
};

const workOf = async (jobs: () => Promise<readonly JobSource[]>) => ({
  jobs: await jobs(),
  ...defined({ shop: shop.value }),
});

/** Makes what is wanted and saves each file, or all of them in one zip. */
export const saveOutputs = (
  key: string,
  what: string,
  wanted: readonly Wanted[],
  zipped: boolean,
  jobs: () => Promise<readonly JobSource[]> = sources,
): Promise<void> =>
  run(key, what, async () => {
    const made = await press.ask('make', { ...(await workOf(jobs)), wanted }, step(what));
    if (!made.ok) return made.problems;
    const files = made.value;
    if (served() !== undefined) {
      const into = stem();
      await saveServedOutputs(into, files);
      return `${files.length === 1 ? files[0]!.name : `${files.length} files`} saved into ${into}.`;
    }
    if (zipped || files.length > 3) {
      const entries = Object.fromEntries(files.map(({ name, bytes }) => [name, [bytes, { mtime: DAY }] as const]));
      const zip = zipSync(entries as Parameters<typeof zipSync>[0]);
      return `${files.length} files saved ${await save({ file: `${stem()}.zip`, blob: blobOf({ name: 'all.zip', bytes: zip }) })}.`;
    }
    const where: string[] = [];
    for (const file of files) where.push(await save({ file: file.name, blob: blobOf(file) }));
    return `Saved ${where.join(', ')}.`;
  });

export const printOutput = (
  key: string,
  what: string,
  wanted: Wanted,
  jobs: () => Promise<readonly JobSource[]> = sources,
): Promise<void> =>
  run(key, what, async () => {
    const laid = await press.ask('lay', { ...(await workOf(jobs)), wanted });
    if (!laid.ok) return laid.problems;
    await printPages(laid.value);
    return 'Handed to the printer: print at 100 %, and measure the check before you cut.';
  });

export const stop = (): void => press.stop();
