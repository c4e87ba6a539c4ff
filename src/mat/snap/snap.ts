import type { Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { type Problem, warning } from '../../problems/problem.ts';
import { shapeOf } from '../../shapes/shapes.ts';
import { showLength } from '../../units/print.ts';
import { LEAST_OVERLAP } from '../checks/opening.ts';
import { guideZero, underBar } from '../guide-reading.ts';
import type { Moved } from '../model.ts';
import { openingName } from '../names.ts';
import { placeOpening } from '../placed.ts';
import { AGREEMENT } from '../reasons/contradiction.ts';
import type { AllSizes, Sizes } from '../sizes/model.ts';
import type { SolvedSizes } from '../sizes/sizes.ts';
import { AXES, type Axis } from '../sizes/unknowns.ts';
import { type Scale, snapGroup } from './group.ts';

export interface Snapped {
  readonly sizes: AllSizes;
  readonly moved: readonly Moved[];
  readonly warnings: readonly Problem[];
}

interface SnappedOne {
  readonly sizes: Sizes;
  readonly moved: readonly Moved[];
  readonly warnings: readonly Problem[];
}

/** A move of one edge of the opening, inwards; the border grows by it. */
type Move = number;

/**
 * It is the guide's reading that falls on the graduation: its correction and the thickness of the board shift the borders
 * that make it, and its factor stretches them. For a reverse bevel it reads from the far edge to the same line.
 */
function scaleOf(job: Job, { extent }: Axis, outer: AllSizes['outer']): Scale {
  const { guide, graduation } = job.bench;
  const { bevel } = job.mat.layers[0]!;
  const zero = guideZero(guide, underBar(job, 0), bevel);
  return { zero: bevel.reverse ? outer[extent] - zero : zero, step: graduation * guide.b };
}

/** From a border to the graduation below and above it; both 0 where it lies on one, but for a rounding. */
function moves(border: number, { zero, step }: Scale): readonly [Move, Move] {
  const below = Math.floor((border - zero) / step) * step - (border - zero);
  const above = below + step;
  return -below <= AGREEMENT || above <= AGREEMENT ? [0, 0] : [below, above];
}

const onGraduation = (border: number, scale: Scale): boolean => moves(border, scale)[1] === 0;

/** The ways to round, the smaller first. Halves cover the artwork, or leave more of a float. */
function tries([below, above]: readonly [Move, Move], floated: boolean): readonly Move[] {
  if (above === 0) return [0];
  const lead = -below - above;
  const upFirst = Math.abs(lead) <= AGREEMENT ? !floated : lead > 0;
  return upFirst ? [above, below] : [below, above];
}

/** True where the artwork stays covered, or free, and the border is still seen; what was too little may grow. */
function hasRoom(job: Job, index: number, sizes: Sizes, side: Side, move: Move): boolean {
  if (sizes.border[side] + move <= (job.mat.frame?.lip ?? 0)) return false;
  const { artwork } = placeOpening(job, index, sizes);
  if (artwork === undefined) return true;
  const sign = artwork.floated ? -1 : 1;
  return sign * move >= 0 || sign * (artwork.overlap[side] + move) >= LEAST_OVERLAP;
}

/** A border that the job states outright: of the one opening, or of one that has its own place. */
function givenBorder(job: Job, index: number, side: Side): number | undefined {
  return job.openings.length === 1 ? job.mat.border[side] : job.openings[index]!.place?.[side];
}

interface AxisMoves {
  readonly moves: Readonly<Partial<Record<Side, Move>>>;
  readonly warnings: readonly Problem[];
}

const still = (...warnings: Problem[]): AxisMoves => ({ moves: {}, warnings });

function refused(path: Problem['path'], message: string): AxisMoves {
  return still(
    warning('snap-not-possible', path, message, 'give a size on the graduation, or take the setting scant or full'),
  );
}

function axisMoves(job: Job, index: number, sizes: Sizes, axis: Axis): AxisMoves {
  const { graduation } = job.bench;
  const show = (mm: number): string => showLength(mm, job.units);
  const scale = scaleOf(job, axis, sizes.outer);
  const off = [axis.near, axis.far].filter((side) => !onGraduation(sizes.border[side], scale));
  if (off.length === 0) return still();
  const size = job.openings[index]!.size;
  if (size !== undefined) {
    const message = `the opening's ${axis.extent} of ${show(size[axis.extent])} is given, so the ${off.join(' and ')} border cannot move to the graduation of ${show(graduation)}`;
    return refused(['openings', index, 'size'], message);
  }
  const fixed = off.find((side) => givenBorder(job, index, side) !== undefined);
  if (fixed !== undefined) {
    const message = `the ${fixed} border of ${show(sizes.border[fixed])} is given and lies off the graduation of ${show(graduation)}`;
    return refused(job.openings.length === 1 ? ['mat', 'border', fixed] : ['openings', index, 'place', fixed], message);
  }
  const floated = job.openings[index]!.float !== undefined;
  const apart = sizes.border[axis.far] - sizes.border[axis.near];
  const alike = off.length === 2 && onGraduation(Math.abs(apart), { ...scale, zero: 0 });
  const groups: readonly (readonly Side[])[] = alike ? [off] : off.map((side) => [side]);
  const found: Partial<Record<Side, Move>> = {};
  const warnings: Problem[] = [];
  for (const sides of groups) {
    const choices = tries(moves(sizes.border[sides[0]!], scale), floated);
    const move = choices.find((each) => sides.every((side) => hasRoom(job, index, sizes, side, each)));
    if (move === undefined) {
      const message = `the ${sides.join(' and ')} border finds no graduation of ${show(graduation)} that leaves the artwork its room`;
      warnings.push(...refused(['bench', 'snap'], message).warnings);
    } else for (const side of sides) found[side] = move;
  }
  return { moves: found, warnings };
}

/**
 * Moves the edges of the opening so that the guide's readings for the top mat lie on the bench's graduation. The mat keeps its size
 * and the artwork its place: what moves is the overlap or the float, which is left 2 mm at least. Opposite edges move
 * alike where their borders differ by whole graduations. Reveals stay, so that every under mat moves with the top mat.
 * A border or an opening that is given is never changed.
 */
function snapOne(job: Job, index: number, sizes: Sizes): SnappedOne {
  if (!job.bench.snap || !(job.bench.graduation > 0)) return { sizes, moved: [], warnings: [] };
  const axes = AXES.map((axis) => axisMoves(job, index, sizes, axis));
  const all: Readonly<Partial<Record<Side, Move>>> = Object.assign({}, ...axes.map((each) => each.moves));
  const by = (side: Side): Move => all[side] ?? 0;
  const grownBy = (lengths: Readonly<Record<Side, number>>) => ({
    top: lengths.top + by('top'),
    right: lengths.right + by('right'),
    bottom: lengths.bottom + by('bottom'),
    left: lengths.left + by('left'),
  });
  const border = grownBy(sizes.border);
  const moved = (['top', 'right', 'bottom', 'left'] as const)
    .filter((side) => by(side) !== 0)
    .map((side) => ({
      what: `${side} border${job.openings.length === 1 ? '' : ` of ${openingName(job, index)}`}`,
      from: sizes.border[side],
      to: border[side],
    }));
  const opening = {
    width: sizes.opening.width - by('left') - by('right'),
    height: sizes.opening.height - by('top') - by('bottom'),
  };
  const snapped = { ...sizes, border, opening };
  return {
    sizes: sizes.overlap === undefined ? snapped : { ...snapped, overlap: grownBy(sizes.overlap) },
    moved,
    warnings: axes.flatMap((each) => each.warnings),
  };
}

/**
 * A group as one, an opening with a place of its own by itself. A shape whose outline is not a matter of its four sides
 * alone stays as it is. Where something was cut already every opening is moved by itself.
 */
export function snap(job: Job, all: SolvedSizes): Snapped {
  if (!job.bench.snap || !(job.bench.graduation > 0)) return { sizes: all, moved: [], warnings: [] };
  const { plan } = all.laid;
  const grouped = plan.group.arranged.flat();
  if (job.openings.length > 1 && grouped.length > 0 && plan.kept === undefined) {
    const made = snapGroup(job, all, (axis) => scaleOf(job, axis, all.outer));
    if (grouped.length === job.openings.length) return made;
    const others = snapEach(job, made.sizes, (index) => !grouped.includes(index));
    return { ...others, moved: [...made.moved, ...others.moved], warnings: [...made.warnings, ...others.warnings] };
  }
  return snapEach(job, all, () => true);
}

function snapEach(job: Job, all: AllSizes, wanted: (index: number) => boolean): Snapped {
  const made = all.openings.map(
    (sizes, index): SnappedOne =>
      wanted(index) && shapeOf(job.openings[index]!.shape).reveals === 'any side'
        ? snapOne(job, index, sizes)
        : { sizes, moved: [], warnings: [] },
  );
  const openings = made.map((each) => each.sizes);
  const least = (side: Side): number => Math.min(...openings.map((each) => each.border[side]));
  const border = { top: least('top'), right: least('right'), bottom: least('bottom'), left: least('left') };
  return {
    sizes: { ...all, border, openings },
    moved: made.flatMap((each) => each.moved),
    warnings: made.flatMap((each) => each.warnings),
  };
}
