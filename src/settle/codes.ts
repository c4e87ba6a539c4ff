import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that settling paper and printer can end with, beside those of reading and of papers. */
export const CODES: Codes = {
  'sheet-paper': entry(
    'What goes on single sheets is to go on other paper, or readings on sheets too small for them.',
    'Take letter or a4.',
  ),
};
