import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that planning stock and booking a plan can end with. */
export const CODES: Codes = {
  'booking-gone-on': entry(
    'Something has become of what a plan put onto the shelf, so it cannot be taken back.',
    'Take back what was booked after it first.',
  ),
  'booking-mark-taken': entry('Another offcut has got a plan’s mark since.', 'Write the mark that the message names.'),
  'booking-offcut-gone': entry(
    'A plan cuts up an offcut that is not on the shelf.',
    'Put the list right, then book it.',
  ),
  'booking-sheet-gone': entry('A plan takes sheets that the shop does not list.', 'List them, then book it.'),
  'booking-sheets-few': entry('A plan takes more sheets than are counted.', 'Put the count right, then book it.'),
  'plan-booked': entry('A plan is booked already.', 'Take that back first if it was not cut.'),
  'plan-not-booked': entry('There is no booking to take back.', 'See the numbers of the plans that are booked.'),
  'plans-unreadable': entry(
    'The journal of plans beside the shop’s file is damaged.',
    'Put it right, or take it away.',
  ),
  'plan-unknown': entry(
    'There is no plan of that number beside the shop’s file.',
    'Look at the number, and at the shop.',
  ),
  'stock-choice': entry('A wish is none of those that are known.', 'Take one that the message names.'),
  'stock-cost-missing': entry('Some sheets have a price and others have none.', 'Give every sheet a price, or none.'),
  'stock-cut-too-long': entry('A blank cannot be cut within the longest cut.', 'Cut it elsewhere, or raise the limit.'),
  'stock-edges-trimmed': entry(
    'A blank needs a factory edge, but no edge of a sheet is left untrimmed.',
    'Trim one side less, or do without.',
  ),
  'stock-fallout-too-large': entry(
    'A fallout is not smaller than its piece.',
    'Give the rectangle inside the opening.',
  ),
  'stock-flag': entry('A switch is neither true nor false.', 'Write true or false.'),
  'stock-id': entry('A sheet or a piece has no usable id.', 'Give it a text that is not empty.'),
  'stock-id-twice': entry('Two sheets, or two pieces, have the same id.', 'Rename one, or raise the other’s count.'),
  'stock-key-unknown': entry('There is no such key here.', 'Take the nearest known one, which the message names.'),
  'stock-label': entry('A label is no text.', 'Put it in quotes.'),
  'stock-nothing': entry('Every blank of the jobs is cut already.', 'Take `asCut` out of a job to plan it anew.'),
  'stock-number': entry('A number is missing or outside of what is allowed.', 'See the range that the message names.'),
  'stock-pieces-missing': entry('There are no pieces to cut.', 'List at least one.'),
  'stock-pieces-too-many': entry('There are more pieces than are planned at once.', 'Plan them in parts.'),
  'stock-piece-too-large': entry(
    'A blank is larger than every sheet.',
    'See the largest that fits, which the message names.',
  ),
  'stock-piece-turned': entry('A blank fits only turned, but may not turn.', 'Let it turn, or get a larger sheet.'),
  'stock-price-missing': entry('The cost is asked for, but a sheet has no price.', 'Price it, or do not ask.'),
  'stock-shape': entry('Something else stands where an object is needed.', 'Give the keys that the message names.'),
  'stock-sheets-assumed': entry(
    'Nothing says what sheets of a board there are; the usual one is taken.',
    'List its sheets in the shop’s file.',
  ),
  'stock-sheets-missing': entry('There are no sheets to cut from.', 'List at least one with a count above 0.'),
  'stock-stopped': entry('Planning was stopped before there was a plan.', 'Ask again.'),
  'stock-too-small': entry('There is not enough stock for all pieces.', 'See what is missing in the message.'),
  'stock-trim-too-wide': entry('Trimming leaves nothing of a sheet.', 'Trim less.'),
};
