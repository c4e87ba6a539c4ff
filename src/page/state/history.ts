import { computed, signal } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import { text } from './piece.ts';

/** A change that can be taken back: the text before it, and what it was. */
export interface Change {
  readonly before: string;
  readonly what: string;
  /** When it was made, ms; drafts of earlier days have none. */
  readonly at?: number;
  /** Changes of one drag, or of keys typed into one field, are one. */
  readonly run?: string;
}

export interface History {
  readonly past: readonly Change[];
  readonly future: readonly Change[];
}

/** A day's work on one piece; more would only fill the storage. */
const MOST = 200;
/** Characters of all texts together that are kept. */
const MOST_TEXT = 2_000_000;

export const EMPTY: History = { past: [], future: [] };
export const history = signal<History>(EMPTY);

export const canUndo = computed(() => history.value.past.length > 0);
export const canRedo = computed(() => history.value.future.length > 0);
export const lastChange = computed(() => history.value.past.at(-1)?.what ?? '');
export const nextChange = computed(() => history.value.future.at(-1)?.what ?? '');

/** A history with one step more, made from this text. */
export function stepTo({ past }: History, before: string, what: string, run?: string): History {
  const step: Change = { before, what, at: Date.now(), ...defined({ run }) };
  return { past: bounded([...past, step]), future: [] };
}

/** Another text, as one step that can be taken back. The same text is no step. */
export function change(next: string, what: string, run?: string): void {
  const before = text.value;
  if (next === before) return;
  const { past } = history.value;
  const goesOn = run !== undefined && past.at(-1)?.run === run;
  history.value = goesOn ? { past, future: [] } : stepTo(history.value, before, what, run);
  text.value = next;
}

/** What comes next is a step by itself. */
export function endRun(): void {
  history.value = ended(history.value);
}

/** What comes next is no part of its last step. */
export function ended(all: History): History {
  const last = all.past.at(-1);
  return last?.run === undefined ? all : { ...all, past: [...all.past.slice(0, -1), moved(last)] };
}

/** A step that was taken back or made again, or after which something else was done, belongs to no run any more. */
const moved = ({ run: _, ...step }: Change): Change => step;

export function undo(): void {
  const { past, future } = history.value;
  const last = past.at(-1);
  if (last === undefined) return;
  history.value = { past: past.slice(0, -1), future: [...future, { ...moved(last), before: text.value }] };
  text.value = last.before;
}

export function redo(): void {
  const { past, future } = history.value;
  const next = future.at(-1);
  if (next === undefined) return;
  history.value = { past: [...past, { ...moved(next), before: text.value }], future: future.slice(0, -1) };
  text.value = next.before;
}

function bounded(past: readonly Change[]): readonly Change[] {
  const kept: Change[] = [];
  let characters = 0;
  for (const each of past.slice(-MOST).reverse()) {
    characters += each.before.length;
    if (characters > MOST_TEXT && kept.length > 0) break;
    kept.push(each);
  }
  return kept.reverse();
}
