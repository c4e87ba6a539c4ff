import type { Size } from '../../geometry/point.ts';
import { SIDES } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { shapeOf } from '../../shapes/shapes.ts';
import { type Excess, excessAt, type Group } from './group.ts';
import type { Unplaced } from './model.ts';
import type { Plan } from './structure.ts';
import { usualStep } from './unknowns.ts';

/** The openings that settle how wide and how high the group is. */
type Spans = Plan['spans'];

/** The one with the greatest length; of equals the first. */
function greatest(indices: readonly number[], length: (index: number) => number): number {
  return indices.reduce((best, index) => (length(index) > length(best) + 1e-9 ? index : best));
}

function spansBy({ arranged, arrange }: Group, sizes: (index: number) => Size): Spans {
  const width = (index: number): number => sizes(index).width;
  const height = arranged.map((row) => greatest(row, (index) => sizes(index).height));
  if (arranged.length === 0) return { width: [], height: [] };
  if (arrange.columns) {
    const columns = Math.max(...arranged.map((row) => row.length));
    const inColumn = (column: number): readonly number[] =>
      arranged.flatMap((row) => (row[column] === undefined ? [] : [row[column]]));
    return { width: Array.from({ length: columns }, (_, column) => greatest(inColumn(column), width)), height };
  }
  const total = (row: readonly number[]): number => row.reduce((sum, index) => sum + width(index), 0);
  // Gaps count as well: of rows alike in width the one with more openings is the longer.
  const widest = arranged.reduce((best, row) => {
    const longer = total(row) - total(best) + (row.length - best.length) * 1e-3;
    return longer > 1e-9 ? row : best;
  });
  return { width: widest, height };
}

/** A first guess, from what each opening says of itself. */
export function roughSpans(job: Job, group: Group): Spans {
  const step = usualStep(job);
  return spansBy(group, (index) => {
    const request = job.openings[index]!;
    const { artwork, size, overlap, float } = request;
    const natural =
      size ?? (artwork === undefined ? shapeOf(request.shape).natural?.(request.fields ?? {}) : undefined);
    if (natural !== undefined) return natural;
    if (artwork === undefined) return { width: 0, height: 0 };
    const [left = step, right = step, top = step, bottom = step] = [
      overlap.left,
      overlap.right,
      overlap.top,
      overlap.bottom,
    ];
    const sign = float === undefined ? -1 : 1;
    const shown = {
      left: float?.left ?? left,
      right: float?.right ?? right,
      top: float?.top ?? top,
      bottom: float?.bottom ?? bottom,
    };
    const width = artwork.width + sign * (shown.left + shown.right);
    const height = artwork.height + sign * (shown.top + shown.bottom);
    const aspect = shapeOf(request.shape).aspect?.(request.fields ?? {});
    if (aspect === undefined) return { width, height };
    // The shorter side of the artwork settles a shape of fixed proportion.
    return { width: Math.min(width, height * aspect), height: Math.min(height, width / aspect) };
  });
}

/** The size of an opening's face in the top mat. */
export function topSize(plan: Plan, made: ReadonlyMap<number, Unplaced>, excess: Excess, index: number): Size {
  const of = plan.group.alikes[index]!;
  const { opening, reveals } = made.get(of)!;
  const [top, right, bottom, left] = SIDES.map(
    (side) => reveals.reduce((sum, reveal) => sum + (reveal?.[side] ?? 0), 0) + excessAt(excess, of, side),
  ) as [number, number, number, number];
  return { width: opening.width + left + right, height: opening.height + top + bottom };
}

export function spansFrom(plan: Plan, made: ReadonlyMap<number, Unplaced>, excess: Excess): Spans {
  return spansBy(plan.group, (index) => topSize(plan, made, excess, index));
}
