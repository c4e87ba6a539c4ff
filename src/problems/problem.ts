/**
 * What is wrong with an input, or worth a warning. Pure data; nothing throws for wrong input.
 * `path` is where in the document the value stands, as keys and indices; line and column (from 1)
 * are filled in by whoever knows the text (`job/locate.ts`).
 */
export interface Problem {
  readonly severity: 'error' | 'warning';
  /** Stable, kebab-case, e.g. `length-decimal-comma`. */
  readonly code: string;
  readonly path: readonly (string | number)[];
  /** What is wrong and what is allowed: one sentence without a full stop at its end. */
  readonly message: string;
  /** What to do; empty only where the message already says it. */
  readonly hint: string;
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  /** Of sizes that contradict each other: all of a set that agree as soon as any one of them is left out. */
  readonly clash?: readonly Clashing[];
}

/** One of several values that do not go together. */
export interface Clashing {
  /** Where it stands. */
  readonly path: readonly (string | number)[];
  /** Where the same stands for openings that are alike; it is changed or left out in all of these places. */
  readonly also: readonly (readonly (string | number)[])[];
  /** e.g. `outer width`. */
  readonly what: string;
  /** mm, and as it is shown; a rule has neither. */
  readonly value?: number;
  readonly shown?: string;
  /** The value that would go with the others, where one does. */
  readonly instead?: number;
  readonly insteadShown?: string;
  /** True where it can be changed, but not left to be worked out. */
  readonly fixed?: true;
}

export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function error(code: string, path: Problem['path'], message: string, hint = ''): Problem {
  return { severity: 'error', code, path, message, hint };
}

export function warning(code: string, path: Problem['path'], message: string, hint = ''): Problem {
  return { severity: 'warning', code, path, message, hint };
}

export function succeed<T>(value: T, warnings: readonly Problem[] = []): Result<T> {
  return { ok: true, value, warnings };
}

export function fail(problems: readonly Problem[]): Result<never> {
  return { ok: false, problems };
}

/** What several parts of the work tell alike, once each, in the order of its first telling. */
export const toldOnce = (problems: readonly Problem[]): readonly Problem[] => [
  ...new Map(problems.map((problem) => [JSON.stringify(problem), problem])).values(),
];
