import type { Size } from '../../geometry/point.ts';
import { once } from '../../problems/once.ts';
import type { Cell } from '../plan.ts';
import type { Axis } from './axis.ts';
import { shownOf, stepsOf } from './bands.ts';
import { type Columns, type Rows, SheetCount } from './count.ts';
import { reachOf } from './rim.ts';
import { seamCost } from './seam-cost.ts';
import type { Seen } from './seen.ts';

/** What is laid out, in turned space. */
export interface Search {
  readonly seen: Seen;
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
  /** What neighbours share, both ways together. */
  readonly laps: number;
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
 * through least, then the one with the widest laps, then the one that lies most in the middle. Undefined where it
 * takes more than `most` sheets.
 */
export function fewestSheets(search: Search, most = Number.MAX_SAFE_INTEGER): Found | undefined {
  const trial = new Trial(search);
  const { lap, window } = search;
  const [pitchX, pitchY] = [window.width - lap, window.height - lap];
  const [xs, ys] = thinned(trial.x.origins(pitchX), trial.y.origins(pitchY));
  const across = xs.map((o) => trial.columns(o, pitchX, lap));
  const down = ys.map((o) => trial.rows(o, pitchY, lap));
  const { fewest, columns, rows } = trial.fewest(across, down, most);
  if (fewest > most) return undefined;

  const seamsAcross = trial.x.seamOrigins(pitchX, lap, SEAM_ORIGINS).map((o) => trial.columns(o, pitchX, lap));
  const seamsDown = trial.y.seamOrigins(pitchY, lap, SEAM_ORIGINS).map((o) => trial.rows(o, pitchY, lap));
  const [columnGroups, rowGroups] = [alike(across), alike(down)];
  const moreColumns = seamsAcross.filter((h) => rowGroups.some((some) => trial.fitsRows(h, some, fewest)));
  const moreRows = seamsDown.filter((v) => columnGroups.some((some) => trial.fitsColumns(some, v, fewest)));
  const originOf = ({ zones }: Columns | Rows): number => zones.origin;
  const found = trial.clearest(
    trial.x.clearest([...columns, ...moreColumns], originOf, pitchX, lap, SEAM_ORIGINS),
    trial.y.clearest([...rows, ...moreRows], originOf, pitchY, lap, SEAM_ORIGINS),
    fewest,
  );
  return widened(trial, found ?? trial.clearest(columns, rows, fewest)!);
}

/** Laps as wide as they can be at no more sheets and no more in the way of the seams, x first. */
function widened(trial: Trial, found: Placed): Placed {
  let best = found;
  for (const axis of ['x', 'y'] as const) {
    for (let step = LAP_STEPS; step > 0; step--) {
      const wider = trial.withLap(best, axis, trial.lap * (1 + ((LAP_GROWTH - 1) * step) / LAP_STEPS));
      if (wider === undefined || wider.cost > best.cost) continue;
      best = wider;
      break;
    }
  }
  return best;
}

interface Placed extends Found {
  readonly across: Columns;
  readonly down: Rows;
}

/** One layout's drawing, seen along both axes, and the counting of its sheets. */
class Trial {
  readonly x: Axis;
  readonly y: Axis;
  readonly lap: number;
  private readonly seen: Seen;
  private readonly window: Size;
  private readonly counter: SheetCount;

  constructor({ seen, window, lap }: Search) {
    this.seen = seen;
    this.x = seen.x;
    this.y = seen.y;
    this.window = window;
    this.lap = lap;
    this.counter = new SheetCount(seen.squares);
  }

  columns(origin: number, pitch: number, lap: number): Columns {
    const zones = this.x.zones(origin, pitch, lap);
    const { top, bottom, left, right } = this.seen.rim;
    return {
      zones,
      reach: reachOf(this.x, zones, [top, bottom], left, right),
      shown: once(() => shownOf(zones, this.seen.bands())),
    };
  }

  rows(origin: number, pitch: number, lap: number): Rows {
    const zones = this.y.zones(origin, pitch, lap);
    const { top, bottom, left, right } = this.seen.rim;
    return {
      zones,
      reach: reachOf(this.y, zones, [left, right], top, bottom),
      steps: once(() => stepsOf(zones, this.seen.bands())),
    };
  }

  /** Whether a grid of these columns and some of those rows, all alike, takes no more sheets. */
  fitsRows(across: Columns, down: readonly Rows[], most: number): boolean {
    const said = this.counter.byRim(across, down[0]!, most);
    return said !== undefined ? said <= most : down.some((v) => this.counter.count(across, v, most) <= most);
  }

  fitsColumns(across: readonly Columns[], down: Rows, most: number): boolean {
    const said = this.counter.byRim(across[0]!, down, most);
    return said !== undefined ? said <= most : across.some((h) => this.counter.count(h, down, most) <= most);
  }

  /** The least number of sheets up to `most`, and the columns and rows that it is reached with. */
  fewest(across: readonly Columns[], down: readonly Rows[], most: number) {
    let fewest = most + 1;
    let columns = new Set<Columns>();
    let rows = new Set<Rows>();
    const take = (count: number, h: Columns, some: readonly Rows[]): void => {
      if (count > most || count > fewest) return;
      if (count < fewest) {
        fewest = count;
        columns = new Set();
        rows = new Set();
      }
      columns.add(h);
      for (const v of some) rows.add(v);
    };
    const groups = alike(down);
    for (const h of across) {
      for (const some of groups) {
        // Where the rim says it, it says so of all rows that are as many.
        const said = this.counter.byRim(h, some[0]!, Math.min(fewest, most));
        if (said !== undefined) take(said, h, some);
        else for (const v of some) take(this.counter.count(h, v, Math.min(fewest, most)), h, [v]);
      }
    }
    return { fewest, columns: across.filter((h) => columns.has(h)), rows: down.filter((v) => rows.has(v)) };
  }

  /**
   * The grid of at most so many sheets whose seams cost least; of equals the one most in the middle. One of just so many
   * sheets whose seams cost more than `mostCost` is none.
   */
  clearest(
    across: readonly Columns[],
    down: readonly Rows[],
    most: number,
    mostCost = Number.POSITIVE_INFINITY,
  ): Placed | undefined {
    const { window } = this;
    const { avoid } = this.seen;
    const columns = across.map((own) => {
      const h = own.zones;
      return { own, h, offX: this.x.offCentre(h, window.width), hitsX: once(() => this.x.hits(h)) };
    });
    const rows = down.map((own) => {
      const v = own.zones;
      return { own, v, offY: this.y.offCentre(v, window.height), hitsY: once(() => this.y.hits(v)) };
    });
    columns.sort((a, b) => a.offX - b.offX);
    rows.sort((a, b) => a.offY - b.offY);
    let best: Placed | undefined;
    for (const { own: across, h, offX, hitsX } of columns) {
      for (const { own: down, v, offY, hitsY } of rows) {
        const offCentre = offX + offY;
        if (best?.cost === 0 && offCentre >= best.offCentre) break;
        const count = this.counter.count(across, down, best?.cells.length ?? most);
        if (best !== undefined ? count > best.cells.length : count > most) continue;
        const limit = count === most ? mostCost : Number.POSITIVE_INFINITY;
        const bound = best !== undefined && count === best.cells.length ? Math.min(best.cost, limit) : limit;
        const cost = seamCost(this.counter, { h, v, hitsX: hitsX(), hitsY: hitsY(), window, avoid }, bound);
        if (cost > bound) continue;
        if (best !== undefined && count === best.cells.length && cost === best.cost && offCentre >= best.offCentre)
          continue;
        best = {
          x: h.origin,
          y: v.origin,
          pitchX: h.pitch,
          pitchY: v.pitch,
          cells: this.counter.cells(h, v),
          cost,
          laps: h.lap + v.lap,
          offCentre,
          across,
          down,
        };
      }
    }
    return best;
  }

  /** The same grid with another lap along one axis, its origin looked for again; of as many sheets only where its seams cost no more. */
  withLap(found: Placed, axis: 'x' | 'y', lap: number): Placed | undefined {
    const { window } = this;
    const most = found.cells.length;
    if (axis === 'x') {
      const pitch = window.width - lap;
      const origins = lap > pitch ? [] : this.x.seamOrigins(pitch, lap, SEAM_ORIGINS);
      const columns = origins.map((o) => this.columns(o, pitch, lap));
      return this.clearest(columns, [found.down], most, found.cost);
    }
    const pitch = window.height - lap;
    const origins = lap > pitch ? [] : this.y.seamOrigins(pitch, lap, SEAM_ORIGINS);
    const rows = origins.map((o) => this.rows(o, pitch, lap));
    return this.clearest([found.across], rows, most, found.cost);
  }
}

/** Every so many of the origins, so that their pairs stay within bounds. */
function thinned(xs: readonly number[], ys: readonly number[]): readonly [readonly number[], readonly number[]] {
  const step = Math.ceil(Math.sqrt((xs.length * ys.length) / MOST_PAIRS));
  const some = (origins: readonly number[]) => origins.filter((_, i) => i % step === 0);
  return [some(xs), some(ys)];
}

/** Rows or columns that the rim can say the same of, together; all others each for itself. */
function alike<T extends Columns | Rows>(lines: readonly T[]): readonly (readonly T[])[] {
  const groups = new Map<unknown, T[]>();
  for (const each of lines) {
    const key = each.reach === 'less' ? each : `${each.reach} ${each.zones.to - each.zones.from}`;
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [each]);
    else known.push(each);
  }
  return [...groups.values()];
}
