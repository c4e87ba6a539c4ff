import { computed, signal } from '@preact/signals';
import type { Source } from '../../outputs/solve-job.ts';
import { dataOf } from '../../read/edit/find-node.ts';
import type { Plain } from '../../read/edit/yaml-print.ts';
import type { Calibrated } from '../../shop/readings/readings.ts';
import type { Look, Piece } from '../engine/answers.ts';

/** A piece that is open: the job's text is the truth, all else follows from it. */
export interface Open {
  /** Its key in the browser's storage. */
  readonly id: string;
  /** The file's name, as problems and downloads say it. */
  readonly file: string;
  /** What it is, where it is no piece: the shop's file, or readings of a tool. */
  readonly of?: 'shop' | 'readings';
  readonly calibrating?: Calibrated;
  readonly shop?: Source;
  /** Pictures that the job names, by those names. */
  readonly pictures: Readonly<Record<string, Blob>>;
}

export const open = signal<Open | undefined>(undefined);
export const text = signal('');

/** The last answer, and the last piece that could be solved, which stays to be seen while a text is wrong. */
export const look = signal<Look | undefined>(undefined);
export const piece = signal<Piece | undefined>(undefined);
/** True while the picture shows an earlier text than the one that stands there. */
export const stale = computed(() => look.value !== undefined && look.value.piece === undefined);

export const problems = computed(() => look.value?.problems ?? []);

/** What the text says, as plain values; an empty text where it cannot be read. */
const data = computed<Plain>(() => {
  try {
    return dataOf(text.value);
  } catch {
    return '';
  }
});

export type Path = readonly (string | number)[];

/** What the text says in a place; undefined where it says nothing. */
export function said(path: Path): Plain | undefined {
  let at: unknown = data.value;
  for (const step of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Readonly<Record<string | number, unknown>>)[step];
  }
  return at === null ? undefined : (at as Plain | undefined);
}
