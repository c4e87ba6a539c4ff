import type * as z from 'zod/mini';
import { type Problem, type Result, succeed } from '../problems/problem.ts';
import { readDocument, type Written } from '../read/document.ts';
import { locate, ordered } from '../read/text/issues.ts';
import { find, type Node } from '../read/text/node.ts';
import { type Calibrated, readingsSchema } from '../shop/readings/readings.ts';
import { LENGTH_UNITS } from '../units/units.ts';

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
export function readReadings<K extends Calibrated>(kind: K, written: Written): Result<ReadReadings<K>> {
  const read = readDocument(written, (root) => readingsSchema(kind, unitOf(root)));
  if (!read.ok) return read;
  const { value, source } = read.value;
  return succeed({
    readings: value,
    locate: (others) => ordered(others.map((problem) => locate(problem, source))),
  });
}

/** What is read off a printed scale is in millimetres. */
function unitOf(root: Node): (typeof LENGTH_UNITS)[number] {
  const { node, whole } = find(root, ['units']);
  return LENGTH_UNITS.find((unit) => whole && node.kind === 'scalar' && node.value === unit) ?? 'mm';
}
