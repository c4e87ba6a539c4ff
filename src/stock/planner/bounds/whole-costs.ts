import type { Instance } from '../instance.ts';

/** With more ways to add sheets up than these the bound stays as it is. */
const MOST_WAYS = 100_000;
/** Sums of prices are doubles. */
const NOISE = 1e-9;

/** The least sum of whole sheets' costs that is no less than `least`: what a plan costs is such a sum. Where nothing is known yet, nothing is. */
export function costOfWhole({ stocks }: Instance, least: number): number {
  const counted = stocks.filter((stock) => !stock.free);
  if (!Number.isFinite(least) || counted.length === 0 || counted.some(({ cost }) => cost <= 0)) return least;
  const limits = counted.map(({ cost, limit }) => Math.min(limit, Math.ceil(least / cost)));
  // The last kind makes up what is missing.
  const ways = limits.slice(0, -1).reduce((product, limit) => product * (limit + 1), 1);
  if (ways > MOST_WAYS) return least;
  const low = least - NOISE * Math.max(1, least);
  let best = Infinity;
  const add = (kind: number, sum: number): void => {
    const { cost } = counted[kind]!;
    if (kind === counted.length - 1) {
      const count = Math.max(0, Math.ceil((low - sum) / cost));
      if (count <= counted[kind]!.limit) best = Math.min(best, sum + count * cost);
      return;
    }
    for (let count = 0; count <= limits[kind]!; count++) add(kind + 1, sum + count * cost);
  };
  add(0, 0);
  return best;
}
