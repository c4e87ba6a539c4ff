import type * as z from 'zod/mini';
import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { locate, problemsOf } from '../read/text/issues.ts';
import { find, type Node, plain } from '../read/text/node.ts';
import { readText } from '../read/text/text.ts';
import { type Calibrated, readingsSchema } from '../shop/readings-schema.ts';
import { LENGTH_UNITS } from '../units/units.ts';
import { ONCE, ordered } from './read.ts';

/** Readings as their schema leaves them: lengths in mm. */
export type Readings<K extends Calibrated> = z.output<ReturnType<typeof readingsSchema<K>>>;

export interface ReadReadings<K extends Calibrated> {
  readonly readings: Readings<K>;
  /** Adds file, line and column to problems that point into the readings. */
  readonly locate: (problems: readonly Problem[]) => readonly Problem[];
}

/**
 * The readings in a text, strictly read: bare numbers are millimetres unless it says otherwise. All problems at once,
 * each with file, line and column.
 */
export function readReadings<K extends Calibrated>(
  kind: K,
  request: { readonly text: string; readonly file: string },
): Result<ReadReadings<K>> {
  const text = readText(request.text, request.file);
  if (!text.ok) return fail(ordered(text.problems));
  const { source, problems } = text.value;
  const parsed = readingsSchema(kind, unitOf(source.root)).safeParse(plain(source.root), ONCE);
  const found = [...problems, ...(parsed.success ? [] : problemsOf(parsed.error.issues, source))];
  if (!parsed.success || found.length > 0) return fail(ordered(found));
  return succeed({
    readings: parsed.data as Readings<K>,
    locate: (others) => ordered(others.map((problem) => locate(problem, source))),
  });
}

/** What is read off a printed scale is in millimetres. */
function unitOf(root: Node): (typeof LENGTH_UNITS)[number] {
  const { node, whole } = find(root, ['units']);
  return LENGTH_UNITS.find((unit) => whole && node.kind === 'scalar' && node.value === unit) ?? 'mm';
}
