/**
 * The rule of a day: per head, board and thickness each setting once, settings rising, all that wants a setting in turn.
 * What must come before wins over that: then a board is taken up in more than one round. This file knows no boards, only
 * demands on settings by number, so that it can be compared with every sequence there is.
 */
export interface Demand {
  /** Number of its head, board and thickness. */
  readonly group: number;
  /** Numbers of settings, which rise with them; none where nothing is cut by the guide. */
  readonly settings: readonly number[];
  /** Demands that must be finished before. */
  readonly after: readonly number[];
}

/** One setting, and the demands that are met at it, in turn. */
export interface Visit {
  readonly group: number;
  /** Undefined where none of the demands has a setting. */
  readonly setting?: number;
  readonly demands: readonly number[];
}

/** What a setting reads; undefined where nothing is set for it. Neighbours that read alike are one setting of the guide. */
export type Reads = (group: number, setting: number) => string | undefined;

/** So many states are kept after each round, the best: a day of eight boards has no more. */
const MOST_STATES = 60;
/** So many of the best sequences of rounds are looked at more closely. */
const MOST_SEQUENCES = 16;
/** So many strokes' worth of trying is spent on leaving settings out of rounds: small days are looked at in every way. */
const EFFORT = 150_000;

interface Progress {
  /** Settings left of each demand. */
  readonly left: readonly ReadonlySet<number>[];
  readonly finished: ReadonlySet<number>;
}

interface State extends Progress {
  readonly sequence: readonly number[];
  readonly visits: readonly Visit[];
}

/** How often the guide is set over some visits. */
export function settingsOver(visits: readonly Visit[], reads: Reads): number {
  const read = visits.flatMap(({ group, setting }) => (setting === undefined ? [] : (reads(group, setting) ?? [])));
  return read.filter((reading, i) => reading !== read[i - 1]).length;
}

/** In the fewest rounds, and then with the fewest settings of the guide. */
export function roundsOf(demands: readonly Demand[], reads: Reads): readonly Visit[] {
  const finals = fewestRounds(demands, reads);
  const strokes = demands.reduce((sum, { settings }) => sum + settings.length, 0);
  const runs = Math.ceil(EFFORT / Math.max(1, finals.length * strokes));
  let best: readonly Visit[] | undefined;
  for (const { sequence, visits } of finals) {
    const found = new Set(sequence).size === sequence.length ? visits : leftOut(demands, sequence, visits, reads, runs);
    if (best === undefined || settingsOver(found, reads) < settingsOver(best, reads)) best = found;
  }
  return best ?? [];
}

/** Round by round, each taking all that it can: what is done early never hinders. */
function fewestRounds(demands: readonly Demand[], reads: Reads): readonly State[] {
  const groups = [...new Set(demands.map(({ group }) => group))].sort((a, b) => a - b);
  const start = { left: demands.map(({ settings }) => new Set(settings)), finished: new Set<number>() };
  let stage: readonly State[] = [{ ...start, sequence: [], visits: [] }];
  for (;;) {
    const finals = stage.filter(({ finished }) => finished.size === demands.length);
    if (finals.length > 0) {
      const cost = (state: State): number => settingsOver(state.visits, reads);
      return finals.sort((a, b) => cost(a) - cost(b)).slice(0, MOST_SEQUENCES);
    }
    const next = stage.flatMap((state) =>
      groups.flatMap((group): readonly State[] => {
        const { visits, ...after } = roundOf(demands, group, state, () => true);
        if (visits.length === 0) return [];
        return [{ ...after, sequence: [...state.sequence, group], visits: [...state.visits, ...visits] }];
      }),
    );
    // Demands that wait for each other would never be met.
    if (next.length === 0) throw new RangeError('demands wait for each other');
    stage = next.length <= MOST_STATES ? next : mostPromising(next, reads);
  }
}

/** One state for all that have the same left to do and end at the same reading; of those the most promising. */
function mostPromising(states: readonly State[], reads: Reads): readonly State[] {
  const found = new Map<string, { readonly state: State; readonly cost: number; readonly rest: number }>();
  for (const state of states) {
    const { group, setting } = state.visits.at(-1)!;
    const left = state.left.map((each, i) => (state.finished.has(i) ? 'x' : [...each].join('.')));
    const key = [...left, setting === undefined ? '' : reads(group, setting)].join('|');
    const cost = settingsOver(state.visits, reads);
    const known = found.get(key);
    const rest = state.left.reduce((sum, { size }) => sum + size, 0);
    if (known === undefined || cost < known.cost) found.set(key, { state, cost, rest });
  }
  return [...found.values()]
    .sort((a, b) => a.cost + a.rest - b.cost - b.rest)
    .slice(0, MOST_STATES)
    .map(({ state }) => state);
}

/** One round of a group: its settings rising, at each whatever wants it and may be begun, or goes on. */
function roundOf(
  demands: readonly Demand[],
  group: number,
  before: Progress,
  isOpen: (setting: number) => boolean,
): Progress & { readonly visits: readonly Visit[] } {
  const left = [...before.left];
  const finished = new Set(before.finished);
  const own = [...demands.keys()].filter((i) => demands[i]!.group === group && !finished.has(i));
  const visits: { group: number; setting?: number; demands: number[] }[] = [];
  const ready = (i: number): boolean => !finished.has(i) && demands[i]!.after.every((other) => finished.has(other));
  let idle = own.filter((i) => demands[i]!.settings.length === 0);
  /** What needs no setting is done as soon as it may be. */
  const unset = (): void => {
    for (let next = idle.find(ready); next !== undefined; next = idle.find(ready)) {
      finished.add(next);
      idle = idle.filter((i) => i !== next);
      if (visits.length === 0) visits.push({ group, demands: [] });
      visits.at(-1)!.demands.push(next);
    }
  };
  unset();
  const wanting = new Map<number, number[]>();
  for (const i of own) {
    for (const setting of left[i]!) {
      const list = wanting.get(setting);
      if (list === undefined) wanting.set(setting, [i]);
      else list.push(i);
    }
  }
  for (const setting of [...wanting.keys()].filter(isOpen).sort((a, b) => a - b)) {
    let waiting = wanting.get(setting)!;
    let visit: (typeof visits)[number] | undefined;
    for (let now = waiting.filter(ready); now.length > 0; now = waiting.filter(ready)) {
      if (visit === undefined) {
        visit = { group, setting, demands: [] };
        visits.push(visit);
      }
      for (const i of now) {
        visit.demands.push(i);
        const rest = new Set(left[i]);
        rest.delete(setting);
        left[i] = rest;
        if (rest.size === 0) finished.add(i);
      }
      waiting = waiting.filter((i) => !now.includes(i));
      unset();
    }
  }
  return { left, finished, visits };
}

/** The same rounds, with settings left out of those that can do without. */
function leftOut(
  demands: readonly Demand[],
  sequence: readonly number[],
  first: readonly Visit[],
  reads: Reads,
  runs: number,
): readonly Visit[] {
  let left = runs;
  const run = (closed: ReadonlySet<string>): readonly Visit[] | undefined => {
    let progress: Progress = { left: demands.map(({ settings }) => new Set(settings)), finished: new Set() };
    const visits: Visit[] = [];
    sequence.forEach((group, round) => {
      const done = roundOf(demands, group, progress, (setting) => !closed.has(`${round} ${setting}`));
      visits.push(...done.visits);
      progress = done;
    });
    return progress.finished.size === demands.length ? visits : undefined;
  };
  const settingsIn = (group: number): readonly number[] => [
    ...new Set(demands.flatMap((demand) => (demand.group === group ? demand.settings : []))),
  ];
  const slots = sequence.flatMap((group, round) =>
    sequence.filter((other) => other === group).length === 1
      ? []
      : settingsIn(group).map((setting) => `${round} ${setting}`),
  );
  let best = { visits: first, cost: settingsOver(first, reads), closed: new Set<string>() };
  const offer = (closed: Set<string>): boolean => {
    if (left-- <= 0) return false;
    const visits = run(closed);
    if (visits === undefined) return false;
    const cost = settingsOver(visits, reads);
    if (cost >= best.cost) return false;
    best = { visits, cost, closed };
    return true;
  };
  if (slots.length < 20 && 1 << slots.length <= runs) {
    for (let mask = 1; mask < 1 << slots.length; mask++)
      offer(new Set(slots.filter((_, i) => (mask & (1 << i)) !== 0)));
    return best.visits;
  }
  const one = slots.map((slot) => [slot]);
  const two = slots.flatMap((a, i) => slots.slice(i + 1).map((b) => [a, b]));
  while ([...one, ...two].some((more) => offer(new Set([...best.closed, ...more]))));
  return best.visits;
}
