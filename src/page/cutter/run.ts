import { computed, signal } from '@preact/signals';
import type { WorkStep } from '../../bench/work/model.ts';
import type { Problem } from '../../problems/problem.ts';
import type { JobSource, Steps } from '../engine/answers.ts';
import { press } from '../engine/engines.ts';
import { changeRecord, keepRecord, recordOf } from '../files/store.ts';
import { mistake } from '../state/mistake.ts';
import { place, trouble } from '../state/place.ts';

/** What is cut: one piece, or several as one run. */
export interface Run {
  /** Its ticks are kept under it. */
  readonly id: string;
  readonly title: string;
}

export const run = signal<Run | undefined>(undefined);
export const steps = signal<Steps | undefined>(undefined);
/** The pieces of the run, in the order of its jobs: by its place in the run none is known again. */
const pieces = signal<readonly string[]>([]);
export const stepProblems = signal<readonly Problem[]>([]);
/** Keys of the steps that are done. */
const done = signal<ReadonlySet<string>>(new Set());
/** The step that is shown; behind the last one all is done. */
export const at = signal(0);

/**
 * A step by what is done in it, not by its place: where the piece was changed since, what is cut otherwise now is to be
 * done anew, and what is the same stays done.
 */
const keys = computed((): readonly string[] => {
  const now = steps.value;
  if (now === undefined) return [];
  const seen = new Map<string, number>();
  return now.order.steps.map((step) => {
    const key = `${lotWords(step, now)} ${JSON.stringify({ ...step, lot: undefined })}`;
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return `${key} ${count}`;
  });
});

/** The piece, and the board with its size: the same cut in another blank is another cut. */
function lotWords(step: WorkStep, { order, boards }: Steps): string {
  if (!('lot' in step)) return '';
  const { job, title, name, board } = order.lots[step.lot]!;
  const { width, height } = boards[step.lot]!;
  return `${pieces.value[job] ?? ''} ${title} ${name} ${board.name} ${board.thickness} ${width} ${height}`;
}

export const isDone = (index: number): boolean => done.value.has(keys.value[index] ?? '');
export const countDone = computed(() => keys.value.filter((key) => done.value.has(key)).length);

/** Shows a run where it was left. */
export async function startRun(next: Run, jobs: () => Promise<readonly JobSource[]>): Promise<void> {
  run.value = next;
  steps.value = undefined;
  stepProblems.value = [];
  done.value = new Set();
  place.value = 'cutter';
  try {
    const all = await jobs();
    // Where the browser keeps nothing, it is cut all the same.
    const was = recordOf(`run ${next.id}`).catch(() => undefined);
    const [told, kept] = await Promise.all([press.ask('steps', { jobs: all }), was]);
    if (run.value !== next) return;
    if (!told.ok) {
      stepProblems.value = told.problems;
      return;
    }
    pieces.value = all.map(({ piece }) => piece ?? '');
    steps.value = told.value;
    done.value = ticksOf(kept);
    at.value = firstLeft(0);
  } catch (error) {
    if (run.value === next) stepProblems.value = [mistake(error)];
  }
}

const ticksOf = (kept: unknown): ReadonlySet<string> =>
  new Set(Array.isArray(kept) ? kept.filter((each) => typeof each === 'string') : []);

/** The first step from here on that is not done, else the first of all, else the end. */
function firstLeft(from: number): number {
  const left = (start: number): number => keys.value.findIndex((key, i) => i >= start && !done.value.has(key));
  const next = left(from);
  const found = next < 0 ? left(0) : next;
  return found < 0 ? keys.value.length : found;
}

function tick(index: number, on: boolean): void {
  const key = keys.value[index];
  const now = run.value;
  if (key === undefined || now === undefined) return;
  const withIt = (ticks: ReadonlySet<string>): ReadonlySet<string> =>
    new Set(on ? [...ticks, key] : [...ticks].filter((each) => each !== key));
  done.value = withIt(done.value);
  // Another window may have ticked of the same run.
  changeRecord(`run ${now.id}`, (kept) => [...withIt(ticksOf(kept))]).catch(tellLost);
}

function tellLost(error: unknown): void {
  const reason = error instanceof Error ? error.message : String(error);
  trouble.value = { words: `This browser could not keep the last tick (${reason}).`, ways: [] };
}

/** Done, and on to what is left. */
export function next(): void {
  if (at.value >= keys.value.length) return;
  tick(at.value, true);
  at.value = firstLeft(at.value + 1);
}

/** One step back, whose tick goes: it is looked at because it is to be done again. */
export function back(): void {
  if (at.value === 0) return;
  at.value -= 1;
  tick(at.value, false);
}

/** Steps may be taken in another order; looking at one changes nothing. */
export const show = (index: number): void => {
  at.value = index;
};

/** All ticks go, for the same piece once more. */
export function again(): void {
  const now = run.value;
  if (now === undefined) return;
  done.value = new Set();
  at.value = 0;
  keepRecord(`run ${now.id}`, []).catch(tellLost);
}
