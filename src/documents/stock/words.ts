import { settingOf } from '../../bench/guide.ts';
import type { Size } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import { type Blank, type JobToCut, jobName } from '../../stock/blanks.ts';
import { layersBefore } from '../../stock/fallout.ts';
import type { LaidPiece, Layout } from '../../stock/layouts.ts';
import type { Cut, Part, TakeBoard } from '../../stock/planner/sequence.ts';
import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';

/** How a stop is read: to what, and in which unit. */
export interface Tape {
  readonly units: Units;
  readonly graduation: number;
  /** What the stop can be set to, mm; beyond that a cut is marked by rule. */
  readonly longestStop?: number;
  readonly shortestStop?: number;
}

/** A length as a stop is set to it. */
export interface Reading {
  /** Without its unit: `16 1/8`. */
  readonly text: string;
  readonly unit: Units;
  readonly sense: 'exact' | 'scant' | 'full';
  /** The true length in the same unit where the reading is not exact. */
  readonly decimal?: string;
}

function readingOf(mm: number, { units, graduation }: Tape): Reading {
  const { amount, sense } = settingOf(mm, graduation, units);
  return {
    text: amount,
    unit: units,
    sense,
    ...defined({ decimal: sense === 'exact' ? undefined : printDecimal(mm, units, units === 'mm' ? 2 : 3).text }),
  };
}

/** `16 × 20`, on the graduation. */
export const tapeAmounts = ({ width, height }: Size, tape: Tape): string =>
  `${readingOf(width, tape).text} × ${readingOf(height, tape).text}`;

/** `16 × 20 in`, on the graduation. */
export const tapeSize = (size: Size, tape: Tape): string => `${tapeAmounts(size, tape)} ${tape.units}`;

/** One stop, and the cuts that are made at it. */
export interface StopGroup {
  /** mm. */
  readonly stop: number;
  /** True where the stop cannot be set so: the cut is measured from the edge by a rule, and made to the mark. */
  readonly byRule: boolean;
  readonly reading: Reading;
  readonly rows: readonly CutRow[];
}

export interface CutRow {
  readonly cut: number;
  /** What is laid against the stop, and what the cut gives. */
  readonly lay: string;
  readonly gives: string;
}

/** The instructions of a sheet, a group for each setting of the stop. */
export function stopGroups(layout: Layout, jobs: readonly JobToCut[], tape: Tape): readonly StopGroup[] {
  const groups: { stop: number; byRule: boolean; reading: Reading; rows: CutRow[] }[] = [];
  let taken: TakeBoard | undefined;
  for (const step of layout.sequence.instructions) {
    switch (step.kind) {
      case 'set':
        groups.push({
          stop: step.stop,
          byRule: isByRule(step.stop, tape),
          reading: readingOf(step.stop, tape),
          rows: [],
        });
        break;
      case 'take':
        taken = step;
        break;
      case 'cut':
        groups.at(-1)!.rows.push({
          cut: step.cut,
          lay: taken === undefined ? `${step.board} again` : layWords(taken, tape, groups.at(-1)!.byRule),
          gives: givesWords(step, layout, jobs, tape),
        });
        taken = undefined;
        break;
      default: {
        const never: never = step;
        return never;
      }
    }
  }
  return groups;
}

/** Readings are rounded. */
const NOISE = 1e-6;

const isByRule = (stop: number, { longestStop = Infinity, shortestStop = 0 }: Tape): boolean =>
  stop > longestStop + NOISE || stop < shortestStop - NOISE;

/** `turn A, 16 × 40 in, left edge to the stop`. */
function layWords({ board, edge, turn, width, height }: TakeBoard, tape: Tape, byRule: boolean): string {
  const laid = byRule ? `mark off from the ${edge} edge` : `${edge} edge to the stop`;
  return `${turn ? 'turn ' : ''}${board}, ${tapeSize({ width, height }, tape)}, ${laid}`;
}

/** Both parts, but for the one that goes on under its name; `dust` is what a saw leaves nothing of. */
function givesWords({ board, first, second }: Cut, layout: Layout, jobs: readonly JobToCut[], tape: Tape): string {
  const parts = [first, second].filter((part) => part?.kind !== 'board' || part.board !== board);
  const [one, other] = parts.map((part) => (part === undefined ? 'dust' : partWords(part, layout, jobs, tape)));
  if (other === undefined) return one ?? '';
  return one === other ? `2 × ${one}` : `${one} and ${other}`;
}

/** A longer name stands beside its key in the list of what is on the sheet alone. */
const LONG = 40;

function partWords(part: Part, layout: Layout, jobs: readonly JobToCut[], tape: Tape): string {
  switch (part.kind) {
    case 'piece': {
      const laid = layout.pieces.find(({ piece }) => piece === part.piece)!;
      const name = blankName(laid, jobs);
      return `${laid.key} ${name.length > LONG ? laid.blank.name : name}`;
    }
    case 'board':
      return `board ${part.board}`;
    case 'trim':
      return 'trim';
    case 'offcut': {
      const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
      const kept = part.keep ? layout.offcuts.find(({ x, y }) => near(x, part.x) && near(y, part.y)) : undefined;
      return kept === undefined ? 'waste' : `offcut ${kept.marks.join(', ')}, ${tapeSize(part, tape)}`;
    }
    default: {
      const never: never = part;
      return never;
    }
  }
}

/** `Heron, linocut, top mat`. */
export const blankName = ({ blank }: Pick<LaidPiece, 'blank'>, jobs: readonly JobToCut[]): string =>
  `${jobName(jobs, blank.job)}, ${blank.name}`;

/** `Sheet 2`, `Sheets 2 to 4`. */
export function sheetsName({ numbers }: Pick<Layout, 'numbers'>): string {
  const [first] = numbers;
  return numbers.length === 1 ? `Sheet ${first}` : `Sheets ${first} to ${numbers.at(-1)}`;
}

/** Where the sheet comes from, and what is done before it is cut. */
export function originWords(layout: Layout, jobs: readonly JobToCut[], tape: Tape): string {
  const { from, numbers } = layout;
  const many = numbers.length === 1 ? '' : `; cut ${numbers.length} like this`;
  const size = tapeSize(layout, tape);
  switch (from.kind) {
    case 'sheet':
      return `a new sheet, ${size}${many}`;
    case 'offcut':
      return `offcut ${from.id} from the shelf, ${size}`;
    case 'fallout':
      return `what drops out of ${blankName(from, jobs)}, once ${freedBy(from.blank, jobs)}: trim it to ${size}, its bevels off${many}`;
    default: {
      const never: never = from;
      return never;
    }
  }
}

/** With mats cut together what drops out of the top mat lies under the blade until the last one is cut. */
function freedBy({ job, layer = 0 }: Blank, jobs: readonly JobToCut[]): string {
  const { mat, job: own } = jobs[job]!;
  const last = layersBefore(mat, own, layer).at(-1)!;
  return last === layer ? 'its opening is cut' : `the opening of ${mat.layers[last]!.name} is cut over it`;
}

/** `97.3 %`. */
export const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
