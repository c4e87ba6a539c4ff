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
/** What became of what was made: of which row, and of which piece, since another one may be open by then. */
interface Outcome {
  readonly key: string;
  readonly of: string | undefined;
  readonly words: string;
  readonly problems: readonly Problem[];
}
const outcome = signal<Outcome | undefined>(undefined);

/** What became of the last that was made, where it was this row of what is open; a day's goes with no piece. */
export function becameOf(key: string): Outcome | undefined {
  const now = outcome.value;
  return now?.key === key && (key === DAY_KEY || now.of === open.value?.id) ? now : undefined;
}
/** The row of all that is made for a day. */
export const DAY_KEY = 'day';

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

/** What zips and folders are called: a day's for itself, else for what is open when it is asked for. */
const stemOf = (key: string): string =>
  key === DAY_KEY ? 'day' : (open.value?.file ?? 'piece').replace(/\.[^.]*$/u, '');

/** Runs what is asked of the press, with progress, and says what became of it. */
async function run(key: string, what: string, go: () => Promise<readonly Problem[] | string>): Promise<void> {
  const of = open.value?.id;
  making.value = { what, done: 0, of: 0 };
  outcome.value = undefined;
  try {
    const result = await go();
    if (typeof result === 'string') {
      saying.value = result;
      outcome.value = { key, of, words: result, problems: [] };
    } else outcome.value = { key, of, words: '', problems: result };
  } catch (error) {
    const words =
      error instanceof TakenBack
        ? 'Stopped; nothing was saved.'
        : `That failed: ${error instanceof Error ? error.message : String(error)}`;
    outcome.value = { key, of, words, problems: [] };
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
export function saveOutputs(
  key: string,
  what: string,
  wanted: readonly Wanted[],
  zipped: boolean,
  jobs: () => Promise<readonly JobSource[]> = sources,
): Promise<void> {
  // Another piece may be open once they are made.
  const stem = stemOf(key);
  return run(key, what, async () => {
    const made = await press.ask('make', { ...(await workOf(jobs)), wanted }, step(what));
    if (!made.ok) return made.problems;
    const files = made.value;
    if (served() !== undefined) {
      await saveServedOutputs(stem, files);
      return `${files.length === 1 ? files[0]!.name : `${files.length} files`} saved into ${stem}.`;
    }
    if (zipped || files.length > 3) {
      const entries = Object.fromEntries(files.map(({ name, bytes }) => [name, [bytes, { mtime: DAY }] as const]));
      const zip = zipSync(entries as Parameters<typeof zipSync>[0]);
      return `${files.length} files saved ${await save({ file: `${stem}.zip`, blob: blobOf({ name: 'all.zip', bytes: zip }) })}.`;
    }
    const where: string[] = [];
    for (const file of files) where.push(await save({ file: file.name, blob: blobOf(file) }));
    return `Saved ${where.join(', ')}.`;
  });
}

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
