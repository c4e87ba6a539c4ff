import type { PrintRequest } from '../job/print.ts';
import { defined } from '../problems/defined.ts';
import type { Settled } from '../settle/settled.ts';
import type { LayoutOptions } from './options.ts';

/** How full-scale work lies on the paper that was settled, joined as the job says. */
export function onPaper(
  { paper, margin, printer, stamp, units }: Settled,
  { lap, join }: PrintRequest,
  extent: LayoutOptions['extent'] = 'whole',
): Omit<LayoutOptions, 'fonts'> {
  return {
    paper,
    margin,
    stamp,
    units,
    lap,
    join,
    extent,
    ...defined({ printer }),
    path: ['print'],
  };
}
