import type * as z from 'zod/mini';
import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { locate, ordered, problemsOf } from './text/issues.ts';
import { type Node, plain, type Source } from './text/node.ts';
import { readText } from './text/text.ts';

/** A text, and the file that problems name. */
export interface Written {
  readonly text: string;
  readonly file: string;
}

export interface Document<T> {
  readonly value: T;
  readonly source: Source;
}

/** Schemas compile themselves for many values otherwise; here each checks one. */
const ONCE = { jitless: true };

/**
 * What a text says, by the schema that is made for its root: bare numbers are in a unit that the text names. All problems
 * at once, each with file, line and column, in the order of the text. `tree` may put another value in the place of one.
 */
export function readDocument<S extends z.ZodMiniType>(
  { text, file }: Written,
  schemaOf: (root: Node) => S,
  tree: (plain: unknown) => { readonly tree: unknown } | { readonly problem: Problem } = (as) => ({ tree: as }),
): Result<Document<z.output<S>>> {
  const read = readText(text, file);
  if (!read.ok) return fail(ordered(read.problems));
  const { source, problems, warnings } = read.value;
  const made = tree(plain(source.root));
  if ('problem' in made) return fail([locate(made.problem, source)]);
  const parsed = schemaOf(source.root).safeParse(made.tree, ONCE);
  const found = [...problems, ...(parsed.success ? [] : problemsOf(parsed.error.issues, source))];
  return parsed.success && found.length === 0
    ? succeed({ value: parsed.data, source }, warnings)
    : fail(ordered(found));
}
