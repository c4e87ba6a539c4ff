import type { OptionName } from '../../outputs/option-table.ts';
import type { Given } from '../output/options.ts';
import { shellWord } from '../shell-word.ts';
import type { DayJob } from './day-job.ts';

/** Options of a call that each of its jobs is made with. */
const ALSO = ['shop', 'maxSheets', 'force', 'verify'] as const;
const dashed = (name: string): string => name.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`);

/**
 * One command for each job, which depends on no other: wherever it runs, the job's folder has the same bytes. Its number is
 * written out, since it is counted on from the first.
 */
export function commandsOf(
  jobs: readonly DayJob[],
  folders: readonly string[],
  options: readonly OptionName[],
  flags: Given,
): readonly string[] {
  const same = [...options.filter((name) => name !== 'number'), ...ALSO].flatMap((name) => option(name, flags[name]));
  return jobs.map(({ origin, number }, i) => {
    const job =
      'job' in origin
        ? [origin.job]
        : ['--table', origin.table, '--template', origin.template, '--row', `${origin.row}`];
    return ['matwright', 'make', ...job, '--into', folders[i]!, ...option('number', number), ...same, '--quiet']
      .map(shellWord)
      .join(' ');
  });
}

const option = (name: string, value: string | boolean | undefined): readonly string[] =>
  value === undefined || value === false ? [] : [`--${dashed(name)}`, ...(value === true ? [] : [value])];
