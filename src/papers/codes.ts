import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that papers can end with, beside those of reading. */
export const CODES: Codes = {
  'paper-unknown': entry('There is no such paper.', 'Take the nearest one, or write a size.'),
  'paper-ambiguous': entry('Two tables give this name to different papers.', 'Write the size with its unit.'),
  'paper-size': entry('The size of a paper cannot be read.', 'Write for example `13 x 19 in`.'),
  'paper-small': entry('A paper is too small to print on.', 'Take a larger one.'),
  'paper-large': entry('A paper is larger than a page can be.', 'Take a smaller one, or several sheets.'),
  'paper-unit': entry('A paper’s size has no unit and none can be taken for granted.', 'Write the unit.'),
};
