import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that a day's work can end with. */
export const CODES: Codes = {
  'day-list': entry('A list of the day says what it cannot.', 'Write what the message allows.'),
  'day-stock': entry('The boards of a day are not planned together.', 'Plan them with matwright stock.'),
  'job-failed': entry('A job could not be finished; the others were.', 'See what the message says, then run it again.'),
  'job-unreadable': entry('A job could not be read; the others were made.', 'See what the message says of the file.'),
  'job-unwritten': entry('What was made of a job could not be written.', 'See what the message says of the folder.'),
  'table-column': entry('A heading of a job table is no place in a job.', 'Name the place, as the message shows.'),
  'table-column-twice': entry('Two columns of a job table are for the same place.', 'Take one of them out.'),
  'table-column-which': entry(
    'A heading is the last word of several places in the template.',
    'Write the whole place over the column.',
  ),
  'table-empty': entry('A job table has no rows.', 'Write headings, then a row for each job.'),
  'table-long': entry('A job table has more rows than are read.', 'Look whether it is the right file.'),
  'table-name-twice': entry('Two rows of a job table have one name.', 'Give each another name under file.'),
  'table-quotes': entry('A quote in a job table is not closed.', 'Double quotes that are signs of their own.'),
  'table-row': entry('A cell of a job table stands under no heading.', 'Give it one, or take the cell out.'),
  'table-unlike': entry(
    'Jobs that are to be rows of one table are built otherwise than the first.',
    'Write tables of jobs that are built alike.',
  ),
};
