import type { Box } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import { type Blank, type JobToCut, jobName } from '../../stock/blanks.ts';
import type { NewPlan } from '../../stock/booking/plan-note.ts';
import { layersBefore } from '../../stock/fallout.ts';
import type { BoardLayouts, Layout } from '../../stock/layouts.ts';
import type { StockPlan } from '../../stock/planner/model.ts';
import type { Instruction } from '../../stock/planner/sequence.ts';
import { type StopGroup, stopGroups, type Tape } from './words.ts';

/** A day's cutting as plain data: every length in mm, besides what is printed. */
export interface StockRecord {
  /** Its number and what booking it changes, where there is a shop's file to book it in. */
  readonly plan?: NewPlan;
  readonly units: Tape['units'];
  readonly graduation: number;
  /** New sheets over all boards. */
  readonly sheets: number;
  /** Where every board has a price. */
  readonly cost?: number;
  readonly boards: readonly BoardRecord[];
}

export interface BoardRecord extends Shares {
  readonly board: string;
  readonly name: string;
  readonly code?: string;
  readonly colour?: string;
  readonly kind: 'board' | 'backing';
  readonly thickness: number;
  readonly blanks: number;
  /** New sheets by size. */
  readonly fetch: readonly { readonly sheet: string; readonly count: number }[];
  /** From the shelf, by what is written on them. */
  readonly shelf: readonly string[];
  /** Fallouts used. */
  readonly fallouts: number;
  readonly sheets: number;
  /** What counts first, and what bound and verdict are about. */
  readonly first: StockPlan['first'];
  readonly bound: StockPlan['bound'];
  readonly verdict: string;
  /** Above the bound. */
  readonly gap: number;
  readonly cost?: number;
  /** What kept offcuts are worth, off the cost. */
  readonly credit?: number;
  /** The best plan by the other rule. */
  readonly other?: StockPlan['other'];
  readonly kerf: number;
  readonly layouts: readonly LayoutRecord[];
}

/** Of the area of all that is cut. */
export interface Shares {
  readonly yield: number;
  readonly kept: number;
  readonly waste: number;
}

/** The openings that must be cut before a fallout is free: of one piece of that job, in these layers. */
export interface After {
  /** From 1, as the jobs were given. */
  readonly job: number;
  readonly layers: readonly string[];
}

export interface LayoutRecord extends Size {
  /** As the pages name them. */
  readonly numbers: readonly number[];
  readonly from: { readonly kind: 'sheet' | 'offcut' | 'fallout'; readonly of: string; readonly after?: After };
  readonly pieces: readonly (Box & {
    readonly key: string;
    readonly job: number;
    readonly title: string;
    readonly name: string;
    readonly turned: boolean;
  })[];
  readonly offcuts: readonly (Box & { readonly marks: readonly string[] })[];
  readonly settings: number;
  readonly cuts: number;
  readonly turns: number;
  /** As printed: a group for each setting of the stop. */
  readonly stops: readonly StopGroup[];
  /** The same, for machines. */
  readonly instructions: readonly Instruction[];
}

export function stockRecord(
  day: readonly BoardLayouts[],
  jobs: readonly JobToCut[],
  tape: Tape,
  plan?: NewPlan,
): StockRecord {
  const boards = day.map((each) => boardRecord(each, jobs, tape));
  const costs = boards.flatMap(({ cost }) => (cost === undefined ? [] : [cost]));
  const cost = costs.reduce((sum, each) => sum + each, 0);
  return {
    ...defined({ plan }),
    units: tape.units,
    graduation: tape.graduation,
    sheets: boards.reduce((sum, { sheets }) => sum + sheets, 0),
    ...defined({ cost: costs.length === boards.length ? cost : undefined }),
    boards,
  };
}

function boardRecord({ board, layouts }: BoardLayouts, jobs: readonly JobToCut[], tape: Tape): BoardRecord {
  const { material, plan, blanks, input } = board;
  const taken = (kind: 'sheet' | 'offcut'): Map<string, number> => {
    const counts = new Map<string, number>();
    for (const { from, numbers } of layouts)
      if (from.kind === kind) counts.set(from.id, (counts.get(from.id) ?? 0) + numbers.length);
    return counts;
  };
  return {
    board: material.id,
    name: material.name,
    ...defined({ code: material.code, colour: material.colour }),
    kind: material.kind,
    thickness: material.thickness,
    blanks: [...blanks.values()].reduce((sum, { count }) => sum + count, 0),
    fetch: [...taken('sheet')].map(([sheet, count]) => ({ sheet, count })),
    shelf: [...taken('offcut').keys()],
    fallouts: plan.sheets.filter(({ origin }) => origin.kind === 'fallout').length,
    sheets: plan.count,
    first: plan.first,
    bound: plan.bound,
    verdict: plan.verdict,
    gap: plan.gap,
    ...defined({ cost: plan.cost, credit: plan.credit, other: plan.other }),
    kerf: input.options?.kerf ?? 0,
    ...shares(plan),
    layouts: layouts.map((layout) => layoutRecord(layout, jobs, tape)),
  };
}

function shares({ area }: StockPlan): Shares {
  const of = (part: number): number => (area.used === 0 ? 0 : part / area.used);
  return { yield: of(area.pieces), kept: of(area.offcuts), waste: of(area.waste) };
}

function afterOf({ job, layer }: Blank, jobs: readonly JobToCut[]): After {
  const { mat, job: own } = jobs[job]!;
  const layers = layer === undefined ? [] : layersBefore(mat, own, layer);
  return { job: job + 1, layers: layers.map((each) => mat.layers[each]!.name) };
}

function layoutRecord(layout: Layout, jobs: readonly JobToCut[], tape: Tape): LayoutRecord {
  const { from, numbers, width, height, pieces, offcuts, sequence } = layout;
  return {
    numbers,
    from: {
      kind: from.kind,
      of: from.kind === 'fallout' ? `${jobName(jobs, from.blank.job)}, ${from.blank.name}` : from.id,
      ...defined({ after: from.kind === 'fallout' ? afterOf(from.blank, jobs) : undefined }),
    },
    width,
    height,
    pieces: pieces.map(({ key, blank, turned, x, y, width: w, height: h }) => ({
      key,
      job: blank.job + 1,
      title: jobs[blank.job]!.job.title,
      name: blank.name,
      turned,
      x,
      y,
      width: w,
      height: h,
    })),
    offcuts,
    settings: sequence.settings,
    cuts: sequence.cuts,
    turns: sequence.turns,
    stops: stopGroups(layout, jobs, tape),
    instructions: sequence.instructions,
  };
}
