import { tickets } from '../documents/ticket/tickets.ts';
import { defined } from '../problems/defined.ts';
import { succeed } from '../problems/problem.ts';
import type { Draw } from './output.ts';
import type { Records } from './records.ts';
import { drawnSheets } from './sheets.ts';

export const draw: Draw<Records['ticket']> = async ({ work, settled }) => {
  const { number, sheet: paper, fonts } = settled;
  const { title, sheets, records } = tickets(work.jobs, {
    paper,
    fonts,
    ...defined({ number }),
  });
  return succeed(drawnSheets({ name: 'ticket', title, subject: 'Bench ticket', sheets, record: records }));
};
