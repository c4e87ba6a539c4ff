import type { BlankType, Stock } from '../instance.ts';
import { COMPARED_PER_STEP, isSymmetric, type Pattern, type PatternMaker, patternOf, waysOf } from './pattern-maker.ts';
import { Sections } from './sections.ts';

/** Good patterns quickly: sections of strips, the first cut either way. */
export class StripPatterns implements PatternMaker {
  /** Not every pattern is one of sections and strips. */
  readonly complete = false;
  /** One is enough where the other is the same turned by a quarter. */
  private readonly both: readonly Sections[];
  private readonly types: number;

  constructor(stock: Stock, types: readonly BlankType[]) {
    const ways = waysOf(stock, types);
    this.types = types.length;
    const along = ways.map(({ type, width, height }) => ({ type, along: width, across: height }));
    const down = ways.map(({ type, width, height }) => ({ type, along: height, across: width }));
    const across = new Sections(stock.width, stock.height, along, types.length, 'x');
    this.both = isSymmetric(stock, types)
      ? [across]
      : [across, new Sections(stock.height, stock.width, down, types.length, 'y')];
  }

  get steps(): number {
    return Math.ceil(this.both.reduce((sum, { compared }) => sum + compared, 0) / COMPARED_PER_STEP);
  }

  get size(): number {
    return Math.ceil(this.both.reduce((sum, { size }) => sum + size, 0) / COMPARED_PER_STEP);
  }

  best(prices: Float64Array): number {
    return Math.max(...this.both.map((sections) => sections.best(prices)));
  }

  patterns(most: number): Pattern[] {
    const all = this.both.flatMap((sections) => sections.patterns(most));
    all.sort((a, b) => b.worth - a.worth);
    return all.slice(0, most).flatMap(({ make }) => {
      const bundle = make();
      return bundle === undefined ? [] : [patternOf(bundle, this.types)];
    });
  }
}
