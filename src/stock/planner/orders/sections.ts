import type { Bundle } from './bundle.ts';
import { fill, join, pointBeside, restBeside } from './knapsack.ts';
import { NOISE, pairOf } from './pattern-maker.ts';
import { rasterOf } from './raster.ts';

/** A way that a type may lie, seen along the strips. */
export interface Lying {
  readonly type: number;
  readonly along: number;
  readonly across: number;
}

/** More points than these are thinned out. */
const MOST_POINTS = 800;
/** Of so many sections the worth is worked out: those that promise most. */
const MOST_SECTIONS = 60;

/** Blanks of one extent across the strips: a strip may be as deep as they are. */
interface Depth {
  readonly across: number;
  readonly ways: readonly (Lying & { readonly rest: Int32Array })[];
  /** For a point across: the point that is left beside such a strip, or −1. */
  readonly rest: Int32Array;
}

/**
 * Patterns of sections, strips and blanks: the sheet is cut across into sections, each section along into strips, each
 * strip across into blanks, which are trimmed to their depth (P. Gilmore and R. Gomory, Multistage cutting stock
 * problems of two and more dimensions, Operations Research 13, 1965, from memory). The best strip of every length and
 * depth is one knapsack table, for all lengths at once, and so is a section of one length.
 */
export class Sections {
  /** Sums compared so far. */
  compared = 0;
  /** Points along the strips and across them, 0 the first. */
  private readonly points: readonly number[];
  private readonly across: readonly number[];
  private readonly depths: readonly Depth[];
  /** For every depth: worth of the best strip no longer than a point. */
  private readonly strip: readonly Float64Array[];
  private readonly nothing: Float64Array;
  /** Of every depth, ways that are no deeper. */
  private readonly within: readonly (readonly (Lying & { readonly rest: Int32Array })[])[];
  /** Worth of the best section of a point's length; −1 where it is not known. */
  private readonly worth: Float64Array;
  /** Worth of the best sections beside each other. */
  private readonly total: Float64Array;
  private readonly table: Float64Array;
  private readonly promise: Float64Array;
  private known: number[] = [];
  private prices: Float64Array;

  constructor(
    length: number,
    depth: number,
    ways: readonly Lying[],
    types: number,
    private readonly direction: 'x' | 'y',
  ) {
    const points = (size: number, sizes: readonly number[]): number[] => [
      0,
      ...rasterOf(size, sizes, MOST_POINTS).points,
    ];
    this.points = points(
      length,
      ways.map(({ along }) => along),
    );
    this.across = points(
      depth,
      ways.map(({ across }) => across),
    );
    const depths = [...new Set(ways.map(({ across }) => across))].sort((a, b) => a - b);
    this.depths = depths.map((across) => ({
      across,
      ways: ways
        .filter((way) => way.across === across)
        .map((way) => ({ ...way, rest: restBeside(this.points, way.along) })),
      rest: restBeside(this.across, across),
    }));
    this.strip = depths.map(() => new Float64Array(this.points.length));
    this.nothing = new Float64Array(this.points.length);
    this.within = this.depths.map((_, d) => this.depths.slice(0, d + 1).flatMap((each) => each.ways));
    this.worth = new Float64Array(this.points.length);
    this.total = new Float64Array(this.points.length);
    this.promise = new Float64Array(this.points.length);
    this.table = new Float64Array(this.across.length);
    this.prices = new Float64Array(types);
  }

  /** Sums that one call compares, roughly. */
  get size(): number {
    const { points, across, depths } = this;
    return depths.length * (points.length + (MOST_SECTIONS * across.length) / 2) + points.length ** 2 / 2;
  }

  best(prices: Float64Array): number {
    this.prices = prices;
    this.fillStrips();
    const last = this.points.length - 1;
    this.worth.fill(-1);
    this.known = this.promising();
    for (const at of this.known) this.worth[at] = this.section(at);
    this.known.sort((a, b) => a - b);
    this.compared += join(this.points, this.worth, this.known, this.total);
    return this.total[last]!;
  }

  /** The best patterns that begin with a section each, with their worth. */
  patterns(most: number): { readonly worth: number; readonly make: () => Bundle | undefined }[] {
    const last = this.points.length - 1;
    const seen = new Set<string>();
    const all = this.known.map((at) => ({
      at,
      worth: this.worth[at]! + this.total[pointBeside(this.points, last, at)]!,
    }));
    all.sort((a, b) => b.worth - a.worth || a.at - b.at);
    const out: { readonly worth: number; readonly make: () => Bundle | undefined }[] = [];
    for (const { at, worth } of all) {
      if (out.length === most) break;
      const sections = [at, ...this.sectionsOf(pointBeside(this.points, last, at))];
      const key = [...sections].sort((a, b) => a - b).join(' ');
      if (seen.has(key)) continue;
      seen.add(key);
      out.push({ worth, make: () => this.beside(this.direction, sections, (section) => this.traceSection(section)) });
    }
    return out;
  }

  private fillStrips(): void {
    const { strip, prices, depths } = this;
    depths.forEach(({ ways }, d) => {
      const worth = strip[d]!;
      let before = d > 0 ? strip[d - 1]! : this.nothing;
      for (const { type, rest } of ways) {
        fill(worth, before, rest, prices[type]!);
        this.compared += worth.length;
        // The next way of the same depth goes on from here.
        before = worth;
      }
    });
  }

  /** Points whose sections promise most: as if strips could be cut through anywhere. */
  private promising(): number[] {
    const { promise, strip, depths, total, points } = this;
    const depth = this.across.at(-1)!;
    promise.fill(0);
    depths.forEach(({ across }, d) => {
      for (let i = 1; i < promise.length; i++) {
        const worth = (strip[d]![i]! * depth) / across;
        if (worth > promise[i]!) promise[i] = worth;
      }
    });
    this.compared += depths.length * promise.length;
    const rising: number[] = [];
    for (let i = 1; i < promise.length; i++) if (promise[i]! > promise[i - 1]!) rising.push(i);
    this.compared += join(points, promise, rising, total);
    const last = points.length - 1;
    const score = new Float64Array(points.length);
    for (const at of rising) score[at] = promise[at]! + total[pointBeside(this.points, last, at)]!;
    rising.sort((a, b) => score[b]! - score[a]! || a - b);
    return rising.slice(0, MOST_SECTIONS);
  }

  /** Fills the table of one section's depths and gives its worth. */
  private section(at: number): number {
    const { table, strip, depths } = this;
    table.fill(0);
    let before = 0;
    depths.forEach(({ rest }, d) => {
      const worth = strip[d]![at]!;
      if (worth <= before) return;
      before = worth;
      fill(table, table, rest, worth);
      this.compared += table.length;
    });
    return table[table.length - 1]!;
  }

  private sectionsOf(from: number): number[] {
    const out: number[] = [];
    let at = from;
    while (at > 0 && this.total[at]! > 0) {
      const near = this.total[at]! * (1 - NOISE);
      if (this.total[at - 1]! >= near) {
        at--;
        continue;
      }
      const part = this.known.find(
        (known) => known <= at && this.worth[known]! + this.total[pointBeside(this.points, at, known)]! >= near,
      );
      if (part === undefined) break;
      out.push(part);
      at = pointBeside(this.points, at, part);
    }
    return out;
  }

  private traceSection(at: number): Bundle | undefined {
    this.section(at);
    const { table, depths, strip } = this;
    const strips: number[] = [];
    let j = table.length - 1;
    while (j > 0 && table[j]! > 0) {
      const near = table[j]! * (1 - NOISE);
      if (table[j - 1]! >= near) {
        j--;
        continue;
      }
      const d = depths.findIndex(({ rest }, k) => rest[j]! >= 0 && strip[k]![at]! + table[rest[j]!]! >= near);
      if (d < 0) break;
      strips.push(d);
      j = depths[d]!.rest[j]!;
    }
    return this.beside(this.direction === 'x' ? 'y' : 'x', strips, (d) => this.traceStrip(d, at));
  }

  private traceStrip(d: number, from: number): Bundle | undefined {
    const worth = this.strip[d]!;
    const ways = this.within[d]!;
    const blanks: Lying[] = [];
    let at = from;
    while (at > 0 && worth[at]! > 0) {
      const near = worth[at]! * (1 - NOISE);
      if (worth[at - 1]! >= near) {
        at--;
        continue;
      }
      const way = ways.find(
        ({ type, rest }) => this.prices[type]! > 0 && rest[at]! >= 0 && this.prices[type]! + worth[rest[at]!]! >= near,
      );
      if (way === undefined) break;
      blanks.push(way);
      at = way.rest[at]!;
    }
    return this.beside(this.direction, blanks, ({ type, along, across }) =>
      this.direction === 'x' ? { type, width: along, height: across } : { type, width: across, height: along },
    );
  }

  private beside<T>(along: 'x' | 'y', parts: readonly T[], make: (part: T) => Bundle | undefined): Bundle | undefined {
    const bundles = parts.flatMap((part) => make(part) ?? []);
    return bundles.length === 0
      ? undefined
      : bundles.reduceRight((rest, bundle) => (rest === bundle ? bundle : pairOf(along, bundle, rest)));
  }
}
