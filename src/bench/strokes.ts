import type { Path } from '../geometry/path.ts';
import { dot, minus, type Point, plus, times } from '../geometry/point.ts';
import type { Side } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import { setback } from '../mat/bevel.ts';
import { CHANGED } from '../mat/checks/as-cut.ts';
import { guideReading, underBar } from '../mat/guide-reading.ts';
import { theNamed } from '../mat/layers.ts';
import type { Mat, MatLayer, MatOpening } from '../mat/model.ts';
import { onOwnBoard } from '../mat/own-board.ts';
import { defined } from '../problems/defined.ts';
import { error, type Problem, warning } from '../problems/problem.ts';
import type { Head } from '../shop/head.ts';
import { handHeld, otherHand } from '../shop/head.ts';
import { showLength } from '../units/print.ts';
import { offScale, reach, scaleUnits, settingOf } from './guide.ts';
import type { Stroke } from './model.ts';
import { beyondCorners, type EndOffsets, offsetsOn, outsideWarning } from './offsets.ts';
import { order, type Unordered, type WorkOrder } from './order.ts';
import { mirror, type TravelledSide, travelledSides } from './outline.ts';
import { restOf } from './rest.ts';
import { withOneReading } from './settings.ts';
import { hasLine, tooShort } from './short-sides.ts';
import { sideName } from './side-name.ts';
import { checkStacking } from './stacking.ts';
import { uncutEnds } from './uncut.ts';
import { checkMarking } from './work/pencil.ts';

/** The strokes come in the order of work. */
export interface BenchWork extends WorkOrder {
  /** Errors too, where the boards cannot be stacked as the job asks. */
  readonly warnings: readonly Problem[];
}

/** A scribe farther than this from its blade is a slip of the pen. Common practice, no source. */
const LONGEST_OFFSET = 50;

/**
 * Every pull of the head that the mat needs, in the back view, numbered in the order of work.
 *
 * The scribe starts and stops as `beyondCorners` says, on the line that is followed on the back. Where a corner of the mat
 * points into the opening, the stroke runs on to the corner on the back: what is not cut there would hold the fallout.
 */
export function strokes(whole: Mat, job: Job): BenchWork {
  const found: Unordered[] = [];
  const warnings: Problem[] = [];
  whole.layers.forEach((layer, layerIndex) => {
    const mat = onOwnBoard(whole, job, layerIndex);
    const offsets = offsetsOn(job.bench.head, layer.board.thickness);
    warnings.push(...offsetWarnings(job, layer, layerIndex, offsets));
    mat.openings.forEach((opening, openingIndex) => {
      const sides = sidesOf(mat, job, layerIndex, openingIndex);
      const cut = strokesOfOpening(mat, job, layerIndex, openingIndex, offsets, sides.filter(hasLine));
      found.push(...cut);
      const lost = sides.filter((side) => !hasLine(side));
      warnings.push(...lost.map((side) => tooShort(job, layer, opening, openingIndex, side)));
      for (const stroke of cut) warnings.push(...markWarnings(mat, job, layer, opening, stroke));
      warnings.push(...beyondWarnings(job, layer, opening, cut));
    });
  });
  const { graduation } = job.bench;
  const scale = scaleUnits(graduation, job.units);
  const work = order(
    withOneReading(found, (guide) => settingOf(guide, graduation, scale)),
    job.bench.stack,
  );
  const marked =
    whole.planned === undefined ? work.strokes : changedFrom(strokes(whole.planned, job).strokes, work.strokes);
  return { ...work, strokes: marked, warnings: [...warnings, ...checkStacking(whole, job), ...checkMarking(job)] };
}

/**
 * How far a stroke runs on beyond the face corners for the corners on the back: a corner of the mat that points into the
 * opening has its back corner out there, in the fallout. What would be cut there of a reverse bevel is the mat itself.
 */
export function runOn(stroke: Pick<Stroke, 'face' | 'line' | 'direction' | 'reverse'>) {
  const { face, line, direction, reverse } = stroke;
  const beyond = (from: Point, to: Point): number => (reverse ? 0 : Math.max(0, dot(minus(to, from), direction)));
  return { before: beyond(line.from, face.from), after: beyond(face.to, line.to) };
}

/** The same strokes, those with another setting than was planned marked. */
function changedFrom(planned: readonly Stroke[], found: readonly Stroke[]): readonly Stroke[] {
  const key = (s: Stroke): string => [s.layer, s.opening, s.side, s.part].join();
  const before = new Map(planned.map((s) => [key(s), s]));
  return found.map((s) => {
    const was = before.get(key(s));
    return was === undefined || Math.abs(was.guide - s.guide) <= CHANGED ? s : { ...s, planned: was.setting };
  });
}

/** The straight sides of an opening in one layer, in the back view, in the order of the travel. */
function sidesOf(mat: Mat, job: Job, layerIndex: number, openingIndex: number): readonly TravelledSide[] {
  const { bevel } = mat.layers[layerIndex]!;
  const { opening } = job.bench.head;
  const outline: Path = mirror(mat.openings[openingIndex]!.layers[layerIndex]!.face, mat.outer.width);
  const aside = setback(underBar(job, layerIndex), bevel);
  return travelledSides(outline, bevel.reverse ? otherHand(opening) : opening, bevel.reverse ? aside : -aside);
}

function strokesOfOpening(
  mat: Mat,
  job: Job,
  layerIndex: number,
  openingIndex: number,
  offsets: EndOffsets,
  sides: readonly TravelledSide[],
): Unordered[] {
  const layer = mat.layers[layerIndex]!;
  const { cut } = mat.openings[openingIndex]!.layers[layerIndex]!;
  const head = job.bench.head;
  const { reverse } = layer.bevel;
  const { graduation } = job.bench;
  // A pattern that is cut through lifts the blade's entry by the thickness of its paper.
  const lifted = underBar(job, layerIndex);
  const aside = setback(lifted, layer.bevel);
  const parts = partNumbers(sides.map(({ outward }) => sideName(outward)));
  return sides.map((side, index) => {
    const { direction, outward } = side;
    const toLine = times(outward, reverse ? aside : -aside);
    const onLine = (face: Point, u: number): Point => plus(plus(face, toLine), times(direction, u));
    const towards = reverse ? times(outward, -1) : outward;
    const distance = reach(mat.outer, side.from, towards);
    const guide = guideReading(job.bench.guide, distance, lifted, layer.bevel);
    const oblique = Math.abs(direction.x * direction.y) > 1e-9;
    const beyondGuide = oblique || handHeld(head) || offScale(job.bench.guide, guide);
    const straightedge = straightedgeLine(head, side);
    const bar = beyondGuide && straightedge === undefined ? barLine(head, side) : undefined;
    const part = parts[index];
    const beyond = beyondCorners(offsets, head.overrun, runOn({ face: side, line: side.moved, direction, reverse }));
    const uncut = uncutEnds(
      { face: side, line: side.moved, direction, reverse },
      aside === 0 ? 1 : layer.setback / aside,
      head.overrun,
    );
    return {
      layer: layerIndex + 1,
      opening: openingIndex + 1,
      side: sideName(outward),
      ...defined({ part }),
      direction,
      line: side.moved,
      face: { from: side.from, to: side.to },
      start: onLine(side.from, -beyond.before),
      stop: onLine(side.to, beyond.after),
      reverse,
      guideFrom: reverse ? 'far' : 'border',
      distance,
      guide,
      setting: settingOf(guide, graduation, scaleUnits(graduation, job.units)),
      ...defined({ straightedge, bar, uncut }),
      beyondGuide,
      ...defined({
        rest: beyondGuide ? restOf(mat.outer, { bar, straightedge, line: side.moved }, towards, job.units) : undefined,
        cut: cut || undefined,
      }),
    };
  });
}

/** Numbers sides that share a name, in the order of the travel; a name that comes once needs none. */
function partNumbers(names: readonly Side[]): readonly (number | undefined)[] {
  const seen = new Map<Side, number>();
  return names.map((name) => {
    if (names.filter((each) => each === name).length === 1) return undefined;
    const number = (seen.get(name) ?? 0) + 1;
    seen.set(name, number);
    return number;
  });
}

/**
 * Where the bar of a board-mounted cutter lies, for a side that the guide cannot be set for: on the hand away from the
 * usual opening, which is the border side, but for a reverse bevel, whose opening lies under the bar.
 */
export function barLine(head: Head, side: TravelledSide): Stroke['bar'] {
  if (head.bar === undefined) return undefined;
  const left: Point = { x: side.direction.y, y: -side.direction.x };
  const shift = times(left, head.opening === 'left' ? -head.bar : head.bar);
  return { from: plus(side.moved.from, shift), to: plus(side.moved.to, shift) };
}

/**
 * The straightedge lies on a fixed hand of the head. A head says on which side of its usual cut that is; a reverse
 * bevel swaps border and opening about the travel, so that the straightedge then lies on the other of the two.
 */
export function straightedgeLine(head: Head, side: TravelledSide): Stroke['straightedge'] {
  if (head.straightedge === 0) return undefined;
  const onLeft = head.straightedgeOn === 'opening' ? head.opening === 'left' : head.opening === 'right';
  const left: Point = { x: side.direction.y, y: -side.direction.x };
  const shift = times(left, onLeft ? head.straightedge : -head.straightedge);
  return { from: plus(side.moved.from, shift), to: plus(side.moved.to, shift) };
}

/** Sides that the guide cannot be set for and that no drawn line helps with. */
function beyondWarnings(job: Job, layer: MatLayer, opening: MatOpening, cut: readonly Unordered[]): readonly Problem[] {
  const beyond = cut.filter((s) => s.beyondGuide && s.bar === undefined && s.straightedge === undefined);
  if (beyond.length === 0) return [];
  const sides = [...new Set(beyond.map((s) => s.side))].join(', ');
  const { longest, shortest } = job.bench.guide;
  const long = longest !== undefined && beyond.every((s) => s.guide > longest);
  const low = shortest === undefined ? 'below its zero' : `below its shortest, ${showLength(shortest, job.units)}`;
  const why = long ? `which reaches ${showLength(longest, job.units)}` : `${low}, or for a side that slants`;
  return [
    warning(
      'guide-beyond',
      ['openings', beyond[0]!.opening - 1],
      `the guide, ${why}, cannot be set for ${opening.name} in ${theNamed(layer.name)}: ${sides}`,
      `give the head ${job.bench.head.id} its bar (bar to blade), so that the pattern draws the line to lay the bar on; or cut along a straightedge`,
    ),
  ];
}

function offsetWarnings(job: Job, layer: MatLayer, layerIndex: number, offsets: EndOffsets): readonly Problem[] {
  const { id } = job.bench.head;
  const hint = 'calibrate the head on this board, or try the marks on an offcut of it first';
  const problems = [...outsideWarning(layer, layerIndex, `the head ${id}`, offsets.outside, hint)];
  const path = ['bench', 'head'];
  for (const [name, offset] of [
    ['start', offsets.start],
    ['stop', offsets.stop],
  ] as const) {
    if (Math.abs(offset) > LONGEST_OFFSET) {
      problems.push(
        warning(
          'head-offset-absurd',
          [...path, name],
          `the head's ${name} offset is ${showLength(offset, job.units)}, farther than any scribe stands from its blade`,
          'measure it again from the scribe to the blade; a positive offset has the blade ahead of the scribe',
        ),
      );
    }
  }
  return problems;
}

function markWarnings(mat: Mat, job: Job, layer: MatLayer, opening: MatOpening, stroke: Unordered): Problem[] {
  const where = `the ${stroke.side} side of ${opening.name} in ${theNamed(layer.name)}`;
  const path = ['openings', stroke.opening - 1];
  const ahead = minus(stroke.stop, stroke.start);
  if (ahead.x * stroke.direction.x + ahead.y * stroke.direction.y <= 0) {
    return [
      warning(
        'stroke-too-short',
        path,
        `on ${where} the stop mark would lie before the start mark`,
        'the side is too short for this head: cut it by hand with a knife, or check the offsets of the head',
      ),
    ];
  }
  // Together, the under mats are trimmed before they are cut; apart, every board still has its full size.
  const board =
    job.bench.stack === 'together'
      ? { ...layer.blankBox, x: mat.outer.width - layer.blankBox.x - layer.blankBox.width }
      : { x: 0, y: 0, ...mat.outer };
  const onBoard = (p: Point): boolean =>
    p.x >= board.x - 1e-9 &&
    p.y >= board.y - 1e-9 &&
    p.x <= board.x + board.width + 1e-9 &&
    p.y <= board.y + board.height + 1e-9;
  // Where a very sharp corner points into the opening, its mitre on the back may lie beyond the edge.
  if (!onBoard(stroke.line.from) || !onBoard(stroke.line.to)) {
    const message = `on ${where} the line on the back would run off the board, to where it meets its neighbour`;
    return [error('line-off-board', path, message, 'make that corner blunter, the border wider or the board thinner')];
  }
  return (['start', 'stop'] as const)
    .filter((end) => !onBoard(stroke[end]))
    .map((end) =>
      warning(
        'mark-off-board',
        path,
        `on ${where} the ${end} mark would lie off the board`,
        'make the border wider, or lay waste board of the same thickness against the edge and carry the mark over onto it',
      ),
    );
}
