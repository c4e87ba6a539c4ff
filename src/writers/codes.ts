import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that writers can end with. */
export const CODES: Codes = {
  'format-unknown': entry('There is no such format.', 'Take one that the message names.'),
};
