import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import { error, type Problem } from '../problems/problem.ts';
import { check, converted, described, line, needed, oneOf, record, whole, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';
import { BEVEL, bevelAngle } from './bevel-angle.ts';

/** How no head is named, where the shop has one: marks and bevel are those of an unknown one, and no head may be called so. */
export const NO_HEAD = 'none';

/** A side of the travel, seen from behind. */
export type Hand = 'left' | 'right';

export const otherHand = (hand: Hand): Hand => (hand === 'left' ? 'right' : 'left');

/** A cutting head and what was found out by calibrating it. Lengths are mm. */
export interface Head {
  readonly id: string;
  readonly bevel: number;
  /** The hand of the travel on which the opening lies, as seen from the back. */
  readonly opening: Hand;
  /** Straightedge to the blade's entry line; 0 where the head needs none. */
  readonly straightedge: number;
  readonly straightedgeOn: 'border' | 'opening';
  /** True where it has a holding pin: its tip keeps the head still while the blade goes in. */
  readonly pin: boolean;
  /** So many strokes of an opening's side one edge of a blade is good for. */
  readonly strokesPerBlade: number;
  /** Where on the head the scribe is read, in the shop's words. */
  readonly scribe?: string;
  /** How far ahead of the scribe the blade reaches the face when pushed in (`e_start`). */
  readonly start: readonly OffsetAt[];
  /** How far ahead of the scribe the face cut ends (`e_stop`). */
  readonly stop: readonly OffsetAt[];
  /** How far the ends of its cuts stray: the standard deviation of one of them, from its calibration. */
  readonly spread?: number;
  /** The overrun wished at both ends. */
  readonly overrun: number;
  /** False until offsets were given: the pattern then says so. */
  readonly calibrated: boolean;
  /** Bar to blade, for sides that the guide cannot reach. */
  readonly bar?: number;
  /** Blade, depth and day of the calibration, in the shop's words. */
  readonly blade?: string;
  readonly depth?: string;
  readonly date?: string;
}

/** A head that runs along a straightedge knows no guide. */
export const handHeld = ({ straightedge }: Pick<Head, 'straightedge'>): boolean => straightedge > 0;

/** `thickness` is undefined where one offset serves for all. */
export interface OffsetAt {
  readonly thickness?: number;
  readonly offset: number;
}

/** The wished overrun of a head that was never calibrated (common practice, no source). */
const OVERRUN = 0.25;

/** Twice the spread of a head that was calibrated: few ends then hang on to the board (common practice, no source). */
const usualOverrun = (spread: number | undefined): number =>
  spread === undefined ? OVERRUN : Math.max(0.01, 2 * spread);

/** Sixteen openings of four sides, on 4-ply board (common practice, no source): settable, since blades and boards differ. */
const STROKES_PER_BLADE = 64;

/** A pull head whose border lies under a bar at the left, without offsets: what is uncalibrated has none. */
export const HEAD: Head = {
  id: 'default',
  bevel: BEVEL,
  opening: 'left',
  straightedge: 0,
  straightedgeOn: 'border',
  pin: false,
  strokesPerBlade: STROKES_PER_BLADE,
  start: [{ offset: 0 }],
  stop: [{ offset: 0 }],
  overrun: OVERRUN,
  calibrated: false,
};

/** A head that leads or lags by more was measured wrong, mm. */
const FARTHEST = 50;

export function headSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const reach = { least: 0, most: 500 };
  const hand = 'The hand of the travel on which the opening lies, seen from the back';
  const straightedge = 'Straightedge to the line where the blade enters; 0 where the head needs none';
  const head = record(
    {
      bevel: z.optional(bevelAngle()),
      opening: z.optional(oneOf(hand, ['left', 'right'])),
      straightedge: z.optional(length(straightedge, ['1 3/8'], reach)),
      straightedgeOn: z.optional(oneOf('The side of the line on which the straightedge lies', ['border', 'opening'])),
      bar: z.optional(length('Bar to blade, for sides that the guide cannot reach', ['1 1/2'], reach)),
      pin: z.optional(yesNo('Whether it has a holding pin that keeps it still while the blade goes in')),
      strokesPerBlade: z.optional(whole('Strokes that one blade is good for', [64], 1, 10_000)),
      scribe: z.optional(line('Where on the head the scribe is read', ['the notch at its front'])),
      ...endFields(
        unit,
        'How far ahead of the scribe the blade reaches the face when it is pushed in',
        'How far ahead of the scribe the cut in the face ends',
      ),
      blade: z.optional(line('The blade that it was calibrated with', ['0.3 mm, fresh'])),
      depth: z.optional(line('The depth that it was calibrated at', ['just scratches the slip sheet'])),
      date: z.optional(line('The day that it was calibrated', ['2024-03-01'])),
    },
    'a map: bevel, opening, straightedge, start, stop, overrun …',
  );
  return described(head, 'A cutting head');
}

/** What is known of the ends of its cuts, of a head at the bench or of one that a machine carries. */
export function endFields(unit: LengthUnit, start: string, stop: string) {
  const { length } = lengthFields(unit);
  const few = { least: 0, most: 10 };
  return {
    start: z.optional(offsets(unit, start)),
    stop: z.optional(offsets(unit, stop)),
    spread: z.optional(length('How far one end of its cuts strays, from its calibration', ['0.12 mm'], few)),
    overrun: z.optional(length('Wished overrun at both ends; twice the spread without it', ['0.25 mm'], few)),
  };
}

/** The same with every default filled in. */
export const endsFrom = ({
  start,
  stop,
  spread,
  overrun,
}: { readonly [K in 'start' | 'stop']?: readonly OffsetAt[] | undefined } & {
  readonly [K in 'spread' | 'overrun']?: number | undefined;
}): Pick<Head, 'start' | 'stop' | 'overrun' | 'calibrated'> => ({
  start: start ?? HEAD.start,
  stop: stop ?? HEAD.stop,
  overrun: overrun ?? usualOverrun(spread),
  calibrated: start !== undefined && stop !== undefined,
});

/** One length for every board, or one for each thickness. */
function offsets(unit: LengthUnit, about: string) {
  const { length } = lengthFields(unit);
  const expected = 'a length, or a list of {thickness, offset}';
  const offset = length('The offset', ['1.2 mm'], { least: -FARTHEST, most: FARTHEST });
  const one = converted(offset, (mm): readonly OffsetAt[] => [{ offset: mm }]);
  const shape = {
    thickness: needed(length('Thickness of the board', ['1.4 mm'], { least: 0.1, most: 25 })),
    offset: needed(offset),
  };
  const list = z.pipe(
    z.array(described(record(shape, 'a map: thickness, offset'), 'An offset'), expected).check(check(alike)),
    z.transform((given): readonly OffsetAt[] => given),
  );
  return described(z.union([one, list], expected), about, ['1.2 mm', [{ thickness: '1.4 mm', offset: '1.2 mm' }]]);
}

function alike(given: readonly { readonly thickness: number }[]) {
  const hint = 'give one offset for each thickness';
  if (given.length === 0) return { code: 'offsets-empty', message: 'the list of offsets is empty', hint };
  if (new Set(given.map(({ thickness }) => thickness)).size === given.length) return undefined;
  return { code: 'offsets-twice', message: 'a thickness stands twice in the list', hint };
}

export function headFrom(id: string, given: z.output<ReturnType<typeof headSchema>>, problems: Problem[]): Head {
  if (id === NO_HEAD) {
    const message = `no head may be called ${NO_HEAD}: that name says that none of the shop's heads cuts`;
    problems.push(error('head-name', ['heads', id], message, 'give it another name'));
  }
  return {
    id,
    bevel: given.bevel ?? HEAD.bevel,
    opening: given.opening ?? HEAD.opening,
    straightedge: given.straightedge ?? HEAD.straightedge,
    straightedgeOn: given.straightedgeOn ?? HEAD.straightedgeOn,
    pin: given.pin ?? HEAD.pin,
    strokesPerBlade: given.strokesPerBlade ?? HEAD.strokesPerBlade,
    ...endsFrom(given),
    ...defined({
      spread: given.spread,
      scribe: given.scribe,
      bar: given.bar,
      blade: given.blade,
      depth: given.depth,
      date: given.date,
    }),
  };
}
