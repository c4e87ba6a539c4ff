import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that writers can end with. */
export const CODES: Codes = {
  'line-off-sheet': entry(
    'A file for a machine would have a line beyond its sheet or bed.',
    'Make the border wider, or the opening smaller.',
  ),
  'format-unknown': entry('There is no such format.', 'Take one that the message names.'),
};
