import { warning } from '../../problems/problem.ts';
import type { GroupList } from '../full-scale/groups.ts';
import type { Missing } from '../full-scale/words-on-sheets.ts';

export const GROUPS: GroupList = [
  ['board', "Board's edge, tabs and trim line"],
  ['cut', 'Lines to cut'],
  ['curves', 'Axes, centres and pins of curves'],
  ['decor', 'Grooves and ink lines of the face'],
  ['face', 'Face edges'],
  ['leaders', 'Leaders from words to lines'],
  ['marks', 'Start and stop marks'],
  ['strokes', 'Stroke arrows and numbers'],
  ['readings', 'Guide readings'],
  ['straightedge', 'Straightedge and bar lines'],
  ['check', 'Crosses to check with a tape'],
  ['centre', 'Centres of the edges'],
  ['hinge', 'Hinge edge'],
  ['notes', 'BACK, TOP, job, head'],
];

/** Settings, the job and how the board lies. */
const ON_FIRST = 'it stands on sheet 1 and in the check command instead';

/** What found no room, in one warning where it is much. */
export const noRoom =
  (name: string): Missing =>
  (on, { unplaced, short }) => {
    const where = on === '' ? name : `the ${on} of ${name}`;
    const hints = [...new Set(unplaced.map(({ instead = ON_FIRST }) => instead))];
    const told = hints.flatMap((hint) => {
      const names = unplaced.filter(({ instead = ON_FIRST }) => instead === hint).map(({ what }) => what);
      const said = names.length > 6 ? [`${names.length} words, among them ${names.slice(0, 3).join(', ')}`] : names;
      return said.map((what) => warning('label-without-room', ['mat'], `no room on ${where} for: ${what}`, hint));
    });
    const numbers =
      short === 0
        ? []
        : [
            warning(
              'label-number-alone',
              ['mat'],
              `${short} sides on ${where} show their number alone`,
              'their settings stand by these numbers on the ticket and in the check command',
            ),
          ];
    return [...told, ...numbers];
  };
