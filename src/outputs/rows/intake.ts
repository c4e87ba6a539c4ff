import { intakeSheets } from '../../documents/lists/intake.ts';
import { intakeFields } from '../../documents/lists/intake-fields.ts';
import { numbered } from '../../documents/ticket/tickets.ts';
import { defined } from '../../problems/defined.ts';
import { succeed } from '../../problems/problem.ts';
import { priceList, priceWarnings } from '../../stock/prices.ts';
import { shownLetterhead } from '../letterhead.ts';
import type { Draw } from '../output.ts';
import type { Records } from '../records.ts';
import { drawnSheets } from './sheets.ts';

export const draw: Draw<Records['intake']> = async (made, _, { shopPictures }) => {
  const { work, shop, settled } = made;
  const head = await shownLetterhead(made, shopPictures);
  if (!head.ok) return head;
  const { letterhead, pictures } = head.value;
  const { units, number, sheet: paper, fonts } = settled;
  const [filled] = numbered(work.jobs, number);
  const title = filled === undefined ? 'Intake' : `${filled.job.title}, intake`;
  const prices = filled && priceList(filled.mat, filled.job, shop);
  const form = { paper, fonts, ...defined({ letterhead, prices }) };
  const sheets = intakeSheets(filled, units, form);
  const record = intakeFields(filled, units, prices);
  const drawn = drawnSheets({ name: 'intake', title, subject: 'Intake form', sheets, record, pictures });
  return succeed(drawn, [...head.warnings, ...priceWarnings(prices)]);
};
