import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that solving can end with. */
export const CODES: Codes = {
  'arrange-count': entry(
    'The rows hold another number of openings than the job lists.',
    'Change the rows, or the list of openings.',
  ),
  'artwork-beyond-mat': entry(
    'The artwork reaches beyond the mat’s edge.',
    'Make the mat larger, or crop the artwork.',
  ),
  'as-cut-beyond-frame': entry(
    'A board as it was cut is larger than the frame takes.',
    'Trim it, and give its size again.',
  ),
  'as-cut-contradicts': entry(
    'Borders and size of an opening as cut do not add up to the board.',
    'Measure again, or leave one border out.',
  ),
  'as-cut-shape': entry(
    'An opening as cut is of a shape, or has a size, that is not worked out again.',
    'Cut it again, or measure it again.',
  ),
  'as-cut-uncovers': entry(
    'What was cut leaves the artwork bare; the message says by how much.',
    'Cut that board again, or put another under mat below it.',
  ),
  'below-ring': entry('Openings lie below one another in a ring.', 'Give one of them a place of its own.'),
  'below-unknown': entry('A place names an opening that there is none of.', 'Take a name that the message lists.'),
  'bar-narrow': entry('So little board is left between two openings that it bends easily.', 'Move them apart.'),
  'bevel-angle': entry('A bevel’s angle is one that no head cuts.', 'Give the angle from the face, 90 being square.'),
  'bevels-meet': entry(
    'Bevels of neighbouring openings meet inside the board.',
    'Move the openings apart, or cut steeper.',
  ),
  'blank-beyond-sheets': entry(
    'No sheet of the board is large enough for the blank.',
    'Take a board with larger sheets.',
  ),
  'board-thick': entry(
    'The board is thicker than double-weight board.',
    'Check the unit, and that the blade reaches through.',
  ),
  'board-thickness': entry('A board has no thickness.', 'Measure it and write it down.'),
  'board-thin': entry(
    'A window mat of less than 4-ply board may touch the art.',
    'Take a thicker board, or lift the mat off the art.',
  ),
  'border-and-places': entry(
    'The mat has borders although every opening has a place.',
    'Take the borders out, or one of the places.',
  ),
  'border-hidden': entry('The frame’s lip hides a whole border.', 'Make the mat larger, or give the true lip.'),
  'border-mostly-hidden': entry(
    'The frame’s lip hides most of a border.',
    'Make the mat larger or the opening smaller.',
  ),
  'border-narrow': entry(
    'So little board is left beside an opening that it bends easily.',
    'Make the mat larger or the opening smaller.',
  ),
  'border-none': entry('Nothing is left of a border.', 'Make the mat larger or the opening smaller.'),
  'border-tears': entry(
    'Too little board is left beside an opening, on its face or its back, or none.',
    'Make the mat larger or the opening smaller.',
  ),
  'clearance-beyond-lip': entry('A mat that slips in the rebate shows its edge.', 'Make the clearance smaller.'),
  'clearance-unusual': entry(
    'The clearance in the rebate is not the usual 1 to 3 mm.',
    'Measure the rebate, or change the clearance.',
  ),
  'diagonal-top-narrow': entry(
    'The diagonal makes the top narrower than the sides.',
    'Weight the piece in another way.',
  ),
  'float-narrow': entry('Very little is seen around a floated artwork.', 'Make the float larger.'),
  'float-none': entry('The mat covers an artwork that is to float.', 'Make the float larger.'),
  'groove-deep': entry('A groove would be as deep as the board is thick.', 'Make it narrower.'),
  'line-side-none': entry(
    'A line is asked for along a side that the shape has none of.',
    'Take the side out, or give no `sides`.',
  ),
  'lettering-near': entry(
    'Letters come nearer to an opening, or to another text, than the least bar of board.',
    'Move the text, make it smaller, or set `mat.leastBar`.',
  ),
  'lettering-needs-fonts': entry(
    'A job with lettering is solved without the outlines of letters.',
    'Load fonts with outlines and solve it with them; every command does.',
  ),
  'lettering-off-mat': entry(
    'A text runs off the mat, or off the under mat that should show in it.',
    'Move it, or make the letters smaller.',
  ),
  'lettering-unfit': entry(
    'A text cannot be cut: a letter is not in the font, has an island that is refused or too small to bridge, or is too narrow for a bevel.',
    'Do what the message says: larger letters, a narrower bridge, `edge: square`.',
  ),
  'letters-near': entry(
    'Two letters leave less board between them than a bridge is wide.',
    'Set more `spacing`, or a narrower `bridge`.',
  ),
  'line-off-mat': entry(
    'A groove or a drawn line around an opening would run off the mat.',
    'Bring the line nearer to its opening, or give the mat a wider border.',
  ),
  'mat-too-large': entry('The mat comes out larger than any board.', 'Check the units of the sizes.'),
  'opening-beyond-border': entry(
    'An opening reaches over the edge of the mat, or under the lip.',
    'Move it, or make it smaller.',
  ),
  'opening-name-twice': entry('Two openings have the same name.', 'Give each its own.'),
  'opening-none': entry(
    'Nothing is seen through an opening.',
    'Make the mat or the artwork larger, or the borders narrower.',
  ),
  'openings-near': entry(
    'Too little board is left between two openings.',
    'Move them apart, or lower `mat.leastBar` where it asks for more.',
  ),
  'openings-none': entry('The job has no opening.', 'Give one at least.'),
  'outline-falls-apart': entry(
    'An outline is so narrow somewhere that its line falls apart.',
    'Make it larger or plainer.',
  ),
  'overlap-and-float': entry('An artwork is overlapped or floated, not both.', 'Leave one of them out.'),
  'overlap-narrow': entry(
    'The mat really covers less than 2 mm of the artwork.',
    'Make the overlap larger, or the opening smaller.',
  ),
  'overlap-none': entry(
    'The mat does not cover the edge of the artwork.',
    'Make the overlap larger, or the opening smaller.',
  ),
  'overlap-without-artwork': entry(
    'An overlap or a float has no artwork to be measured from.',
    'Give the size of the artwork.',
  ),
  'reveal-by-side': entry(
    'A reveal differs by side, which this shape cannot have.',
    'Give one reveal, or another shape.',
  ),
  'reveals-count': entry(
    'An opening has more reveals than the mat has under mats.',
    'Give one for each under mat at most.',
  ),
  'shape-unfit': entry('The values of a shape do not go with its size.', 'Change them as the message says.'),
  'size-large': entry('A mat is larger than any board.', 'Say the unit: such sizes are usually meant in mm.'),
  'size-not-finite': entry('A size is no number.', 'Give a plain number.'),
  'sizes-contradict': entry(
    'Two ways to work out a size do not agree.',
    'Change or leave out one of those that are named.',
  ),
  'sizes-not-enough': entry(
    'The sizes that are given leave something open.',
    'Give one of the sets that the message names.',
  ),
  'snap-not-possible': entry(
    'An edge cannot be moved to the graduation.',
    'Give a size on the graduation, or set it scant or full.',
  ),
  'spacer-top': entry('The top mat has a spacer, though no layer lies above it.', 'Give it to the layer below.'),
  'strip-hidden': entry(
    'Nothing is seen of an under mat: the bevel above hides its reveal.',
    'Make the reveal larger.',
  ),
  'strip-narrow': entry('Less than 1 mm is seen of an under mat.', 'Make the reveal larger.'),
  'together-no-tape': entry(
    'An under mat has no room for tape, so it cannot be cut on the top mat.',
    'Trim it back less, or cut apart.',
  ),
  'together-not-short': entry(
    'An under mat is not short of the edges of the mat it is cut on.',
    'Give it a trim-back, or cut apart.',
  ),
  'together-skip': entry('An opening that skips a layer cannot be cut in a stack.', 'Cut apart.'),
  'together-spacer': entry('A layer on a spacer cannot be cut in a stack.', 'Cut apart.'),
  'trim-back-unused': entry('A trim-back is given that nothing is done with.', 'Leave it out, or stack together.'),
  'weighting-ratio': entry('A ratio of bottom to top is none.', 'Give for example `4/3`.'),
};
