import { type Box, box } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { BySide } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { openingName } from '../names.ts';
import type { AllSizes, Unplaced } from './model.ts';
import { topSize } from './spans.ts';
import { type Plan, rowGap } from './structure.ts';
import { border, gap, HORIZONTAL, outer as outerName, place, VERTICAL } from './unknowns.ts';

/** Every opening in its place: the face openings of the top mat, laid out from the solved lengths. */
export function arranged(
  plan: Plan,
  lengths: ReadonlyMap<string, number>,
  made: ReadonlyMap<number, Unplaced>,
): AllSizes {
  const { job, group } = plan;
  const outer = outerOf(lengths);
  const sizes = job.openings.map((_, index) => topSize(plan, made, plan.excess, index));
  const boxes: (Box | undefined)[] = job.openings.map(() => undefined);
  layRows(plan, lengths, sizes, boxes);
  for (const index of group.placed) {
    const at = { x: lengths.get(place('left', index))!, y: lengths.get(place('top', index))! };
    boxes[index] = box(at.x, at.y, sizes[index]!.width, sizes[index]!.height);
  }
  layBelow(job, group.below, sizes, boxes);
  const borders = boxes.map((each) => bordersOf(outer, each!));
  const least = (side: keyof BySide<number>): number => Math.min(...borders.map((each) => each[side]));
  return {
    outer,
    border: single(plan, lengths) ?? {
      top: least('top'),
      right: least('right'),
      bottom: least('bottom'),
      left: least('left'),
    },
    openings: job.openings.map((_, index) => ({
      ...made.get(group.alikes[index]!)!,
      outer,
      border: (job.openings.length === 1 ? single(plan, lengths) : undefined) ?? borders[index]!,
    })),
  };
}

/** The solved borders themselves, to the digit, where they go round everything. */
function single({ group }: Plan, lengths: ReadonlyMap<string, number>): BySide<number> | undefined {
  if (group.arranged.length === 0 || group.placed.length + group.below.length > 0) return undefined;
  const get = (side: keyof BySide<number>): number => lengths.get(border(side))!;
  return { top: get('top'), right: get('right'), bottom: get('bottom'), left: get('left') };
}

function bordersOf(outer: Size, { x, y, width, height }: Box): BySide<number> {
  return { left: x, top: y, right: outer.width - x - width, bottom: outer.height - y - height };
}

function layRows(
  plan: Plan,
  lengths: ReadonlyMap<string, number>,
  sizes: readonly Size[],
  boxes: (Box | undefined)[],
): void {
  const { group, spans } = plan;
  if (group.arranged.length === 0) return;
  const across = lengths.get(gap(HORIZONTAL)) ?? 0;
  const down = lengths.get(gap(VERTICAL)) ?? 0;
  const { times, more } = rowGap(group);
  const left = lengths.get(border('left'))!;
  const wide = spans.width.map((span) => sizes[span]!.width);
  const whole = wide.reduce((sum, width) => sum + width, 0) + (wide.length - 1) * across;
  let y = lengths.get(border('top'))!;
  group.arranged.forEach((row, r) => {
    const height = sizes[spans.height[r]!]!.height;
    const own = row.reduce((sum, index) => sum + sizes[index]!.width, 0) + (row.length - 1) * across;
    let x = group.arrange.columns ? left : left + (whole - own) / 2;
    row.forEach((index, column) => {
      const size = sizes[index]!;
      const track = group.arrange.columns ? wide[column]! : size.width;
      boxes[index] = box(
        x + (track - size.width) / 2,
        y + aligned(group.arrange.align, height - size.height),
        size.width,
        size.height,
      );
      x += track + across;
    });
    y += height + down * times + more;
  });
}

function aligned(align: 'centre' | 'base' | 'top', slack: number): number {
  switch (align) {
    case 'centre':
      return slack / 2;
    case 'base':
      return slack;
    case 'top':
      return 0;
    default: {
      const never: never = align;
      return never;
    }
  }
}

/** Openings under others, as far down the chain as it goes; a ring of them was refused before. */
function layBelow(job: Job, below: readonly number[], sizes: readonly Size[], boxes: (Box | undefined)[]): void {
  const names = job.openings.map((_, index) => openingName(job, index));
  let waiting = [...below];
  while (waiting.length > 0) {
    const ready = waiting.filter(
      (index) => boxes[names.indexOf(job.openings[index]!.place!.below!.opening)] !== undefined,
    );
    if (ready.length === 0) return;
    for (const index of ready) {
      const { opening, gap: by } = job.openings[index]!.place!.below!;
      const above = boxes[names.indexOf(opening)]!;
      const size = sizes[index]!;
      boxes[index] = box(
        above.x + (above.width - size.width) / 2,
        above.y + above.height + by,
        size.width,
        size.height,
      );
    }
    waiting = waiting.filter((index) => !ready.includes(index));
  }
}

const outerOf = (lengths: ReadonlyMap<string, number>): Size => ({
  width: lengths.get(outerName(HORIZONTAL))!,
  height: lengths.get(outerName(VERTICAL))!,
});
