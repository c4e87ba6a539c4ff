import { type Codes, entry } from './problems/code-entry.ts';

/** Every code that making documents can end with. */
export const CODES: Codes = {
  'dialect-unknown': entry('There is no such dialect of DXF here.', 'Take one that the message names.'),
  'group-unknown': entry('There is nothing of that name to show.', 'Take one that the message names.'),
  'picture-missing': entry('The artwork’s picture was not found.', 'Put it beside the job.'),
  'picture-proportions': entry(
    'The picture has other proportions than the artwork.',
    'Crop it, or measure the artwork again.',
  ),
  'picture-unreadable': entry('The artwork’s picture cannot be read.', 'See what the message says of it.'),
};
