import { labelSheets, labelsOf, USUAL_GRID } from '../../documents/lists/labels.ts';
import { numbered } from '../../documents/ticket/tickets.ts';
import { defined } from '../../problems/defined.ts';
import { succeed } from '../../problems/problem.ts';
import { shownLetterhead } from '../letterhead.ts';
import type { Draw } from '../output.ts';
import type { Records } from '../records.ts';
import { drawnSheets } from './sheets.ts';

/** Errors: `label-grid`. */
export const draw: Draw<Records['labels']> = async (made, { rows, columns, gap, margin, skip }, { shopPictures }) => {
  const { work, settled } = made;
  const head = await shownLetterhead(made, shopPictures);
  if (!head.ok) return head;
  const { letterhead, pictures } = head.value;
  const jobs = numbered(work.jobs, settled.number);
  const grid = {
    ...USUAL_GRID,
    ...defined({ rows }),
    ...defined({ columns }),
    ...defined({ skip }),
    ...(gap === undefined ? {} : { gapX: gap[0], gapY: gap[1] }),
    ...(margin === undefined ? {} : { marginX: margin[0], marginY: margin[1] }),
  };
  const sheets = labelSheets(jobs, settled.sheet, grid, settled.units, settled.fonts, letterhead);
  if (!sheets.ok) return sheets;
  const subject = 'Labels for blanks and backs';
  const record = labelsOf(jobs, letterhead);
  const drawn = drawnSheets({ name: 'labels', title: 'Labels', subject, sheets: sheets.value, record, pictures });
  return succeed(drawn, head.warnings);
};
