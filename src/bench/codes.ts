import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that the bench can end with. */
export const CODES: Codes = {
  'guide-beyond': entry(
    'The guide cannot be set for a side, and no line helps.',
    'Give the head its bar, or cut along a straightedge.',
  ),
  'head-offset-absurd': entry('A head’s offset is farther than any scribe stands from its blade.', 'Measure it again.'),
  'head-thickness-outside': entry(
    'A board is of a thickness that the head was not calibrated at.',
    'Calibrate on it, or try an offcut.',
  ),
  'line-off-board': entry(
    'A line to cut would run off its board: a corner that points into the opening is so sharp that its mitre on the back lies beyond the edge.',
    'Make the corner blunter, the border wider or the board thinner.',
  ),
  'mark-off-board': entry(
    'A start or stop mark lies off the board.',
    'Make the border wider, or carry the mark over to waste board.',
  ),
  'pencil-cut-through': entry(
    'A job is marked out by pencil, but its pattern is to stay on the board.',
    'Take one of the two out.',
  ),
  'side-too-short': entry(
    'A side is so short that the bevels beside it meet before the back: it has no stroke.',
    'Make it longer, or cut it from the face with a knife.',
  ),
  'stroke-too-short': entry('A side is too short for the head.', 'Cut it by hand, or check the offsets.'),
  'together-barely-short': entry(
    'An under mat is trimmed back so little that it may reach the guide.',
    'Trim it back by 1/8 in or 3 mm.',
  ),
  'together-outside-fallout': entry(
    'Nothing carries an under opening while it is cut.',
    'Make the reveal larger, or cut apart.',
  ),
  'together-reverse-fallout': entry(
    'Fallouts cannot drop out through a reverse bevel.',
    'Cut apart, or on a slip sheet.',
  ),
};
