import { sheetHead } from '../documents/words/running-head.ts';
import type { Job } from '../job/job.ts';
import { defined } from '../problems/defined.ts';
import type { Settled } from '../settle/settled.ts';
import type { LayoutOptions } from './options.ts';

/** How full-scale work lies on the paper that was settled, joined as the job says. */
export function onPaper(
  { paper, margin, printer, stamp, units, number }: Settled,
  job: Job,
  extent: LayoutOptions['extent'] = 'whole',
): Omit<LayoutOptions, 'fonts'> {
  return {
    paper,
    margin,
    stamp,
    units,
    lap: job.print.lap,
    join: job.print.join,
    head: sheetHead([{ job, ...defined({ number: number ?? job.number }) }]),
    extent,
    ...defined({ printer }),
    path: ['print'],
  };
}
