import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that papers can end with, beside those of reading. */
export const CODES: Codes = {
  'paper-unit': entry('A paper’s size has no unit and none can be taken for granted.', 'Write the unit.'),
};
