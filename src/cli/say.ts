import type { Problem } from '../problems/problem.ts';
import { problemRecord, showProblem } from '../problems/show.ts';

export function note(text: string): void {
  process.stdout.write(`${text}\n`);
}

/** A problem of an option stands at the option. */
function atOption(problem: Problem): Problem {
  const [top, name] = problem.path;
  return top === 'options' && problem.file === undefined ? { ...problem, file: `--${name}`, path: [] } : problem;
}

export function warn(warnings: readonly Problem[]): void {
  for (const warning of warnings) process.stderr.write(`${showProblem(atOption(warning))}\n`);
}

/** Said beside what the command does, also where it is to be quiet. */
export function remark(text: string): void {
  process.stderr.write(`matwright: ${text}\n`);
}

export function printJson(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}

/** Shows the problems where they belong and makes the command end with 2. */
export function fail(problems: readonly Problem[], json: boolean): void {
  if (json) printJson({ problems: problems.map(problemRecord) });
  else warn(problems);
  process.exitCode = 2;
}
