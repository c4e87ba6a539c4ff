import type { Demand } from '../../src/bench/work/rounds.ts';

/** How often boards are taken up in rounds, and how often the guide is set. */
export type Score = readonly [rounds: number, settings: number];
const less = (a: Score, b: Score): boolean => a[0] < b[0] || (a[0] === b[0] && a[1] < b[1]);

/** What the guide reads for a setting of a board. */
export type Reads = (group: number, setting: number) => string;

export interface Tally {
  readonly score: Score;
  readonly group?: number;
  readonly setting?: number;
  readonly read?: string;
}

/** One stroke more: another board, or a setting below the last one, is another round. */
export function add(
  { score: [rounds, settings], ...last }: Tally,
  group: number,
  setting: number,
  reads: Reads,
): Tally {
  const anew = last.group !== group || last.setting === undefined || setting < last.setting;
  const read = reads(group, setting);
  return { score: [rounds + (anew ? 1 : 0), settings + (read === last.read ? 0 : 1)], group, setting, read };
}

/** The best of every sequence of single strokes that there is, each cut off where it already costs as much. */
export function fewest(demands: readonly Demand[], reads: Reads): Score {
  let best: Score | undefined;
  const left = demands.map(({ settings }) => new Set(settings));
  const walk = (tally: Tally): void => {
    if (best !== undefined && !less(tally.score, best)) return;
    if (left.every(({ size }) => size === 0)) {
      best = tally.score;
      return;
    }
    demands.forEach(({ group, after }, i) => {
      if (after.some((other) => left[other]!.size > 0)) return;
      for (const setting of [...left[i]!]) {
        left[i]!.delete(setting);
        walk(add(tally, group, setting, reads));
        left[i]!.add(setting);
      }
    });
  };
  walk({ score: [0, 0] });
  return best!;
}
