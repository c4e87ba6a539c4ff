import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that files for machines can end with. */
export const CODES: Codes = {
  'bed-small': entry('A board does not fit on the machine’s bed.', 'Cut it on another machine, or correct the bed.'),
  'bevel-fixed': entry(
    'The machine’s bevel is another than the layer’s.',
    'Change the layer’s bevel, or the machine’s.',
  ),
  'bevel-no-stroke': entry('A line is none that the bevel head can follow.', 'Cut it by hand, or with a square cut.'),
  'bevel-outside': entry(
    'The outside is cut square, which a fixed bevel head cannot.',
    'Trim the board before, with `outside: false`.',
  ),
  'coupon-bed-small': entry('The coupon does not fit on the bed.', 'Correct the bed, or leave its notes out.'),
  'decor-by-hand': entry('Grooves, or ink lines, are not in the file.', 'Lay them out by the pattern.'),
  'gap-widened': entry('Blanks lie farther apart than the machine says, for tool and lead.', 'Nothing need be done.'),
  'layer-cut-already': entry('All openings of a layer are cut, so it has no file.', 'Nothing need be done.'),
  'kerf-too-wide': entry('An opening is nowhere as wide as the kerf.', 'Check the machine’s kerf.'),
  'knife-no-room': entry(
    'An opening is too small for the knife to come in from its waste.',
    'Give a smaller lead, or cut it by hand.',
  ),
  'lettering-by-hand': entry(
    'A bevel head that cannot stand upright leaves lettering out of its file.',
    'Cut it by the pattern, or on another machine.',
  ),
  'machine-board-thick': entry('A board is thicker than the machine cuts.', 'Take a thinner board or another machine.'),
  'machine-missing': entry('It is not said which machine the file is for.', 'Give `--machine`.'),
  'machine-plain': entry(
    'The shop describes no machine of this kind, so nothing is allowed for.',
    'Describe it in the shop’s file.',
  ),
  'machine-unknown': entry('There is no machine of that name.', 'Take one that the message names.'),
  'machine-which': entry('The shop has several machines of that kind.', 'Name one.'),
  'registration-no-waste': entry('Targets would lie on the board itself.', 'Leave them out, or cut the outside too.'),
  'sight-square': entry('Cut square, more or less is seen than with the job’s bevel.', 'See that it is wanted.'),
  'turn-together': entry(
    'Boards that lie together are turned where that takes less bed, not by wish.',
    'Leave `--turn` or `--together` out.',
  ),
  'tabs-no-room': entry('An opening has no room for its tabs.', 'Ask for fewer or narrower tabs.'),
};
