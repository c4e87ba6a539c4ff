import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that a shop's file can end with, or a name that it does not list. */
export const CODES: Codes = {
  'frame-size': entry('A frame has exactly one of `inside`, `nominal`, `ready`.', 'Keep one.'),
  'layer-unusable': entry('A layer has characters that not every file can hold.', 'Use letters, digits, hyphens.'),
  'machine-kind-missing': entry('A machine does not say what it cuts with.', 'Give kind: laser, knife or bevel.'),
  'machine-key-kind': entry('A key is for another kind of machine.', 'Take it out, or correct the kind.'),
  'machine-note-cut': entry(
    'Notes share a layer, a colour or a pen with what is cut.',
    'Give them their own, or leave them out.',
  ),
  'offsets-empty': entry('A list of offsets is empty.', 'Give one for each thickness, or take the key out.'),
  'offsets-twice': entry('Two offsets are for the same thickness.', 'Keep one.'),
  'board-unknown': entry('The shop’s file lists no such board.', 'Take one that the message names.'),
  'head-unknown': entry('The shop’s file lists no such head.', 'Take one that the message names.'),
  'head-name': entry('A head is called `none`, which names no head.', 'Give it another name.'),
  'printer-name': entry('A printer is called `none`, which names no printer.', 'Give it another name.'),
  'printer-unknown': entry('The shop’s file lists no such printer.', 'Take one that the message names.'),
  'moulding-unknown': entry('The shop’s file lists no such moulding.', 'Take one that the message names.'),
  'frame-unknown': entry('The shop’s file lists no such frame.', 'Take one that the message names.'),
  'glazing-unknown': entry('The shop’s file lists no such glazing.', 'Take one that the message names.'),
  'backing-unknown': entry('The shop’s file lists no such backing.', 'Take one that the message names.'),
  'shelf-id-twice': entry('Two offcuts on the shelf have the same mark.', 'Write another one on one of them.'),
  'readings-none': entry('A list of readings is empty.', 'Measure, and write the readings down.'),
  'readings-diagonal': entry('One diagonal of a sheet is given without the other.', 'Measure both, or leave both out.'),
  'address-lines': entry('An address has more than 6 lines.', 'Put several things on a line.'),
  'price-one': entry('A price is given in two ways.', 'Keep one.'),
  'price-per': entry('A price is for something that it cannot be for here.', 'Take what the message names.'),
  'shop-not-editable': entry(
    'A part of the shop’s file is written so that it cannot be changed in place.',
    'Write it out, one key a line, without anchors.',
  ),
};
