import { labelSheets, labelsOf, USUAL_GRID } from '../documents/lists/labels.ts';
import { numbered } from '../documents/ticket/tickets.ts';
import { defined } from '../problems/defined.ts';
import { succeed } from '../problems/problem.ts';
import type { Draw } from './output.ts';
import type { Records } from './records.ts';
import { drawnSheets } from './sheets.ts';

/** Errors: `label-grid`. */
export const draw: Draw<Records['labels']> = async ({ work, shop, settled }, { rows, columns, gap, margin, skip }) => {
  const jobs = numbered(work.jobs, settled.number);
  const grid = {
    ...USUAL_GRID,
    ...defined({ rows }),
    ...defined({ columns }),
    ...defined({ skip }),
    ...(gap === undefined ? {} : { gapX: gap[0], gapY: gap[1] }),
    ...(margin === undefined ? {} : { marginX: margin[0], marginY: margin[1] }),
  };
  const sheets = labelSheets(jobs, settled.sheet, grid, settled.units, settled.fonts, shop.letterhead);
  if (!sheets.ok) return sheets;
  const subject = 'Labels for blanks and backs';
  return succeed(
    drawnSheets({
      name: 'labels',
      title: 'Labels',
      subject,
      sheets: sheets.value,
      record: labelsOf(jobs, shop.letterhead),
    }),
  );
};
