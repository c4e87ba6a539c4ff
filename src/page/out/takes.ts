import { signal } from '@preact/signals';
import { countWords, type Taken } from '../../outputs/taken.ts';
import { press } from '../engine/engines.ts';
import { type Open, open, text } from '../state/piece.ts';
import { shownSize } from '../state/shown.ts';
import { making } from './making.ts';
import type { Row } from './rows.ts';
import { sources } from './sources.ts';

/** ms without a change before anything is counted. */
const PAUSE = 500;

interface Counted {
  readonly open: Open | undefined;
  readonly text: string;
  readonly rows: ReadonlyMap<string, Taken>;
}

/** What each row takes, of the text that it was counted for. */
const counted = signal<Counted>({ open: undefined, text: '', rows: new Map() });

/** Counts row after row, so that whatever else the press is asked waits for one of them at the most; gives a way to stop. */
export function countTakes(rows: readonly Row[]): () => void {
  if (making.value !== undefined) return () => undefined;
  const [of, words] = [open.value, text.value];
  let stopped = false;
  const known = counted.peek();
  const fresh = known.open !== of || known.text !== words;
  if (fresh) counted.value = { open: of, text: words, rows: new Map() };
  const all = async (): Promise<void> => {
    const jobs = await sources();
    for (const { key, id, options } of rows) {
      if (stopped || counted.peek().rows.has(key)) continue;
      const told = await press.ask('take', { jobs, wanted: { id, options } }).catch(() => undefined);
      if (stopped || told === undefined) return;
      const now = counted.peek();
      if (told.ok) counted.value = { ...now, rows: new Map(now.rows).set(key, told.value) };
    }
  };
  const timer = setTimeout(() => void all(), fresh ? PAUSE : 0);
  return () => {
    stopped = true;
    clearTimeout(timer);
  };
}

/** `6 sheets of Letter`; nothing while it is not known. */
export function takesWords(key: string): string {
  const taken = counted.value.rows.get(key);
  if (taken === undefined) return '';
  const papers = taken.papers.map(({ name, count }) => `${countWords(count, 'sheet')} of ${name}`);
  const beds = taken.beds.map((bed) => `${shownSize(bed)} of the bed`);
  return [...papers, ...new Set(beds)].join(', ');
}
