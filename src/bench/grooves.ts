import { dot, type Point, plus, times } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import { type Decor, decor, grooveDepth, sideAlong } from '../mat/decor.ts';
import { guideReading } from '../mat/guide-reading.ts';
import type { Mat } from '../mat/model.ts';
import { defined } from '../problems/defined.ts';
import { handHeld, otherHand } from '../shop/head.ts';
import { offScale, reach, scaleUnits, settingOf } from './guide.ts';
import type { Stroke } from './model.ts';
import { beyondCorners, offsetsOn } from './offsets.ts';
import { order, type Unordered } from './order.ts';
import { travelledSides } from './outline.ts';
import { restOf } from './rest.ts';
import { withOneReading } from './settings.ts';
import { barLine, straightedgeLine } from './strokes.ts';

/**
 * One pull of the head along one side of a V-groove, in the FACE view (origin at the mat's top left), since it is cut from
 * there. `face` is the middle of the groove, where its slopes meet; `line` is the groove's edge, where the blade enters.
 */
export interface GrooveStroke extends Stroke {
  /** Which line of its opening, from 1. */
  readonly number: number;
  /** The near edge of the board on the guide comes first; then the far edge, which slopes the other way. */
  readonly pass: 1 | 2;
  /** From the face to where the slopes meet, mm. */
  readonly depth: number;
}

/**
 * The strokes of every V-groove of the top mat, both passes, numbered by themselves in the order of work.
 *
 * A groove is two bevels that meet: each is a bevel cut in a board as thick as the groove is deep, seen from the face,
 * its "face line" being the groove's middle. The first pass has the opening on the head's usual hand and enters inside of the
 * middle; the second, like a reverse bevel, enters outside of it with the far edge on the guide. Marks take the head's offsets
 * at that depth. Nothing is overrun, since it would show: the first pass goes from corner to corner of the middle line, where
 * it stays in what the neighbour takes out; the second to the corners of its own edge.
 */
export function grooveStrokes(mat: Mat, job: Job): readonly GrooveStroke[] {
  const found = decor(mat, job)
    .filter(({ request }) => request.kind === 'groove')
    .flatMap((each) => [...passOf(mat, job, each, 1), ...passOf(mat, job, each, 2)]);
  const { graduation } = job.bench;
  const scale = scaleUnits(graduation, job.units);
  const read = withOneReading(found, (guide) => settingOf(guide, graduation, scale));
  // `order` hands every stroke on as it is, with its number.
  return order(read, 'together').strokes as readonly GrooveStroke[];
}

type Unnumbered = Unordered & Omit<GrooveStroke, keyof Stroke>;

function passOf(mat: Mat, job: Job, { opening, request, number, whole }: Decor, pass: 1 | 2): readonly Unnumbered[] {
  const { head, guide, graduation } = job.bench;
  const depth = grooveDepth(request);
  const half = request.width / 2;
  const second = pass === 2;
  const aside = second ? half : -half;
  const offsets = offsetsOn(head, depth);
  const sides = travelledSides(whole, second ? otherHand(head.opening) : head.opening, aside);
  return sides.flatMap((side): Unnumbered[] => {
    const { direction, outward } = side;
    // In the order of a clockwise travel, so that its name can be told.
    const clockwise = dot({ x: direction.y, y: -direction.x }, outward) > 0;
    const name = clockwise ? sideAlong(side.from, side.to) : sideAlong(side.to, side.from);
    if (request.sides !== undefined && !request.sides.includes(name)) return [];
    const on = second ? half : 0;
    const beyond = beyondCorners(offsets, 0, { before: on, after: on });
    const onLine = (corner: Point, u: number): Point => plus(plus(corner, times(outward, aside)), times(direction, u));
    const towards = second ? times(outward, -1) : outward;
    const distance = reach(mat.outer, side.from, towards);
    const reading = guideReading(guide, distance, depth, { angle: request.angle, reverse: second });
    const oblique = Math.abs(direction.x * direction.y) > 1e-9;
    const beyondGuide = oblique || handHeld(head) || offScale(guide, reading);
    const straightedge = straightedgeLine(head, side);
    const bar = beyondGuide && straightedge === undefined ? barLine(head, side) : undefined;
    return [
      {
        layer: 1,
        opening: opening + 1,
        side: name,
        part: 2 * number - 2 + pass,
        direction,
        line: side.moved,
        face: { from: side.from, to: side.to },
        start: onLine(side.from, -beyond.before),
        stop: onLine(side.to, beyond.after),
        reverse: second,
        guideFrom: second ? 'far' : 'border',
        distance,
        guide: reading,
        setting: settingOf(reading, graduation, scaleUnits(graduation, job.units)),
        ...defined({ straightedge, bar }),
        beyondGuide,
        ...(beyondGuide
          ? { rest: restOf(mat.outer, { bar, straightedge, line: side.moved }, towards, job.units) }
          : {}),
        number,
        pass,
        depth,
      },
    ];
  });
}
