import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that a job can end with, beside those of reading and of the shop. */
export const CODES: Codes = {
  'as-cut-twice': entry('The same thing is given twice as it was cut.', 'Keep one of the two.'),
  'as-cut-layer': entry('A layer as it was cut is none of the mat’s.', 'Count them from 1, the top mat.'),
  'as-cut-opening': entry(
    'An opening as it was cut is none of the job’s.',
    'Count them as the job lists them, from 1.',
  ),
  'openings-count': entry('A job has 1 to 400 openings.', 'Give at least one.'),
  'shape-field-stray': entry(
    'An opening has a value that belongs to another shape.',
    'Take it out, or change the shape.',
  ),
  'shape-field-missing': entry('A shape needs a value beside its size.', 'Give it.'),
  'outline-unreadable': entry('A text is no outline, or one that crosses itself.', 'Write SVG path data or corners.'),
  'place-twice': entry('A place is given in two ways.', 'Keep one.'),
  'place-below': entry('A place below another opening needs its name and a gap.', 'Give both.'),
  'place-empty': entry('A place says nothing.', 'Give distances from the edges, or take it out.'),
  'row-weighting-one': entry('A row weighting has exactly one of `add` and `ratio`.', 'Keep one.'),
  'lettering-many': entry('There are more texts to cut than any mat holds.', 'Give 8 at most.'),
  'line-sides-empty': entry('A line runs along no side.', 'Leave `sides` out for a line all round.'),
  'lines-many': entry('An opening has more than 12 lines around it.', 'Give fewer.'),
  'layers-count': entry('A mat has 1 to 8 layers.', 'Leave the key out for one top mat.'),
  'overlap-or-float': entry('An artwork is overlapped or floated, not both.', 'Keep the one that is meant.'),
  'artwork-missing': entry('An overlap or a float needs an artwork.', 'Give its size.'),
  'weighting-one': entry('A weighting has exactly one of `add` and `ratio`.', 'Keep one.'),
  'reveal-top': entry('The top mat has a reveal, though no layer lies above it.', 'Give it to the layer below.'),
  'bevel-not-head': entry(
    'A layer has another bevel than the head that is named.',
    'Cut it with a head of that angle.',
  ),
  'rebate-shallow': entry(
    'What must lie in the rebate is deeper than it.',
    'Take a deeper moulding, or longer fittings.',
  ),
  'margin-unprintable': entry('A margin is smaller than what the printer leaves blank.', 'Make it as large.'),
  'vary-unreadable': entry(
    'It is not said what is to be varied, and how.',
    'Write for example `mat.layers[1].board=bone-4,slate-4`.',
  ),
  'vary-path': entry(
    'There is no such place in the job to vary.',
    'Name one as the job writes it; the first of a list is [0].',
  ),
  'glyph-missing': entry('No font has a character; a box is drawn in its place.', 'Write it in other characters.'),
  'script-unshaped': entry('A script cannot be set properly.', 'Write it in Latin, Greek or Cyrillic letters.'),
};
