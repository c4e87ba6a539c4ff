import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that planning stock can end with. */
export const CODES: Codes = {
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
  'stock-too-small': entry('There is not enough stock for all pieces.', 'See what is missing in the message.'),
  'stock-trim-too-wide': entry('Trimming leaves nothing of a sheet.', 'Trim less.'),
};
