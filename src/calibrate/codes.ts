import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that calibration can end with. */
export const CODES: Codes = {
  'calibrate-axis-missing': entry(
    'Lines were measured in one direction of the sheet alone.',
    'Measure one across and one down.',
  ),
  'calibrate-bevel-rough': entry('The bevel’s angle is known only roughly.', 'Cut a strip of thicker board.'),
  'calibrate-bevel-uneven': entry(
    'Strips differ by more than they can be misread.',
    'Look for a blade that bends, cut anew.',
  ),
  'calibrate-end-missing': entry('A thickness has starts or stops alone.', 'Measure both ends of the cuts.'),
  'calibrate-ends-unequal': entry(
    'One kind of end scatters much more than the other.',
    'Look for play, and for a blade that bends.',
  ),
  'calibrate-fit-poor': entry(
    'The offsets do not follow the thickness.',
    'Measure again, or calibrate each board by itself.',
  ),
  'calibrate-guide-play': entry(
    'The guide does not come back to the same place.',
    'Tighten it, and press the board to it alike.',
  ),
  'calibrate-guide-scale': entry(
    'The guide’s scale is far from the truth.',
    'Check the unit of the readings, and the scale.',
  ),
  'calibrate-guide-uneven': entry(
    'The guide’s scale is not even.',
    'Look whether bar and guide are straight and square.',
  ),
  'calibrate-head-scatters': entry(
    'The head scatters more than a sound one.',
    'Look for play in the slide, and for a blade that bends.',
  ),
  'calibrate-lines-disagree': entry('One line on a sheet disagrees with the others.', 'Measure it again.'),
  'calibrate-order': entry(
    'Something that this depends on was not calibrated.',
    'Calibrate printer, guide and head in this order.',
  ),
  'calibrate-paper-unsaid': entry(
    'The lines look as if another paper was set.',
    'Say which paper is set and which was made for.',
  ),
  'calibrate-pricks-disagree': entry(
    'Corners and pricked marks tell different things: the border was set wrong.',
    'Calibrate the guide first.',
  ),
  'calibrate-printer-skew': entry(
    'The printer’s sheets are sheared.',
    'See how the paper feeds, measure another sheet.',
  ),
  'calibrate-proof-first': entry(
    'A proof was measured of a head without offsets.',
    'Calibrate it first, then print the proof.',
  ),
  'calibrate-reading-stands-out': entry(
    'A reading differs too much from the others to count.',
    'Measure it again, or cut it again.',
  ),
  'calibrate-reading-unusable': entry('A reading is no length that can be.', 'Measure it again.'),
  'calibrate-readings-few': entry('There are too few readings to tell a wrong one.', 'Measure more.'),
  'calibrate-readings-none': entry('There are no readings.', 'Measure, and write the readings down.'),
  'calibrate-scale-absurd': entry(
    'A line cannot have come out as long as it is said to.',
    'Check the unit, measure again.',
  ),
  'calibrate-scale-unusual': entry(
    'The printer is farther from true than printers set to 100 % are.',
    'Look for “fit to page” in the print dialogue.',
  ),
  'calibrate-thickness-missing': entry(
    'The guide follows the thickness, but the strips’ board has none.',
    'Give its thickness.',
  ),
  'calibrate-wrong-paper': entry(
    'Another paper is set than the one in the tray.',
    'Set the right paper and print again.',
  ),
  'coupon-fallout-absurd': entry('The fallout that was measured is none of this coupon.', 'Measure it again.'),
  'coupon-kerf-absurd': entry('The strips come to no kerf that a machine can have.', 'Measure them again.'),
  'coupon-machine-kind': entry(
    'The readings are of another kind of machine than the one that is named.',
    'Name the machine that cut the coupon.',
  ),
  'coupon-offset-absurd': entry(
    'The diagonals come to no offset that a knife can have.',
    'Measure the same squares again.',
  ),
  'coupon-reading-stands-out': entry('A reading differs too much from the others to count.', 'Measure it again.'),
  'coupon-reading-unusable': entry('Readings are missing or no lengths.', 'Measure with a caliper, several times.'),
  'coupon-scale-absurd': entry('Piece and hole mean a scale that no machine has.', 'Measure them again.'),
};
