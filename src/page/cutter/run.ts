import { computed, signal } from '@preact/signals';
import type { WorkStep } from '../../bench/work/model.ts';
import type { Problem } from '../../problems/problem.ts';
import type { JobSource, Steps } from '../engine/answers.ts';
import { press } from '../engine/engines.ts';
import { keepRecord, recordOf } from '../files/store.ts';
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
    const key = `${lotWords(step, now)} ${JSON.stringify(step)}`;
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return `${key} ${count}`;
  });
});

function lotWords(step: WorkStep, { order }: Steps): string {
  if (!('lot' in step)) return '';
  const { job, title, name } = order.lots[step.lot]!;
  return `${job} ${title} ${name}`;
}

export const isDone = (index: number): boolean => done.value.has(keys.value[index] ?? '');
export const countDone = computed(() => keys.value.filter((key) => done.value.has(key)).length);

/** Shows a run where it was left. */
export async function startRun(next: Run, jobs: readonly JobSource[]): Promise<void> {
  run.value = next;
  steps.value = undefined;
  stepProblems.value = [];
  done.value = new Set();
  place.value = 'cutter';
  try {
    const [told, kept] = await Promise.all([press.ask('steps', { jobs }), recordOf(`run ${next.id}`)]);
    if (run.value !== next) return;
    if (!told.ok) {
      stepProblems.value = told.problems;
      return;
    }
    steps.value = told.value;
    done.value = new Set(Array.isArray(kept) ? kept.filter((each) => typeof each === 'string') : []);
    at.value = firstLeft(0);
  } catch (error) {
    stepProblems.value = [mistake(error)];
  }
}

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
  const next = new Set(done.value);
  if (on) next.add(key);
  else next.delete(key);
  done.value = next;
  keepRecord(`run ${now.id}`, [...next]).catch((error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    trouble.value = { words: `This browser could not keep the last tick (${reason}).`, ways: [] };
  });
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
  void keepRecord(`run ${now.id}`, []);
}
