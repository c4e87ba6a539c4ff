import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that making documents can end with. */
export const CODES: Codes = {
  'deposit-large': entry('A deposit is more than the price.', 'Look at both once more.'),
  'call-wrong': entry(
    'A function of the library was called with something that it does not take.',
    'Hand over what the message names.',
  ),
  cancelled: entry('The work was stopped before it was done.', 'Ask again.'),
  'dialect-unknown': entry('There is no such dialect of DXF here.', 'Take one that the message names.'),
  'group-unknown': entry('There is nothing of that name to show.', 'Take one that the message names.'),
  'option-idle': entry(
    'An option speaks of a format that is not made.',
    'Ask for that format too, or leave the option out.',
  ),
  'output-jobs': entry('An output is made of more or fewer jobs than were given.', 'Give as many as the message says.'),
  'output-unknown': entry('There is no such output.', 'Take one that the message names.'),
  'picture-missing': entry('The artwork’s picture was not found.', 'Put it beside the job.'),
  'picture-proportions': entry(
    'The picture has other proportions than the artwork.',
    'Crop it, or measure the artwork again.',
  ),
  'picture-unreadable': entry('The artwork’s picture cannot be read.', 'See what the message says of it.'),
  'renderer-missing': entry(
    'A PNG is asked for, and nothing that renders one was handed over.',
    'Hand the renderer’s bytes over.',
  ),
  'sheets-many': entry(
    'A job takes more sheets than one may.',
    'Take a larger paper, or allow more with --max-sheets.',
  ),
  'png-large': entry('A page has too many pixels for a PNG.', 'Ask for fewer to the inch, or for a PDF.'),
  'svg-window': entry(
    'SVG is asked for where there is no document to build it in.',
    'Hand one over, or import the library as Node or workers have it.',
  ),
  'page-broken': entry('The page itself failed.', 'Save the piece to a file, then load the page again.'),
};
