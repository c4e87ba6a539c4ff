import type { Drawing } from '../../drawing/model.ts';
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
  ['centre', 'Centres of the edges'],
  ['hinge', 'Hinge edge'],
  ['notes', 'BACK, TOP, job, head'],
];

/** What found no room, in one warning where it is much. */
export const noRoom =
  (name: string): Missing =>
  (on, { unplaced, short }) => {
    const where = on === '' ? name : `the ${on} of ${name}`;
    const hint = 'it stands on sheet 1 and in the check command instead';
    const told =
      unplaced.length > 6 ? [`${unplaced.length} words, among them ${unplaced.slice(0, 3).join(', ')}`] : unplaced;
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
    return [
      ...told.map((what) => warning('label-without-room', ['mat'], `no room on ${where} for: ${what}`, hint)),
      ...numbers,
    ];
  };

export const usesPen = (pen: string, { groups }: Drawing): boolean =>
  groups.some(({ items }) => items.some((item) => (item.kind === 'line' || item.kind === 'path') && item.pen === pen));
