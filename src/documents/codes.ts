import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that documents can end with. */
export const CODES: Codes = {
  'jig-artwork-missing': entry('A jig places an artwork, but the job has none.', 'Give its size.'),
  'jig-chart-empty': entry(
    'The shop has no sizes that a chart could be made of.',
    'List sizes or frames in the shop’s file.',
  ),
  'jig-head-uncalibrated': entry('A proof is asked of a head that was never calibrated.', 'Calibrate it first.'),
  'jig-paper-small': entry('The paper is too small for the jig.', 'Take a larger paper.'),
  'jig-spacers-left-out': entry('Spacers do not fit on the paper.', 'Cut them by a rule, or take a larger paper.'),
  'label-grid': entry('The labels do not fit in the grid.', 'Give fewer rows or columns, or a larger sheet.'),
  'label-number-alone': entry(
    'Sides on a crowded pattern show their number alone.',
    'Read their settings by the number on the ticket, or in `check`.',
  ),
  'label-without-room': entry('Words find no room on a pattern.', 'Read them where the message says.'),
  'placement-artwork-missing': entry('A placement is asked for, but the job has no artwork.', 'Give its size.'),
};
