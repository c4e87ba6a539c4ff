import { tickets } from '../../documents/ticket/tickets.ts';
import { defined } from '../../problems/defined.ts';
import { type Result, succeed } from '../../problems/problem.ts';
import { shopLocator } from '../../shop/read-shop.ts';
import { planBoards } from '../../stock/board-plans.ts';
import { layOutDay } from '../../stock/layouts.ts';
import { falloutWaits } from '../../stock/waits.ts';
import type { Draw, Ready } from '../output.ts';
import type { Records } from '../records.ts';
import { drawnSheets } from './sheets.ts';

/** With fallouts for stock, errors are those of planning stock. */
export const draw: Draw<Records['ticket']> = async (ready, options) => {
  const { work, settled } = ready;
  const { number, sheet: paper, fonts } = settled;
  const waits = options.fallouts === true && work.jobs.length > 1 ? waitsOf(ready) : succeed([]);
  if (!waits.ok) return waits;
  const run = options.run === true;
  const { title, sheets, records } = tickets(work.jobs, { paper, fonts, run, ...defined({ number }) }, waits.value);
  const subject = run ? 'Order of work' : 'Bench ticket';
  return succeed(
    drawnSheets({ name: run ? 'run-list' : 'ticket', title, subject, sheets, record: records }),
    waits.warnings,
  );
};

/** As the day's stock plan with fallouts has it: the same plan comes of the same jobs. */
function waitsOf({ work, shop, settled }: Ready): Result<ReturnType<typeof falloutWaits>> {
  const source = work.shop;
  const locate = source === undefined ? <T>(problems: T) => problems : shopLocator(source.text, source.file);
  const planned = planBoards({
    jobs: work.jobs,
    shop: { shop, locate },
    units: settled.units,
    options: { fallouts: true },
  });
  if (!planned.ok) return planned;
  return succeed(falloutWaits(layOutDay(planned.value, shop), work.jobs), planned.warnings);
}
