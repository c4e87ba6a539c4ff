import { mirroredSide } from '../../geometry/sides.ts';
import { defined } from '../../problems/defined.ts';
import type { BenchJob } from '../bench-job.ts';
import type { Stroke } from '../model.ts';
import { beginning, ending } from './lot-steps.ts';
import { type LotWork, lotsOf, type Wait } from './lots.ts';
import type { CutStep, Lot, OrderOfWork, WorkStep } from './model.ts';
import { OPPOSITE } from './pencil.ts';
import { TOP_UP, turnedAsGiven, turnedLeast } from './turned.ts';
import { dayVisits, ownVisits, type WorkVisit } from './visits.ts';

/** How one job is worked alone, or several as one day; see `OrderOfWork` for what it holds. */
export function work(jobs: readonly BenchJob[], waits: readonly Wait[] = []): OrderOfWork {
  const lots = lotsOf(jobs, waits);
  const visits = jobs.length === 1 ? ownVisits(lots) : dayVisits(lots);
  const bench = new Bench(lots, visits);
  visits.forEach((_, i) => {
    bench.visit(i);
  });
  return { lots: lots.map(({ lot }) => lot), steps: bench.steps, settings: bench.settings };
}

/** What lies on the bench and how the tools are set, while the steps are written down. */
class Bench {
  readonly steps: WorkStep[] = [];
  settings = 0;
  readonly #lots: readonly LotWork[];
  readonly #visits: readonly WorkVisit[];
  readonly #begun = new Set<number>();
  readonly #finished = new Set<number>();
  /** Strokes left of each lot. */
  readonly #left: number[];
  readonly #alone: boolean;
  #head = '';
  #depth = '';
  #guide = '';
  #lying: { readonly lot: number; readonly piece: number; readonly facing: number } | undefined;

  constructor(lots: readonly LotWork[], visits: readonly WorkVisit[]) {
    this.#lots = lots;
    this.#visits = visits;
    this.#alone = new Set(lots.map(({ lot }) => lot.job)).size === 1;
    this.#left = lots.map(({ strokes }) => strokes.length);
  }

  visit(index: number): void {
    const { key, cuts } = this.#visits[index]!;
    this.#takeHead(this.#lots[cuts[0]!.lot]!.lot);
    if (index === 0 || this.#visits[index - 1]!.key !== key) this.#beginRound(index);
    let waiting = cuts;
    while (waiting.length > 0) {
      // What waits for others of this very setting is cut after them, both passes of a thick board.
      const now = waiting.filter(({ lot }) => this.#mayBegin(lot));
      if (now.length === 0) throw new RangeError('a lot is cut before what it waits for');
      for (const { lot } of now) this.#begin(lot);
      this.#cutAll(this.#visits[index]!, now);
      for (const { lot, strokes } of now) this.#leave(lot, strokes.length);
      waiting = waiting.filter((each) => !now.includes(each));
    }
  }

  #mayBegin(lot: number): boolean {
    return this.#lots[lot]!.lot.after.every((other) => this.#finished.has(other));
  }

  #takeHead({ head }: Lot): void {
    const said = `${head.id} ${head.angle}`;
    if (said === this.#head) return;
    this.#head = said;
    this.#depth = '';
    this.steps.push({ kind: 'head', head });
  }

  /** All that comes up in this round and waits for nothing in it is marked before the tools are set. */
  #beginRound(index: number): void {
    const { key } = this.#visits[index]!;
    for (let i = index; this.#visits[i]?.key === key; i++) {
      for (const { lot } of this.#visits[i]!.cuts) if (this.#mayBegin(lot)) this.#begin(lot);
    }
  }

  #begin(lot: number): void {
    if (this.#begun.has(lot)) return;
    this.#begun.add(lot);
    this.steps.push(...beginning(this.#lots[lot]!, lot));
  }

  #leave(lot: number, strokes: number): void {
    this.#left[lot]! -= strokes;
    if (this.#left[lot] !== 0) return;
    this.#finished.add(lot);
    const { job } = this.#lots[lot]!.lot;
    const isLast = this.#lots.every((other, i) => other.lot.job !== job || this.#finished.has(i));
    this.steps.push(...ending(this.#lots[lot]!, lot, isLast));
  }

  #cutAll({ setting }: WorkVisit, cuts: WorkVisit['cuts']): void {
    const cut = cuts.filter(({ strokes }) => strokes.length > 0);
    if (cut.length === 0) return;
    const { depths, head } = this.#lots[cut[0]!.lot]!.lot;
    // A thin board's depth is set before the guide; a thick one's within each setting, once for each pass.
    if (depths.length === 1) this.#setDepth(depths, 0);
    if (!head.handHeld) this.#setGuide(setting);
    depths.forEach((_, pass) => {
      this.#setDepth(depths, pass);
      for (const { lot, strokes } of cut) {
        for (let piece = 1; piece <= this.#lots[lot]!.lot.count; piece++) {
          this.#cutPiece(lot, piece, strokes, pass, setting);
        }
      }
    });
  }

  #setDepth(depths: readonly number[], pass: number): void {
    const depth = depths[pass]!;
    if (this.#depth === `${depth}`) return;
    this.#depth = `${depth}`;
    this.steps.push({ kind: 'depth', depth, pass: pass + 1, passes: depths.length });
  }

  #setGuide(setting: WorkVisit['setting']): void {
    const said = setting === undefined ? 'off' : `${setting.text} ${setting.sense}`;
    if (said === this.#guide) return;
    this.#guide = said;
    this.settings++;
    this.steps.push(setting === undefined ? { kind: 'guide-off' } : { kind: 'guide', setting });
  }

  #cutPiece(lot: number, piece: number, strokes: readonly Stroke[], pass: number, setting: WorkVisit['setting']): void {
    const { lot: own } = this.#lots[lot]!;
    const lies = this.#lying?.lot === lot && this.#lying.piece === piece;
    const from = lies ? this.#lying!.facing : TOP_UP;
    // Alone, a job is cut in the order of its numbers, which turns the board least over all settings.
    const { turned, to } = this.#alone ? turnedAsGiven(strokes, from) : turnedLeast(strokes, from);
    this.#lying = { lot, piece, facing: to };
    turned.forEach(({ stroke, turn }, i) => {
      const how = { piece, pass, turn, laidOn: !lies && i === 0 };
      this.steps.push(cutStep(own, lot, stroke, how, setting));
    });
  }
}

function cutStep(
  own: Lot,
  lot: number,
  stroke: Stroke,
  {
    piece,
    pass,
    turn,
    laidOn,
  }: { readonly piece: number; readonly pass: number; readonly turn: number; readonly laidOn: boolean },
  setting: WorkVisit['setting'],
): CutStep {
  const side = own.up === 'back' ? mirroredSide(stroke.side) : stroke.side;
  const far = stroke.guideFrom === 'far';
  const slants = Math.abs(stroke.direction.x * stroke.direction.y) > 1e-9;
  return {
    kind: 'cut',
    lot,
    piece,
    of: own.count,
    stroke: stroke.order,
    opening: stroke.opening,
    side,
    pass: pass + 1,
    depth: own.depths[pass]!,
    laidOn,
    turn,
    far,
    line: stroke.line,
    start: stroke.start,
    stop: stroke.stop,
    ...defined({
      setting,
      edge: slants ? undefined : far ? OPPOSITE[side] : side,
      part: stroke.part,
      rest: stroke.rest,
      planned: stroke.planned,
      cut: stroke.cut,
    }),
  };
}
