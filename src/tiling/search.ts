import { type Box, bottom, right } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import { Axis } from './axis.ts';
import { SheetCount } from './count.ts';
import type { Cell } from './plan.ts';
import { type Obstacle, seamCost, seamsOf } from './seams.ts';
import type { Zones } from './zones.ts';

/** What is laid out, in turned space. */
export interface Search {
  /** Boxes that together hold everything drawn; what runs level or upright is held exactly. */
  readonly drawn: readonly Box[];
  readonly avoid: readonly Obstacle[];
  /** What one sheet shows. */
  readonly window: Size;
  /** The least that neighbours share. */
  readonly lap: number;
}

/** A grid: sheet (row, column) begins at `x + column·pitchX, y + row·pitchY`. */
export interface Found {
  readonly x: number;
  readonly y: number;
  readonly pitchX: number;
  readonly pitchY: number;
  readonly cells: readonly Cell[];
  /** What the seams run through; 0 is clear. */
  readonly cost: number;
  /** How far the sheets' middle lies off the drawing's, both ways together. */
  readonly offCentre: number;
}

/** More pairs of origins than this are thinned out. Patterns of straight lines stay far below. */
const MOST_PAIRS = 20_000;
/** Of each axis, how many more origins are looked at for the sake of the seams. */
const SEAM_ORIGINS = 40;
/** Laps grow up to so many times the least one, in so many steps. */
const LAP_GROWTH = 2;
const LAP_STEPS = 4;

/**
 * The regular grid with the fewest sheets. Exact at the least lap: a grid can be shifted to the right, and then
 * down, until the left and the top edge of some sheet lie on those of something drawn, without losing anything that
 * it shows; so only such origins are looked at. Among grids of equally many sheets the one is taken whose seams run
 * through least, then the one with the widest laps, then the one that lies most in the middle.
 */
export function fewestSheets(search: Search): Found {
  const trial = new Trial(search);
  const { lap } = search;
  const [xs, ys] = thinned(trial.x.origins(trial.pitchX(lap)), trial.y.origins(trial.pitchY(lap)));
  const across = xs.map((origin) => trial.x.zones(origin, trial.pitchX(lap), lap));
  const down = ys.map((origin) => trial.y.zones(origin, trial.pitchY(lap), lap));
  const fewest = trial.fewest(across, down);

  const seamsAcross = trial.x.seamOrigins(trial.pitchX(lap), lap, SEAM_ORIGINS);
  const seamsDown = trial.y.seamOrigins(trial.pitchY(lap), lap, SEAM_ORIGINS);
  const fitting = (h: Zones, v: Zones) => trial.counter.count(h, v, fewest) <= fewest;
  const columns = [...across, ...seamsAcross.map((origin) => trial.x.zones(origin, trial.pitchX(lap), lap))].filter(
    (h) => down.some((v) => fitting(h, v)),
  );
  const rows = [...down, ...seamsDown.map((origin) => trial.y.zones(origin, trial.pitchY(lap), lap))].filter((v) =>
    across.some((h) => fitting(h, v)),
  );
  return widened(trial, trial.clearest(columns, rows, fewest)!);
}

/** Laps as wide as they can be at no more sheets and no more in the way of the seams, x first. */
function widened(trial: Trial, found: Found): Found {
  let best = found;
  for (const axis of ['x', 'y'] as const) {
    for (let step = LAP_STEPS; step > 0; step--) {
      const lap = trial.lap * (1 + ((LAP_GROWTH - 1) * step) / LAP_STEPS);
      const wider = trial.withLap(best, axis, lap);
      if (wider === undefined || wider.cost > best.cost) continue;
      best = wider;
      break;
    }
  }
  return best;
}

/** One layout's drawing, seen along both axes, and the counting of its sheets. */
class Trial {
  readonly counter = new SheetCount();
  readonly x: Axis;
  readonly y: Axis;
  readonly lap: number;
  private readonly search: Search;

  constructor(search: Search) {
    this.search = search;
    this.lap = search.lap;
    const { drawn, avoid } = search;
    this.x = new Axis(
      drawn.map((b) => [b.x, right(b)]),
      avoid.map(({ box: b, weight }) => ({ stretch: [b.x, right(b)], weight })),
    );
    this.y = new Axis(
      drawn.map((b) => [b.y, bottom(b)]),
      avoid.map(({ box: b, weight }) => ({ stretch: [b.y, bottom(b)], weight })),
    );
  }

  pitchX(lap: number): number {
    return this.search.window.width - lap;
  }

  pitchY(lap: number): number {
    return this.search.window.height - lap;
  }

  fewest(across: readonly Zones[], down: readonly Zones[]): number {
    let fewest = Number.POSITIVE_INFINITY;
    for (const h of across) {
      for (const v of down) fewest = Math.min(fewest, this.counter.count(h, v, fewest - 1));
    }
    return fewest;
  }

  /** The grid of at most so many sheets whose seams cost least; of equals the one most in the middle. */
  clearest(across: readonly Zones[], down: readonly Zones[], most: number): Found | undefined {
    const { width, height } = this.search.window;
    const pairs = across.flatMap((h) =>
      down.map((v) => ({ h, v, offCentre: this.x.offCentre(h, width) + this.y.offCentre(v, height) })),
    );
    pairs.sort((a, b) => a.offCentre - b.offCentre);
    let best: Found | undefined;
    for (const { h, v, offCentre } of pairs) {
      const cells = this.counter.cells(h, v, best?.cells.length ?? most);
      if (cells === undefined) continue;
      const grid = { x: h.origin, y: v.origin, pitchX: h.pitch, pitchY: v.pitch, cells };
      const cost = seamCost(seamsOf({ ...grid, ...this.search.window }), this.search.avoid);
      if (best === undefined || cells.length < best.cells.length || cost < best.cost)
        best = { ...grid, cost, offCentre };
      if (best.cost === 0) break;
    }
    return best;
  }

  /** The same grid with another lap along one axis, its origin looked for again. */
  withLap(found: Found, axis: 'x' | 'y', lap: number): Found | undefined {
    const most = found.cells.length;
    const h = this.x.zones(found.x, found.pitchX, this.pitchX(0) - found.pitchX);
    const v = this.y.zones(found.y, found.pitchY, this.pitchY(0) - found.pitchY);
    const [own, pitch] = axis === 'x' ? [this.x, this.pitchX(lap)] : [this.y, this.pitchY(lap)];
    if (lap > pitch) return undefined;
    const zones = [...own.origins(pitch), ...own.seamOrigins(pitch, lap, SEAM_ORIGINS)].map((o) =>
      own.zones(o, pitch, lap),
    );
    return axis === 'x' ? this.clearest(zones, [v], most) : this.clearest([h], zones, most);
  }
}

/** Every so many of the origins, so that their pairs stay within bounds. */
function thinned(xs: readonly number[], ys: readonly number[]): readonly [readonly number[], readonly number[]] {
  const step = Math.ceil(Math.sqrt((xs.length * ys.length) / MOST_PAIRS));
  const some = (origins: readonly number[]) => origins.filter((_, i) => i % step === 0);
  return [some(xs), some(ys)];
}
