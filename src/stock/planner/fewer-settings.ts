import { worthKept } from './kept.ts';
import { layOutSheet, sheetToLay } from './layout.ts';
import { Random } from './search/random.ts';
import { Spot } from './search/spot.ts';
import { cutSequence } from './sequence.ts';
import type { Task } from './task.ts';
import { type FlatLayout, flatLayout, layFlat, typesOf } from './trees/flat.ts';
import { Forest } from './trees/forest.ts';
import { Stops } from './trees/stops.ts';

/** What it takes to lay one blank, and to work out the sequence of one cut, in steps of the search. */
const STEPS_PER_BLANK = 40;
const STEPS_PER_CUT = 200;
/** A sheet with more blanks stays as it is: working out the sequence takes more than in proportion. */
const MOST_BLANKS = 60;
/** More attempts than these find no better order on one sheet. */
const MOST_ATTEMPTS = 400;
/** A setting is reading and turning a wheel: it counts as much as so many cuts or turns of the board. */
const SETTING = 2;

/**
 * Lays the pieces of each sheet anew so that the stop is set less often: the same pieces on the same sheet, its
 * offcuts worth no less; sheets with the same pieces are laid alike. Returns a new forest of the same sheets, without those
 * that lie empty.
 */
export function fewerSettings(task: Task, forest: Forest, longestCut: number, steps: number): Forest {
  const random = new Random(1);
  const groups = samePieces(task, forest);
  const tidied = new Forest(forest.instance);
  for (const { stock, layout, times } of groups) {
    const best = new OneSheet(task, stock, layout, longestCut, random).best(steps / groups.length);
    for (let i = 0; i < times; i++) layFlat(tidied, stock, best);
  }
  return tidied;
}

interface SamePieces {
  readonly stock: number;
  /** That with the largest offcut. */
  layout: FlatLayout;
  offcut: number;
  times: number;
}

function samePieces(task: Task, forest: Forest): readonly SamePieces[] {
  const groups = new Map<string, SamePieces>();
  const alone = new Forest(forest.instance);
  for (let sheet = 0; sheet < forest.sheets; sheet++) {
    if (forest.isEmpty(sheet)) continue;
    const stock = forest.stock[sheet]!;
    const layout = flatLayout(forest, forest.root[sheet]!);
    const offcut = keptOf(alone, stock, layout, task);
    const key = [stock, ...typesOf(layout).sort((a, b) => a - b)].join(' ');
    const known = groups.get(key);
    if (known === undefined) groups.set(key, { stock, layout, offcut, times: 1 });
    else {
      known.times++;
      if (offcut > known.offcut) Object.assign(known, { layout, offcut });
    }
  }
  return [...groups.values()];
}

function keptOf(alone: Forest, stock: number, layout: FlatLayout, task: Task): number {
  layFlat(alone, stock, layout);
  const area = worthKept(alone, task);
  alone.close(0);
  return area;
}

class OneSheet {
  private readonly forest: Forest;
  private readonly blank: Forest;
  private readonly spot = new Spot();
  private readonly types: readonly number[];

  constructor(
    private readonly task: Task,
    private readonly stock: number,
    private readonly given: FlatLayout,
    private readonly longestCut: number,
    private readonly random: Random,
  ) {
    const { instance } = task;
    const counts = new Int32Array(instance.types.length);
    for (const type of typesOf(given)) counts[type]!++;
    this.types = [...counts.keys()].filter((type) => counts[type]! > 0);
    this.blank = new Forest(instance);
    this.blank.askOnly(counts);
    this.forest = new Forest(instance);
    this.forest.copy(this.blank);
    layFlat(this.forest, stock, given);
    this.blank.open(stock);
  }

  best(steps: number): FlatLayout {
    const blanks = this.blank.missingCount;
    if (blanks > MOST_BLANKS) return this.given;
    let best = this.given;
    let work = this.work();
    const offcut = worthKept(this.forest, this.task);
    let left = steps;
    for (let attempt = 0; attempt < MOST_ATTEMPTS && left > 0 && work > SETTING; attempt++) {
      left -= STEPS_PER_BLANK * blanks;
      if (!this.layAnew() || worthKept(this.forest, this.task) < offcut) continue;
      left -= STEPS_PER_CUT * blanks;
      const other = this.work();
      if (other < work) [best, work] = [flatLayout(this.forest, this.forest.root[0]!), other];
    }
    return best;
  }

  /** Kind after kind in an order by chance, each blank where it asks for the fewest new settings. */
  private layAnew(): boolean {
    const { forest, random, spot } = this;
    forest.copy(this.blank);
    const stops = new Stops(random.below(16) / 8);
    spot.stops = stops;
    const order = this.types.map((type) => ({ type, key: this.sizeOf(type) * (1 + random.below(256) / 64) }));
    order.sort((a, b) => b.key - a.key);
    for (const { type } of order) {
      while (forest.missing[type]! > 0) {
        if (!spot.find(forest, type, random)) return false;
        stops.add(forest, spot.leftover, spot.width, spot.height, spot.yFirst);
        forest.place(spot.leftover, type, spot.width, spot.height, spot.yFirst);
      }
    }
    return true;
  }

  private sizeOf(type: number): number {
    const { width, height } = this.task.instance.types[type]!;
    return width * height;
  }

  private work(): number {
    const { task, forest, longestCut } = this;
    const hand = (type: number) => ({ piece: task.members[type]![0]!, copy: 1 });
    const tree = layOutSheet(task, forest, sheetToLay(task.supplies[this.stock]!, 0), longestCut, hand);
    const { settings, cuts, turns } = cutSequence(tree);
    return SETTING * settings + cuts + turns;
  }
}
