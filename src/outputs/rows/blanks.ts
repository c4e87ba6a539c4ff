import { blankList, listedBlanks } from '../../documents/lists/blank-list.ts';
import { numbered } from '../../documents/ticket/tickets.ts';
import { succeed } from '../../problems/problem.ts';
import type { Draw } from '../output.ts';
import type { Records } from '../records.ts';
import { drawnSheets } from './sheets.ts';

export const draw: Draw<Records['blanks']> = async ({ work, settled }) => {
  const { number, sheet: paper, fonts } = settled;
  const jobs = numbered(work.jobs, number);
  const sheets = blankList(jobs, { paper, fonts });
  const record = listedBlanks(jobs);
  return succeed(drawnSheets({ name: 'blanks', title: 'Blanks', subject: 'List of blanks', sheets, record }));
};
