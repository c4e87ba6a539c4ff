import type { Counts, Trail, Trails } from './trail.ts';
import { members, type Turns } from './turning.ts';

/** All strokes of one layer at one setting of the guide. */
export interface Batch {
  /** Number of the setting within the job. */
  readonly setting: number;
  /** Facings in which it has strokes, as a bit mask. */
  readonly mask: number;
  /** Strokes at TOP up, which is facing 0. */
  readonly up: number;
}

/** One setting and one facing: its strokes follow each other without any change. */
export interface Cell {
  readonly setting: number;
  readonly facing: number;
}

/** One way through a layer: first fewest turns, then most strokes before the board is turned for the first time. */
export interface Pass {
  readonly turns: number;
  readonly up: number;
  /** From the setting that is to come first to the one that is to come last, which are of the kinds searched for. */
  readonly cells: (first: Batch, last: Batch) => readonly Cell[];
}

const UP = 0;
/** A setting in more facings than this is not shared out: the ways to do so double with each. */
const MOST_SHARED_OUT = 6;

const better = (a: { turns: number; up: number }, b: Pass | undefined): boolean =>
  b === undefined || a.turns < b.turns - 1e-9 || (a.turns <= b.turns + 1e-9 && a.up > b.up);

/** Batches of one kind can stand for each other. */
export const kindOf = (batch: Batch): string => `${batch.mask}/${batch.up}`;

function countMasks(batches: readonly Batch[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { mask } of [...batches].sort((a, b) => a.mask - b.mask)) counts.set(mask, (counts.get(mask) ?? 0) + 1);
  return counts;
}

function without(counts: Counts, mask: number, all = false): Counts {
  const left = new Map(counts);
  const count = left.get(mask) ?? 0;
  if (all || count <= 1) left.delete(mask);
  else left.set(mask, count - 1);
  return left;
}

/** Shortest passes through one layer, each setting once (or one of them at both ends). */
export class Passes {
  readonly batches: readonly Batch[];
  private readonly turns: Turns;
  private readonly trails: Trails;
  private readonly known = new Map<string, Pass | undefined>();

  constructor(batches: readonly Batch[], trails: Trails) {
    this.batches = batches;
    this.turns = trails.turns;
    this.trails = trails;
  }

  /** Once through all batches, from the first to the last given; the same batch twice only where it is the only one. */
  through(first: Batch, last: Batch): Pass | undefined {
    const key = first === last ? 'alone' : `${kindOf(first)} ${kindOf(last)}`;
    if (!this.known.has(key)) {
      const alone = this.batches.length === 1 ? this.pass(first, first.mask, undefined, 0) : undefined;
      this.known.set(key, first === last ? alone : this.pass(first, first.mask, last, last.mask));
    }
    return this.known.get(key);
  }

  /** As `through`, but with `batch` shared out between the beginning and the end. */
  around(batch: Batch): Pass | undefined {
    const key = `around ${kindOf(batch)}`;
    if (!this.known.has(key)) {
      let best: Pass | undefined;
      const whole = members(batch.mask).length > MOST_SHARED_OUT;
      for (let part = whole ? 0 : (batch.mask - 1) & batch.mask; part > 0; part = (part - 1) & batch.mask) {
        const pass = this.pass(batch, part, batch, batch.mask & ~part);
        if (better(pass, best)) best = pass;
      }
      this.known.set(key, best);
    }
    return this.known.get(key);
  }

  private pass(first: Batch, firstMask: number, last: Batch | undefined, lastMask: number): Pass {
    const middle = this.batches.filter((batch) => batch !== first && batch !== last);
    const counts = countMasks(middle);
    let best: Pass | undefined;
    const offer = (
      turns: number,
      up: number,
      start: readonly number[],
      visits: Trail['visits'],
      end: readonly number[],
    ) => {
      if (!better({ turns, up }, best)) return;
      const cells: Pass['cells'] = (one, other) => {
        const between = this.batches.filter((batch) => batch !== one && (last === undefined || batch !== other));
        return [
          ...start.map((facing) => ({ setting: one.setting, facing })),
          ...named(visits, between),
          ...end.map((facing) => ({ setting: other.setting, facing })),
        ];
      };
      best = { turns, up, cells };
    };
    for (const from of members(firstMask)) {
      for (const to of members(firstMask)) {
        const tour = this.turns.tour(firstMask, from, to);
        if (tour === undefined) continue;
        const turns = this.turns.between(UP, from) + tour.turns;
        const up = from === UP ? first.up : 0;
        const stillUp = from === UP && to === UP;
        for (const start of stillUp
          ? this.whileUp(middle, counts)
          : [{ turns: 0, up: 0, visits: [], counts, at: to }]) {
          for (const end of this.ends(start.counts, start.at, lastMask)) {
            // Where nothing else is left, the last setting may begin before the board is turned.
            const more = stillUp && start.at === UP && start.counts.size === 0 && end.path[0] === UP ? last!.up : 0;
            const total = turns + start.turns + end.turns;
            offer(total, up + start.up + more, tour.path, [...start.visits, ...end.visits], end.path);
          }
        }
      }
    }
    return best!;
  }

  /** Ways on while the board lies TOP up: what is cut there first, with the strokes up to the first turn. */
  private whileUp(middle: readonly Batch[], counts: Counts): readonly Start[] {
    const here = middle.filter((batch) => batch.mask === 1 << UP);
    const visits = here.map(({ mask }) => ({ mask, path: [UP] }));
    const up = here.reduce((sum, batch) => sum + batch.up, 0);
    const left = without(counts, 1 << UP, true);
    const starts: Start[] = [{ turns: 0, up, visits, counts: left, at: UP }];
    for (const mask of left.keys()) {
      const most = Math.max(...middle.filter((batch) => batch.mask === mask).map((batch) => batch.up));
      for (const to of members(mask)) {
        const tour = (mask & (1 << UP)) === 0 ? undefined : this.turns.tour(mask, UP, to);
        if (tour === undefined) continue;
        const visit = { mask, path: tour.path };
        starts.push({
          turns: tour.turns,
          up: up + most,
          visits: [...visits, visit],
          counts: without(left, mask),
          at: to,
        });
      }
    }
    return starts;
  }

  /** Trails through what is left, each followed by one way through the last batch, if there is one. */
  private *ends(counts: Counts, at: number, lastMask: number): Generator<Trail & { readonly path: readonly number[] }> {
    if (lastMask === 0) yield { turns: 0, visits: [], path: [] };
    for (const from of members(lastMask)) {
      for (const to of members(lastMask)) {
        const tour = this.turns.tour(lastMask, from, to);
        if (tour === undefined) continue;
        const trail = this.trails.shortest(counts, at, from);
        yield { turns: trail.turns + tour.turns, visits: trail.visits, path: tour.path };
      }
    }
  }
}

interface Start {
  readonly turns: number;
  readonly up: number;
  readonly visits: Trail['visits'];
  readonly counts: Counts;
  readonly at: number;
}

/** Names a batch for every visit: the first that leaves TOP up is the one with most strokes there, the rest in order. */
function named(visits: Trail['visits'], batches: readonly Batch[]): readonly Cell[] {
  const waiting = new Map<number, Batch[]>();
  for (const batch of batches) waiting.set(batch.mask, [...(waiting.get(batch.mask) ?? []), batch]);
  let turned = false;
  return visits.flatMap(({ mask, path }) => {
    const here = waiting.get(mask)!;
    const most = Math.max(...here.map((batch) => batch.up));
    const index = !turned && path[0] === UP ? here.findIndex((batch) => batch.up === most) : 0;
    const [batch] = here.splice(index, 1);
    turned ||= path.some((facing) => facing !== UP);
    return path.map((facing) => ({ setting: batch!.setting, facing }));
  });
}
