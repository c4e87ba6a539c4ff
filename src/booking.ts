/** Booking stock plans, as the library's face has it: calls are looked at first. */

import { called, wrongArgument } from './outputs/calls.ts';
import type { Source } from './outputs/solve-job.ts';
import type { Result } from './problems/problem.ts';
import { type Booked, bookPlan as book } from './stock/booking/book.ts';
import type { PlanNote } from './stock/booking/plan-note.ts';
import { type BookedPlan, cutPlan as cut, notePlan as notes, undoPlan as undo } from './stock/booking/plans-file.ts';

const bookingWrong = (shop: Source, plans: Source | undefined) => [
  ...wrongArgument('shop', shop, 'a text and the name of its file: {text, file}'),
  ...wrongArgument('plans', plans, 'a text and the name of its file: {text, file}', true),
];

/**
 * The shop's text once a plan is cut, the `plan` of a record of `stock`: counts and shelf are brought up to date, its comments
 * stay. It does not know what was booked before: `cutPlan` does.
 */
export const bookPlan = (shop: Source, planned: PlanNote, date: string): Result<Booked> =>
  called(
    [
      ...bookingWrong(shop, undefined),
      ...wrongArgument('planned', planned, 'a plan, as the record of stock has it'),
      ...wrongArgument('date', date, 'text'),
    ],
    () => book(shop, planned, date),
  );

/** The text of the journal of plans with one more that was printed; without one yet, a new one. */
export const notePlan = (plans: Source | undefined, planned: PlanNote, date: string): Result<string> =>
  called(
    [
      ...wrongArgument('plans', plans, 'a text and the name of its file: {text, file}', true),
      ...wrongArgument('planned', planned, 'a plan, as the record of stock has it'),
      ...wrongArgument('date', date, 'text'),
    ],
    () => notes(plans, planned, date),
  );

/** Books a plan of the journal by the number on its pages, once: the texts of shop and journal. */
export const cutPlan = (shop: Source, plans: Source | undefined, number: string, date: string): Result<BookedPlan> =>
  called(
    [...bookingWrong(shop, plans), ...wrongArgument('number', number, 'text'), ...wrongArgument('date', date, 'text')],
    () => cut(shop, plans, number, date),
  );

/** Takes a booking back, the last one where no number is given: the texts of shop and journal. */
export const undoPlan = (shop: Source, plans: Source | undefined, number?: string): Result<BookedPlan> =>
  called([...bookingWrong(shop, plans), ...wrongArgument('number', number, 'text', true)], () =>
    undo(shop, plans, number),
  );
