import { defined } from '../../problems/defined.ts';
import { scaleUnits, settingOf } from '../guide.ts';
import type { Setting, Stroke } from '../model.ts';
import { GUIDE_OFF, settingNumbers } from '../settings.ts';
import type { LotWork } from './lots.ts';
import { roundsOf } from './rounds.ts';

/** One setting of the guide, and what is cut at it, lot by lot. */
export interface WorkVisit {
  readonly key: string;
  /** Undefined where the guide is off, and where nothing is cut by it. */
  readonly setting?: Setting;
  readonly cuts: readonly { readonly lot: number; readonly strokes: readonly Stroke[] }[];
}

const sameReading = (a: Setting, b: Setting): boolean => a.text === b.text && a.sense === b.sense;

/**
 * One job by itself, as its strokes are numbered: a board is finished before the next is taken up, with the fewest
 * changes of the guide and then the fewest turns of the board. Together the layers follow from the top mat down, also
 * those that have no stroke.
 */
export function ownVisits(lots: readonly LotWork[]): readonly WorkVisit[] {
  const first = ({ lot, strokes, source }: LotWork): number =>
    source.job.bench.stack === 'together' ? lot.layer : (strokes[0]?.order ?? Number.POSITIVE_INFINITY);
  const kinds = { groove: 0, opening: 1 } as const;
  const sequence = lots
    .map((work, index) => ({ work, index }))
    .sort(
      (a, b) =>
        kinds[a.work.lot.work] - kinds[b.work.lot.work] || compare(first(a.work), first(b.work)) || a.index - b.index,
    );
  return sequence.flatMap(({ work, index }) => visitsOf(work, index));
}

const compare = (a: number, b: number): number => (a === b ? 0 : a - b);

function visitsOf(work: LotWork, lot: number): readonly WorkVisit[] {
  const { key, strokes } = work;
  if (strokes.length === 0) return [{ key, cuts: [{ lot, strokes: [] }] }];
  const visits: { key: string; setting?: Setting; cuts: [{ lot: number; strokes: Stroke[] }] }[] = [];
  for (const stroke of strokes) {
    const setting = stroke.beyondGuide ? undefined : stroke.setting;
    const last = visits.at(-1);
    const same =
      last !== undefined &&
      (setting === undefined || last.setting === undefined
        ? setting === last.setting
        : sameReading(setting, last.setting));
    if (same) last.cuts[0].strokes.push(stroke);
    else visits.push({ key, ...defined({ setting }), cuts: [{ lot, strokes: [stroke] }] });
  }
  return visits;
}

/**
 * Several jobs as one: per head, board and thickness each setting once, settings rising, pieces in the order of the
 * jobs. Boards for the guide come before thick ones, and hand-held heads last, where nothing else decides.
 */
export function dayVisits(lots: readonly LotWork[]): readonly WorkVisit[] {
  const rank = ({ lot }: LotWork): number => (lot.head.handHeld ? 2 : lot.depths.length > 1 ? 1 : 0);
  const keys = [...new Set([...lots].sort((a, b) => rank(a) - rank(b)).map(({ key }) => key))];
  const boards = keys.map((key) => boardSettings(lots, key));
  const demands = lots.map((work, i) => {
    const group = keys.indexOf(work.key);
    const numbers = work.strokes.map((stroke) => boards[group]!.numberOf(i, stroke));
    return { group, settings: [...new Set(numbers)].sort((a, b) => a - b), after: work.lot.after };
  });
  const reads = (group: number, number: number): string | undefined => boards[group]!.reads(number);
  return roundsOf(demands, reads).map(({ group, setting, demands: met }): WorkVisit => {
    const board = boards[group]!;
    return {
      key: keys[group]!,
      ...(setting === undefined ? {} : defined({ setting: board.setting(setting) })),
      cuts: met.map((lot) => ({
        lot,
        strokes: lots[lot]!.strokes.filter((stroke) => board.numberOf(lot, stroke) === setting),
      })),
    };
  });
}

/** The settings of one board over all of its lots, numbered as they rise; the guide off comes last. */
function boardSettings(lots: readonly LotWork[], key: string) {
  const all = lots.flatMap((work, lot) =>
    work.key === key ? work.strokes.map((stroke) => ({ work, lot, stroke })) : [],
  );
  const numbered = settingNumbers(all.map(({ stroke }) => stroke));
  const off = Math.max(GUIDE_OFF, ...numbered) + 1;
  const numbers = new Map(
    all.map(({ lot, stroke }, i) => [`${lot} ${stroke.order}`, numbered[i] === GUIDE_OFF ? off : numbered[i]!]),
  );
  const numberOf = (lot: number, stroke: Stroke): number => numbers.get(`${lot} ${stroke.order}`)!;
  const own = all[0]?.work;
  const known = new Map<number, Setting>();
  const setting = (number: number): Setting | undefined => {
    const before = known.get(number);
    if (before !== undefined) return before;
    if (number === off || own === undefined) return undefined;
    const guides = all.flatMap(({ lot, stroke }) => (numberOf(lot, stroke) === number ? [stroke.guide] : []));
    const { graduation } = own.source.job.bench;
    const middle = (Math.min(...guides) + Math.max(...guides)) / 2;
    const found = settingOf(middle, graduation, scaleUnits(graduation, own.source.job.units));
    known.set(number, found);
    return found;
  };
  const reads = (number: number): string | undefined => {
    const read = setting(number);
    if (read !== undefined) return `${read.text} ${read.sense}`;
    return number === off && own?.lot.head.handHeld === false ? 'off' : undefined;
  };
  return { numberOf, setting, reads };
}
