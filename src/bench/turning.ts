import type { Point } from '../geometry/point.ts';

/**
 * How far, clockwise to the eye and in quarter turns from 0 up to 4, a board that lies TOP up with its back to the eye is
 * turned so that the travel runs towards the person, as the head does; to the millionth, so that parallel sides agree.
 */
export function facing(direction: Point): number {
  const quarters = Math.atan2(direction.x, direction.y) / (Math.PI / 2);
  return ((Math.round(quarters * 1e6) + 4e6) % 4e6) / 1e6;
}

/** The shorter way from one facing to another, quarter turns clockwise, over −2 up to 2. */
export function turnBetween(from: number, to: number): number {
  const turn = (((to - from) % 4) + 4) % 4;
  return turn > 2 ? turn - 4 : turn;
}

/** The shortest way through all facings of a set. */
export interface Tour {
  readonly turns: number;
  /** Indices of facings. */
  readonly path: readonly number[];
}

/** Shortest ways round among a layer's facings; a set of facings is a bit mask over their indices. */
export interface Turns {
  readonly between: (from: number, to: number) => number;
  /** Through every facing of `mask`, from the first to the last given; undefined where that is no way through. */
  readonly tour: (mask: number, from: number, to: number) => Tour | undefined;
  readonly count: number;
}

/** A bit mask holds no more; a layer with sides in more directions is ordered by its directions to the nearest 15°. */
export const MOST_FACINGS = 30;

export function members(mask: number): number[] {
  const list: number[] = [];
  for (let i = 0; 1 << i <= mask && i <= MOST_FACINGS; i++) if ((mask & (1 << i)) !== 0) list.push(i);
  return list;
}

export function turnsAmong(facings: readonly number[]): Turns {
  const table = facings.map((a) => facings.map((b) => Math.abs(turnBetween(a, b))));
  const between = (from: number, to: number): number => table[from]![to]!;
  const known = new Map<string, Tour | undefined>();

  /**
   * A shortest way on a circle that need not go all round leaves one gap between neighbours uncrossed. With the circle
   * opened there it is a way on a line: from its start to one end, then to the other end, then back to where it stops.
   */
  const search = (mask: number, from: number, to: number): Tour | undefined => {
    if ((mask & (1 << from)) === 0 || (mask & (1 << to)) === 0) return undefined;
    if (from === to) return mask === 1 << from ? { turns: 0, path: [from] } : undefined;
    const round = members(mask).sort((a, b) => facings[a]! - facings[b]!);
    let best: Tour | undefined;
    for (let gap = 0; gap < round.length; gap++) {
      const line = [...round.slice(gap), ...round.slice(0, gap)];
      for (const way of [line, [...line].reverse()]) {
        const at = way.indexOf(from);
        const path = [...way.slice(0, at + 1).reverse(), ...way.slice(at + 1)].filter((i) => i !== to);
        path.push(to);
        const turns = path.slice(1).reduce((sum, next, i) => sum + between(path[i]!, next), 0);
        if (best === undefined || turns < best.turns - 1e-9) best = { turns, path };
      }
    }
    return best;
  };
  const tour = (mask: number, from: number, to: number): Tour | undefined => {
    const key = `${mask} ${from} ${to}`;
    if (!known.has(key)) known.set(key, search(mask, from, to));
    return known.get(key);
  };
  return { between, tour, count: facings.length };
}
