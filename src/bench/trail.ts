import { members, type Turns, turnsAmong } from './turning.ts';

/**
 * A walk through facings, read as a trail in a graph: the facings are its places, and every batch of strokes is an edge
 * from the facing it begins in to the facing it ends in. Batches with a single facing are loops. Some order of the batches,
 * with turns of the board between them, is the same as an Euler trail over those edges and some added turns; and by
 * Euler's theorem only the parity of each place and the connection of the places decide whether there is one. So the
 * batches are laid down one by one, keeping the cheapest way to each (parity, connection), however many batches there are.
 */
export interface Edge {
  /** Facings of the batch; 0 for a turn of the board without a stroke. */
  readonly mask: number;
  readonly from: number;
  readonly to: number;
}

export interface Trail {
  readonly turns: number;
  /** Turns of the board without a stroke are left out. */
  readonly visits: readonly { readonly mask: number; readonly path: readonly number[] }[];
}

/** How many batches there are of each set of facings. */
export type Counts = ReadonlyMap<number, number>;

interface Laid {
  readonly turns: number;
  readonly edge?: Edge;
  readonly before?: Laid;
}

/** The parity of every place, and to which part each belongs (−1 where no edge touches it yet), the parts named in order. */
interface State {
  readonly odd: number;
  readonly parts: readonly number[];
}

/** Boards lie in few facings, and what was found for one layer holds for all others that lie in the same. */
const KNOWN = new Map<string, Trails>();
const MOST_KNOWN = 20;
const FEW_FACINGS = 8;

/** The trails among some facings, in quarter turns. */
export function trailsAmong(facings: readonly number[]): Trails {
  if (facings.length > FEW_FACINGS) return new Trails(turnsAmong(facings));
  const key = facings.join(' ');
  const known = KNOWN.get(key);
  if (known !== undefined && known.size < MOST_FOUND) return known;
  const trails = new Trails(turnsAmong(facings));
  if (KNOWN.size >= MOST_KNOWN) KNOWN.clear();
  KNOWN.set(key, trails);
  return trails;
}

/** More are not kept for another layer. */
const MOST_FOUND = 2000;

export class Trails {
  readonly turns: Turns;
  private readonly states: State[] = [];
  private readonly ids = new Map<string, number>();
  private readonly joined = new Map<number, number>();
  private readonly closed = new Map<number, Laid>();
  private readonly laid = new Map<string, ReadonlyMap<number, Laid>>();
  private readonly found = new Map<string, Trail>();

  constructor(turns: Turns) {
    this.turns = turns;
    this.id({ odd: 0, parts: Array.from({ length: turns.count }, () => -1) });
  }

  /** How many were found so far. */
  get size(): number {
    return this.found.size;
  }

  /** The trail of fewest turns from one facing to another through all batches counted. */
  shortest(counts: Counts, from: number, to: number): Trail {
    const key = `${keyOf(counts)}|${from}|${to}`;
    const known = this.found.get(key);
    if (known !== undefined) return known;
    let best: { turns: number; edges: readonly Edge[] } | undefined;
    for (const [state, batches] of this.lay(counts)) {
      // With an edge from the end back to the start the trail becomes a circuit.
      const added = this.close(this.join(state, from, to));
      const turns = batches.turns + added.turns;
      if (best === undefined || turns < best.turns - 1e-9) {
        best = { turns, edges: [...edgesOf(batches), ...edgesOf(added)] };
      }
    }
    const visits = walk(best!.edges, from).flatMap(({ mask, from: a, to: b }) =>
      mask === 0 ? [] : [{ mask, path: this.turns.tour(mask, a, b)!.path }],
    );
    const trail = { turns: best!.turns, visits };
    this.found.set(key, trail);
    return trail;
  }

  /** The cheapest way to every state that the batches alone can come to. */
  private lay(counts: Counts): ReadonlyMap<number, Laid> {
    const key = keyOf(counts);
    const known = this.laid.get(key);
    if (known !== undefined) return known;
    let stage = new Map<number, Laid>([[0, { turns: 0 }]]);
    for (const [mask, count] of counts) {
      const edges = members(mask).flatMap((from) =>
        members(mask).flatMap((to) => {
          const tour = from <= to ? this.turns.tour(mask, from, to) : undefined;
          return tour === undefined ? [] : [{ edge: { mask, from, to }, turns: tour.turns }];
        }),
      );
      for (let n = 0; n < count; n++) {
        const next = new Map<number, Laid>();
        for (const [state, before] of stage) {
          for (const { edge, turns } of edges) {
            const to = this.join(state, edge.from, edge.to);
            const total = before.turns + turns;
            const other = next.get(to);
            if (other === undefined || total < other.turns - 1e-9) next.set(to, { turns: total, edge, before });
          }
        }
        stage = next;
      }
    }
    this.laid.set(key, stage);
    return stage;
  }

  /** The cheapest turns that make every place even and all touched places one part. */
  private close(start: number): Laid {
    const known = this.closed.get(start);
    if (known !== undefined) return known;
    const open = new Map<number, Laid>([[start, { turns: 0 }]]);
    const done = new Set<number>();
    for (;;) {
      let nearest: [number, Laid] | undefined;
      for (const entry of open) if (nearest === undefined || entry[1].turns < nearest[1].turns - 1e-9) nearest = entry;
      const [id, before] = nearest!;
      const state = this.states[id]!;
      if (state.odd === 0 && Math.max(...state.parts) <= 0) {
        this.closed.set(start, before);
        return before;
      }
      open.delete(id);
      done.add(id);
      for (const [from, to] of useful(state)) {
        const next = this.join(id, from, to);
        const turns = before.turns + this.turns.between(from, to);
        const other = open.get(next);
        if (done.has(next) || (other !== undefined && other.turns <= turns + 1e-9)) continue;
        open.set(next, { turns, edge: { mask: 0, from, to }, before });
      }
    }
  }

  private join(state: number, from: number, to: number): number {
    const key = (state * this.turns.count + from) * this.turns.count + to;
    const known = this.joined.get(key);
    if (known !== undefined) return known;
    const { odd, parts } = this.states[state]!;
    const fresh = parts.length;
    const merged = parts.map((part, place) => {
      const joins = place === from || place === to || (part >= 0 && (part === parts[from] || part === parts[to]));
      return joins ? fresh : part;
    });
    const names = new Map<number, number>();
    const named = merged.map((part) => {
      if (part < 0) return -1;
      if (!names.has(part)) names.set(part, names.size);
      return names.get(part)!;
    });
    const id = this.id({ odd: odd ^ (1 << from) ^ (1 << to), parts: named });
    this.joined.set(key, id);
    return id;
  }

  private id(state: State): number {
    const key = `${state.odd}|${state.parts.join()}`;
    const known = this.ids.get(key);
    if (known !== undefined) return known;
    this.states.push(state);
    this.ids.set(key, this.states.length - 1);
    return this.states.length - 1;
  }
}

/**
 * The turns worth adding next. Turns obey the triangle inequality, so that a turn within a part is only ever of use
 * between two odd places; and as their sequence does not matter, the part of the first place grows until all are one,
 * and only then the odd places are joined, the first of them first.
 */
function useful({ odd, parts }: State): readonly (readonly [number, number])[] {
  const places = [...parts.keys()].filter((place) => parts[place]! >= 0);
  const first = places.filter((place) => parts[place] === 0);
  if (first.length < places.length) {
    const others = places.filter((place) => parts[place] !== 0);
    return first.flatMap((from) => others.map((to) => [from, to] as const));
  }
  const [from, ...rest] = places.filter((place) => (odd & (1 << place)) !== 0);
  return from === undefined ? [] : rest.map((to) => [from, to] as const);
}

const keyOf = (counts: Counts): string => [...counts].join(';');

function edgesOf(laid: Laid): readonly Edge[] {
  const edges: Edge[] = [];
  for (let at: Laid | undefined = laid; at !== undefined; at = at.before)
    if (at.edge !== undefined) edges.push(at.edge);
  return edges.reverse();
}

/** Every edge once, end to end from a place (Hierholzer); there must be an Euler trail from it. */
function walk(edges: readonly Edge[], start: number): readonly Edge[] {
  const left = [...edges];
  const way: { place: number; by?: Edge }[] = [{ place: start }];
  const trail: Edge[] = [];
  while (way.length > 0) {
    const { place, by } = way.at(-1)!;
    const next = left.findIndex((edge) => edge.from === place || edge.to === place);
    if (next < 0) {
      if (by !== undefined) trail.push(by);
      way.pop();
      continue;
    }
    const [edge] = left.splice(next, 1);
    const onward = edge!.from === place ? edge! : { mask: edge!.mask, from: edge!.to, to: edge!.from };
    way.push({ place: onward.to, by: onward });
  }
  return trail.reverse();
}
