import { defined } from './defined.ts';
import type { Problem } from './problem.ts';
import { word } from './quoted.ts';

/** `mat.layers[1].reveal` from keys and indices; the document itself is the empty string. */
export function showPath(path: Problem['path']): string {
  let out = '';
  for (const step of path) {
    out += typeof step === 'number' ? `[${step}]` : `${out === '' ? '' : '.'}${word(step)}`;
  }
  return out;
}

/** One line: `file:line:col  where  what is wrong, what is allowed; what to do`. */
export function showProblem(problem: Problem): string {
  const place = [problem.file ?? 'job', problem.line, problem.column].filter((part) => part !== undefined).join(':');
  const where = showPath(problem.path);
  const kind = problem.severity === 'warning' ? 'warning: ' : '';
  const hint = problem.hint === '' ? '' : `; ${problem.hint}`;
  return `${place}  ${where === '' ? '' : `${where}  `}${kind}${problem.message}${hint}`;
}

/** The plain record that `--json` prints for a problem. */
export function problemRecord(problem: Problem): Record<string, unknown> {
  const { clash } = problem;
  const shown = clash?.map((each) => ({ ...each, path: showPath(each.path), also: each.also.map(showPath) }));
  return { ...problem, path: showPath(problem.path), ...defined({ clash: shown }) };
}
