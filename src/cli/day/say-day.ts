import { basename } from 'node:path';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import { problemRecord } from '../../problems/show.ts';
import { type Left, leftJson } from '../output/earlier.ts';
import { rounded } from '../rounded.ts';
import { note, printJson, warn } from '../say.ts';
import { foundIn } from './made.ts';
import type { Day } from './make-day.ts';

const isError = ({ severity }: Problem): boolean => severity === 'error';

/** What was made, job by job, and what is wrong last: so it is what stands on the screen. */
export function sayDay({ states, papers, problems }: Day, out: string | undefined): void {
  warn(problems.filter((problem) => !isError(problem)));
  const changed = states.filter(({ now }) => now);
  for (const { indexed, folder } of changed)
    note(`${indexed.report.title}: ${indexed.files.length + 1} files in ${folder}`);
  const same = states.length - changed.length;
  if (same > 0) note(same === 1 ? 'one job has not changed' : `${same} jobs have not changed`);
  if (out !== undefined && papers.length > 0) {
    const files = papers.map(({ print, pages }) => `${print.name} (${pages === 1 ? 'one page' : `${pages} pages`})`);
    note(`for all together: ${files.join(', ')}, index.html in ${out}`);
  }
  warn(problems.filter(isError));
}

export function sayDayJson({ states, papers, problems }: Day, left: readonly Left[]): void {
  const jobs = states.map(({ job, folder }) => ({
    job: job.shown,
    folder,
    ...foundIn(folder)?.manifest,
    ...leftJson(left.filter((each) => each.folder === folder)),
  }));
  const wrong = problems.filter(isError);
  printJson(
    rounded({
      jobs,
      papers: papers.map(({ print, pages, jobs: folders }) => ({
        file: print.name,
        pages,
        jobs: folders.map((folder) => basename(folder)),
      })),
      ...defined({ problems: wrong.length === 0 ? undefined : wrong.map(problemRecord) }),
    }),
  );
}
