import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that laying out on paper can end with. */
export const CODES: Codes = {
  'corners-without-board': entry('Corner sheets are asked for of a drawing without a board.', 'Print it whole.'),
  'jig-job-needed': entry('A jig is made for a job, and none is given.', 'Give the job.'),
  'jig-thickness': entry('A thickness cannot be read.', 'Write for example `1.4 mm`.'),
  'lap-too-narrow': entry('Sheets lie over one another too little to be joined.', 'Make the lap wider.'),
  'lap-too-wide': entry('Sheets lie over one another by more than half of what they show.', 'Make the lap narrower.'),
  'margin-negative': entry('A margin is less than nought.', 'Leave it out for the default.'),
  'margins-too-wide': entry(
    'The margins leave next to nothing of the paper.',
    'Make them smaller, or take a larger paper.',
  ),
  'nothing-drawn': entry('There is nothing to print.', 'Show a group at least.'),
  'page-too-large': entry('One page would be longer than a page can be.', 'Print it on sheets that are joined.'),
  'printer-scale': entry(
    'A printer is said to be farther from true than any is.',
    'Give measured over nominal length.',
  ),
  'roll-too-narrow': entry('The roll is narrower than the drawing.', 'Take a wider roll, or sheets.'),
  'sheet-crowded': entry('Some sheets have no room for their marks.', 'Take a larger paper.'),
  'too-many-sheets': entry('The drawing would take far too many sheets.', 'Take a larger paper, smaller margins.'),
};
