import type { LotWork } from '../../bench/work/lots.ts';

export interface Blades {
  readonly head: string;
  readonly strokes: number;
  readonly perBlade: number;
  readonly blades: number;
}

/** The blades of a day, head by head: every pass of every stroke of every piece, at what the shop says that one lasts. */
export function bladesOf(works: readonly LotWork[]): readonly Blades[] {
  const found = new Map<string, Omit<Blades, 'blades' | 'head'>>();
  for (const { lot, strokes, source } of works) {
    const { id, strokesPerBlade } = source.job.bench.head;
    const own = strokes.filter(({ cut }) => cut !== true).length * lot.count * lot.depths.length;
    const before = found.get(id)?.strokes ?? 0;
    found.set(id, { strokes: before + own, perBlade: strokesPerBlade });
  }
  return [...found].map(([head, each]) => ({ head, ...each, blades: Math.ceil(each.strokes / each.perBlade) }));
}
