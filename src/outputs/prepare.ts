import { nearest } from '../problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed, toldOnce, warning } from '../problems/problem.ts';
import { quoted } from '../problems/quoted.ts';
import { CANCELLED } from './cancelled.ts';
import type { OutputOptions, Surroundings } from './options.ts';
import type { Drawer, Drawn, Needs, Output, Ready, Work } from './output.ts';
import { ready } from './ready.ts';
import type { OutputId, Records } from './records.ts';
import { findOutput } from './table.ts';
import { type Taken, taken } from './taken.ts';

/** An output drawn and laid on paper: everything is decided, nothing is written yet. */
export interface Prepared<Id extends OutputId = OutputId> {
  readonly id: Id;
  readonly drawn: Drawn<Records[Id]>;
  readonly taken: Taken;
  /** In which it was asked for, or is usually written. */
  readonly formats: readonly string[];
  readonly options: OutputOptions;
  readonly ready: Ready;
}

/**
 * One output of some work, as far as it can be without writing a file. Errors: `output-unknown`, `output-jobs`,
 * `format-unknown`, `cancelled`, those of settling and of the output itself; those that point into a job have their place.
 */
export async function prepare<Id extends OutputId>(
  id: Id,
  work: Work,
  options: OutputOptions = {},
  around: Surroundings = {},
): Promise<Result<Prepared<Id>>> {
  const found = findOutput(id);
  if (!found.ok) return found;
  const output: Output<Id> = found.value;
  const wrong = countProblems(output, work);
  if (wrong.length > 0) return fail(wrong);
  const made = await ready(work, options, [[output, options]]);
  if (!made.ok) return made;
  const drawn = await drawReady(output, made.value, options, around);
  return drawn.ok ? succeed(drawn.value, toldOnce([...made.warnings, ...drawn.warnings])) : drawn;
}

/** The same of work for which everything is decided already. */
export async function drawReady<Id extends OutputId>(
  output: Output<Id>,
  made: Ready,
  given: OutputOptions,
  around: Surroundings,
): Promise<Result<Prepared<Id>>> {
  if (around.signal?.aborted === true) return fail([CANCELLED]);
  const [only, ...more] = made.work.jobs;
  const located = (problems: readonly Problem[]) =>
    only === undefined || more.length > 0 ? problems : only.locate(problems);
  const options: OutputOptions =
    given.format === undefined ? given : { ...given, format: given.format.map((format) => format.toLowerCase()) };
  const formats = located(formatProblems(output, options.format ?? []));
  const { draw, worked } = await output.load();
  const own = await ownReady(output, made, options, worked);
  const drawn = own.ok ? await draw(own.value, options, around) : own;
  const problems = [...formats, ...(drawn.ok ? [] : located(drawn.problems))];
  if (!own.ok || !drawn.ok || problems.length > 0) return fail(problems);
  const { value } = drawn;
  const prepared: Prepared<Id> = {
    id: output.id,
    drawn: value,
    taken: taken(
      value.documents.map(({ document }) => document),
      value.beds,
      made.settled,
    ),
    formats: options.format ?? value.usual,
    options,
    ready: own.value,
  };
  return succeed(prepared, [...withoutEffect(options, prepared), ...located([...own.warnings, ...drawn.warnings])]);
}

/** What was decided, also for what an output adds to the work. */
async function ownReady<Id extends OutputId>(
  output: Output<Id>,
  made: Ready,
  options: OutputOptions,
  worked: Drawer<Records[Id]>['worked'],
): Promise<Result<Ready>> {
  const work = worked === undefined ? succeed(made.work) : await worked(made.work, options);
  if (!work.ok) return work;
  if (work.value === made.work) return succeed(made, work.warnings);
  const own = await ready(work.value, options, [[output, options]]);
  return own.ok ? succeed(own.value, [...work.warnings, ...own.warnings]) : own;
}

/** What is said of a format that is not made. */
const OF_FORMAT = { dpi: 'png', dialect: 'dxf' } as const;

function withoutEffect(options: OutputOptions, { formats }: Prepared): readonly Problem[] {
  const idle = (['dpi', 'dialect'] as const).filter(
    (name) => options[name] !== undefined && !formats.includes(OF_FORMAT[name]),
  );
  return idle.map((name) => {
    const message = `${name} has no effect on ${formats.join(', ')}, only on ${OF_FORMAT[name]}`;
    return warning('option-idle', ['options', name], message, `ask for ${OF_FORMAT[name]} too, or leave it out`);
  });
}

const COUNTS: Readonly<Record<Needs, { readonly least: number; readonly most: number; readonly words: string }>> = {
  'a job': { least: 1, most: 1, words: 'one job' },
  jobs: { least: 1, most: Number.POSITIVE_INFINITY, words: 'one job or more' },
  'a job or none': { least: 0, most: 1, words: 'one job or none' },
};

function countProblems({ id, needs }: Output, { jobs }: Work): readonly Problem[] {
  const { least, most, words } = COUNTS[needs];
  if (jobs.length >= least && jobs.length <= most) return [];
  const message = `${id} is made of ${words}, not of ${jobs.length === 0 ? 'none' : jobs.length}`;
  return [error('output-jobs', [], message, 'hand over as many solved jobs')];
}

/** A format that an output has not is refused, with the nearest that it has. */
function formatProblems({ formats }: Output, names: readonly string[]): readonly Problem[] {
  return names
    .filter((id) => !formats.includes(id))
    .map((id) => {
      const near = nearest(id, formats);
      const known = formats.join(', ');
      const message = `there is no format ${quoted(id)} here, only ${known}`;
      return error(
        'format-unknown',
        [],
        message,
        near === undefined ? `choose one of ${known}` : `did you mean ${near}?`,
      );
    });
}
