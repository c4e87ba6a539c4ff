import type { Report } from '../../src/index.ts';
import { inMm } from '../documents/tickets.ts';
import { type MarkRow, type Reading, type ReadStroke, sideOf } from './bench-paper.ts';
import { cot } from './jobs.ts';

/** The shop as it truly is: what its file says is what was measured on it. */
export interface Truth {
  readonly opening: 'left' | 'right';
  /** How far the blade is ahead of the scribe where it goes in, and where the cut ends. */
  readonly start: number;
  readonly stop: number;
  readonly overrun: number;
  readonly straightedge: number;
  readonly guide: { readonly a: number; readonly b: number; readonly setAt?: number };
}

type Side = 'left' | 'right' | 'top' | 'bottom';
const OPPOSITE: Readonly<Record<Side, Side>> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };
/** Out of the opening, along the axis that a side's line is measured on. */
const OUT: Readonly<Record<Side, 1 | -1>> = { left: -1, top: -1, right: 1, bottom: 1 };
/** Which side crosses where a stroke with the opening on its left begins. */
const BEFORE: Readonly<Record<Side, Side>> = { left: 'top', bottom: 'left', right: 'bottom', top: 'right' };
/** Which way such a stroke runs along its axis. */
const WAY: Readonly<Record<Side, 1 | -1>> = { left: 1, bottom: 1, right: -1, top: -1 };

interface Cut {
  /** Where its face edge lies, across. */
  readonly face: number;
  /** Along: where the face is cut from and to; undefined where the marks come off the pattern. */
  readonly ends?: readonly [number, number];
  readonly depth: number;
}

interface LayerState {
  readonly cuts: Map<string, Cut>;
  fixed: boolean;
  slip: boolean;
  lifted: boolean;
}

const TOLERANCE = 0.4;
const near = (a: number, b: number, by: number): boolean => Math.abs(a - b) <= by;

/** One piece on the bench, in the back view: it can be cut, fixed and lifted, and a wrong move is an error. */
export class Hand {
  readonly #truth: Truth;
  readonly #report: Report;
  readonly #marks = new Map<number, MarkRow>();
  readonly #layers: readonly LayerState[];

  constructor(truth: Truth, report: Report, marks: readonly MarkRow[]) {
    this.#truth = truth;
    this.#report = report;
    for (const row of marks) this.#marks.set(row.number, row);
    this.#layers = report.layers.map(() => ({ cuts: new Map(), fixed: false, slip: false, lifted: false }));
  }

  /** Which layer a heading or a lot's name means, from 0. */
  layerOf(words: string): number {
    const under = /under mat (\d+)/.exec(words);
    return under === null ? 0 : Number(under[1]);
  }

  /** The slip sheet for an under mat: the fallout above back in its place, or waste board instead of it. */
  slip(layer: number, of: 'fallout' | 'waste'): void {
    const above = this.#layers[layer - 1]!;
    this.#mustBeThrough(layer - 1, 'a fallout is moved');
    if (above.lifted !== (of === 'waste'))
      throw new Error(`the fallout above layer ${layer + 1} is not where it should be`);
    // A fallout that is wider at the back cannot drop out any more once a mat is fixed behind it.
    if (of === 'fallout' && this.#report.layers[layer - 1]!.bevel.reverse) throw new Error('that fallout is wedged');
    this.#layers[layer]!.slip = true;
  }

  fix(layer: number): void {
    if (!this.#layers[layer]!.slip) throw new Error(`layer ${layer + 1} is fixed over nothing`);
    this.#layers[layer]!.fixed = true;
  }

  lift(layers: readonly number[]): void {
    for (const layer of layers) {
      this.#mustBeThrough(layer, 'a fallout is lifted');
      this.#layers[layer]!.lifted = true;
    }
  }

  /** Lifts whatever lies loose: all layers that are cut through and still have their fallout. */
  liftLoose(layer: number): void {
    const together = this.#report.bench.stack === 'together';
    const still = this.#layers.map((_, i) => i).filter((i) => !this.#layers[i]!.lifted);
    this.lift(together ? still.filter((i) => i <= layer) : [layer]);
  }

  cut(layer: number, stroke: ReadStroke, reading: Reading | undefined, depth: number): void {
    const { thickness, bevel } = this.#report.layers[layer]!;
    const together = this.#report.bench.stack === 'together';
    if (together && layer > 0 && !this.#layers[layer]!.fixed) throw new Error(`layer ${layer + 1} is cut unfixed`);
    if (depth > thickness + 0.02) throw new Error(`a depth of ${depth} in a board of ${thickness}`);
    const side = sideOf(stroke) as Side;
    const s = thickness * cot(bevel.angle);
    const outwards = bevel.reverse ? -s : s;
    const { a, b, setAt } = this.#truth.guide;
    const laid = this.#laid(stroke, reading);
    let face: number;
    if (laid === undefined) {
      const far = stroke.words.includes('FAR');
      const over = setAt === undefined ? 0 : (thickness - setAt) * cot(bevel.angle);
      face = this.#from(far ? OPPOSITE[side] : side, a + b * reading!.mm - over);
    } else {
      // The straightedge lies on the border side of the line.
      const aside = laid.to === 'straightedge' ? this.#truth.straightedge : 0;
      face = this.#from(laid.edge, laid.mm) + OUT[side] * (outwards - aside);
    }
    const ends = this.#ends(layer, side, stroke.number, face - OUT[side] * outwards);
    const key = `${this.#openingOf(stroke)} ${side}`;
    const before = this.#layers[layer]!.cuts.get(key);
    if (before !== undefined && before.depth >= depth) throw new Error(`${key} is cut twice`);
    this.#layers[layer]!.cuts.set(key, { face, depth, ...(ends === undefined ? {} : { ends }) });
  }

  /** What is not as it was solved; nothing where all is. */
  faults(): readonly string[] {
    const { openings, outer, layers } = this.#report;
    const found: string[] = [];
    layers.forEach((_, layer) => {
      this.#mustBeThrough(layer, 'the piece is done');
      if (!this.#layers[layer]!.lifted) found.push(`layer ${layer + 1} still holds its fallout`);
      openings.forEach(({ name, layers: own }) => {
        const { x, y, width, height } = own[layer]!.face;
        const wanted = { left: outer.width - x - width, right: outer.width - x, top: y, bottom: y + height };
        for (const side of Object.keys(OUT) as Side[]) {
          const cut = this.#layers[layer]!.cuts.get(`${name} ${side}`)!;
          const where = `${name}, layer ${layer + 1}, ${side}`;
          if (!near(cut.face, wanted[side], TOLERANCE)) found.push(`${where}: ${cut.face}, not ${wanted[side]}`);
          found.push(...this.#overcut(layer, name, side, cut).map((words) => `${where}: ${words}`));
        }
      });
    });
    return found;
  }

  #overcut(layer: number, name: string, side: Side, { ends }: Cut): readonly string[] {
    if (ends === undefined) return [];
    const turned = (this.#truth.opening === 'right') !== this.#report.layers[layer]!.bevel.reverse;
    const way = turned ? -WAY[side] : WAY[side];
    const [before, after] = turned ? [OPPOSITE[BEFORE[side]], BEFORE[side]] : [BEFORE[side], OPPOSITE[BEFORE[side]]];
    const corner = (crossing: Side): number => this.#layers[layer]!.cuts.get(`${name} ${crossing}`)!.face;
    const over = [way * (corner(before) - ends[0]), way * (ends[1] - corner(after))];
    return over.flatMap((mm, i) =>
      near(mm, this.#truth.overrun, TOLERANCE) ? [] : [`${i === 0 ? 'start' : 'end'} runs ${mm.toFixed(2)} mm past`],
    );
  }

  #mustBeThrough(layer: number, when: string): void {
    const { thickness } = this.#report.layers[layer]!;
    for (const { name } of this.#report.openings) {
      for (const side of Object.keys(OUT)) {
        const cut = this.#layers[layer]!.cuts.get(`${name} ${side}`);
        if (cut === undefined || !near(cut.depth, thickness, 0.02)) {
          throw new Error(`${when}, but ${name} ${side} of layer ${layer + 1} is not cut through`);
        }
      }
    }
  }

  #openingOf({ words }: ReadStroke): string {
    const { openings } = this.#report;
    return openings.length === 1 ? openings[0]!.name : openings.find(({ name }) => words.includes(` ${name} `))!.name;
  }

  /** A place across, so far from an edge of the board. */
  #from(edge: Side, mm: number): number {
    const { width, height } = this.#report.outer;
    return edge === 'left' || edge === 'top' ? mm : (edge === 'right' ? width : height) - mm;
  }

  /** `guide OFF, the top edge to the line`, or on a run list `15/16 in, straightedge, from the right edge`. */
  #laid(
    { laid, words }: ReadStroke,
    reading: Reading | undefined,
  ): { readonly to: string; readonly edge: Side; readonly mm: number } | undefined {
    const text = `${laid} ${words}`;
    const found = /guide OFF, the (\w+) edge to the (line|bar)|(straightedge), from the (\w+) edge/.exec(text);
    if (found === null) return undefined;
    const own = /([\d /]+\d|\d) (in|mm|cm) ?(scant|full)?, (?:guide OFF|straightedge)/.exec(text);
    const part = own?.[2] === 'in' ? 25.4 / 32 : 0.5;
    const aside = own?.[3] === undefined ? 0 : ((own[3] === 'scant' ? -1 : 1) * part) / 4;
    const mm = own === null ? reading!.mm : inMm(own[1]!.trim(), own[2]!) + aside;
    return { to: found[2] ?? found[3]!, edge: (found[1] ?? found[4]) as Side, mm };
  }

  /** Where the face is cut from and to, by S and E as they were marked; the pencilled line is where the blade goes in. */
  #ends(layer: number, side: Side, number: number, back: number): readonly [number, number] | undefined {
    const row = this.#marks.get(number);
    if (row === undefined) return undefined;
    const pencilled = this.#from(row.line.edge as Side, row.line.mm);
    if (!near(pencilled, back, 2 * TOLERANCE))
      throw new Error(`line ${number} is at ${pencilled}, the blade at ${back}`);
    const turned = (this.#truth.opening === 'right') !== this.#report.layers[layer]!.bevel.reverse;
    const way = turned ? -WAY[side] : WAY[side];
    const [from, to] = [row.start, row.stop].map(({ edge, mm }) => this.#from(edge as Side, mm));
    return [from! + way * this.#truth.start, to! + way * this.#truth.stop];
  }
}
