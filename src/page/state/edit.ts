import { signal } from '@preact/signals';
import type { Problem, Result } from '../../problems/problem.ts';
import { clearField, setField } from '../../read/edit/set-field.ts';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { change } from './history.ts';
import { type Path, said, text } from './piece.ts';

/** Why the last edit of a field was not made; it goes with the next one. */
export const refused = signal<readonly Problem[]>([]);

/** Texts that are numbers are written as numbers, so that a file reads as one would write it by hand. */
export const written = (value: string): Plain => (/^\d+(?:\.\d+)?$/u.test(value) ? Number(value) : value);

export interface Edit {
  readonly path: Path;
  /** Undefined: the field is taken out, and worked out from then on. */
  readonly value: Plain | undefined;
}

/** Sets and clears fields of the text as one step; where one of them cannot be, none is. */
export function edit(edits: readonly Edit[], what: string, run?: string): boolean {
  let next = text.value;
  for (const { path, value } of edits) {
    const made: Result<string> = value === undefined ? cleared(next, path) : setField(next, path, value);
    if (!made.ok) {
      refused.value = made.problems;
      return false;
    }
    next = made.value;
  }
  refused.value = [];
  change(next, what, run);
  return true;
}

/** A map that would be left empty goes with its last key, since an empty value is none. */
function cleared(before: string, path: Path): Result<string> {
  const above = path.slice(0, -1);
  const around = said(above);
  const alone =
    above.length > 0 &&
    typeof path.at(-1) === 'string' &&
    typeof around === 'object' &&
    !Array.isArray(around) &&
    Object.keys(around).length === 1 &&
    Object.hasOwn(around, path.at(-1)!) &&
    typeof above.at(-1) === 'string';
  return clearField(before, alone ? above : path);
}
