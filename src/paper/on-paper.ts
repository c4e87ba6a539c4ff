import type { Job } from '../job/job.ts';
import { findPaper } from '../papers/find.ts';
import { nearest } from '../problems/nearest.ts';
import { error, fail, type Result, succeed } from '../problems/problem.ts';
import type { Shop } from '../shop/shop.ts';
import type { LayoutOptions } from './options.ts';

/** What a caller asks for instead of what the job says. */
export interface PaperWishes {
  readonly paper?: string;
  /** A printer of the shop. */
  readonly printer?: string;
  readonly extent?: LayoutOptions['extent'];
}

/** How a job's documents lie on paper. Errors: those of finding the paper, `printer-unknown`. */
export function onPaper(job: Job, shop: Shop, options: PaperWishes): Result<Omit<LayoutOptions, 'units'>> {
  const { print } = job;
  const custom = [...shop.papers].map(([id, size]) => ({ id, name: id, ...size }));
  const paper = findPaper(options.paper ?? print.paper, { custom, unit: job.units, path: ['print', 'paper'] });
  const printer = options.printer === undefined ? print.printer : shop.printers.get(options.printer);
  const problems = paper.ok ? [] : [...paper.problems];
  if (options.printer !== undefined && printer === undefined) {
    const known = [...shop.printers.keys()];
    const near = nearest(options.printer, known) ?? known.join(', ');
    problems.push(
      error(
        'printer-unknown',
        ['print', 'printer'],
        `the shop has no printer ${JSON.stringify(options.printer)}`,
        near === '' ? 'describe it under printers in shop.yaml' : `did you mean ${near}?`,
      ),
    );
  }
  if (!paper.ok || problems.length > 0) return fail(problems);
  return succeed({
    paper: paper.value,
    margin: print.margin,
    lap: print.lap,
    join: print.join,
    extent: options.extent ?? 'whole',
    ...(printer === undefined ? {} : { printer }),
    path: ['print'],
  });
}
