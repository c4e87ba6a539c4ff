import { type Box, box, centre, right } from '../../geometry/box.ts';
import { distance, dot, type Point, type Size } from '../../geometry/point.ts';
import { mirroredSide, type Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import type { Mat, OpeningLayer } from '../../mat/model.ts';
import { onOwnBoard } from '../../mat/own-board.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { offEllipse, type PinsAndLoop, pinsAndLoop } from '../../shapes/by-hand.ts';
import type { Units } from '../../units/units.ts';
import { settingOf } from '../guide.ts';
import type { Setting, Stroke } from '../model.ts';
import { finest } from '../rest.ts';

/** What is measured on the back from an edge of the board, square to it. Edges are named as they lie before the one who marks. */
export interface Measured {
  readonly edge: Side;
  /** mm. */
  readonly distance: number;
  /** As it is printed: to a 32nd with scant or full, or half a millimetre. */
  readonly setting: Setting;
}

/**
 * A stroke marked out by pencil. The line is measured from the edge that its guide rests on, S and E each from the edge
 * that sets the side crossing there: a blank that came out a little large would else overcut by as much.
 */
export interface PencilRow {
  /** Its number. */
  readonly stroke: number;
  readonly opening: number;
  readonly side: Side;
  readonly line: Measured;
  readonly start: Measured;
  readonly stop: Measured;
}

/** The line of an oval, drawn by two pins and a loop. */
export interface PencilOval extends PinsAndLoop {
  readonly opening: number;
  /** Where its axes lie: the upright one from the edge at the left or right, the level one from the top or bottom. */
  readonly upright: Measured;
  readonly level: Measured;
  readonly size: Size;
}

/** All that is marked on the back of one layer without a pattern, and what cannot be. */
export interface PencilMarks {
  readonly rows: readonly PencilRow[];
  readonly ovals: readonly PencilOval[];
  /** Openings that need the pattern: other curves, and sides that slant. */
  readonly patterned: readonly number[];
}

/** Pins and loop draw an ellipse; the line on the back may lie so far off it, mm. Common practice, no source. */
const NEAR_ENOUGH = 0.2;

export const OPPOSITE: Readonly<Record<Side, Side>> = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' };

/** The edge of the board that a stroke's guide rests on, as it lies before the one who cuts with the back up. */
const guideEdge = ({ side, guideFrom }: Pick<Stroke, 'side' | 'guideFrom'>): Side =>
  guideFrom === 'far' ? OPPOSITE[mirroredSide(side)] : mirroredSide(side);

/** A pattern that stays on the board cannot be left out: its thickness is part of the line. */
export function checkMarking({ bench, print }: Pick<Job, 'bench' | 'print'>): readonly Problem[] {
  if (bench.mark !== 'pencil' || print.transfer === 'prick') return [];
  const message = 'the back is marked out by pencil, but print.transfer wants the pattern cut through';
  return [error('pencil-cut-through', ['bench', 'mark'], message, 'take mark: pencil or transfer: cut-through out')];
}

/** Everything that is marked on the back of a layer, from 1. */
export function pencilMarks(whole: Mat, job: Job, strokes: readonly Stroke[], layer: number): PencilMarks {
  const mat = onOwnBoard(whole, job, layer - 1);
  const measure = measurer(mat.outer, job.units);
  const rows: PencilRow[] = [];
  const ovals: PencilOval[] = [];
  const patterned: number[] = [];
  mat.openings.forEach((opening, index) => {
    const own = strokes.filter((stroke) => stroke.layer === layer && stroke.opening === index + 1);
    const shape = opening.layers[layer - 1]!;
    if (opening.shape === 'oval') {
      const oval = ovalOf(shape, index + 1, mat.outer, measure);
      if (oval === undefined) patterned.push(index + 1);
      else ovals.push(oval);
      return;
    }
    const found = own.map((stroke) => rowOf(stroke, own, measure));
    const straight = shape.face.segments.every(({ kind }) => kind === 'line');
    if (!straight || found.length < shape.face.segments.length || found.includes(undefined)) patterned.push(index + 1);
    else rows.push(...found.flatMap((row) => row ?? []));
  });
  return { rows: rows.sort((a, b) => a.stroke - b.stroke), ovals, patterned };
}

type Measure = (edge: Side, at: Point) => Measured;

const measurer =
  ({ width, height }: Size, units: Units): Measure =>
  (edge, { x, y }) => {
    const mm = { top: y, bottom: height - y, left: x, right: width - x }[edge];
    return { edge, distance: mm, setting: settingOf(mm, finest(units), units) };
  };

/** Undefined for a side that slants, or that none crosses square at an end. */
function rowOf(stroke: Stroke, own: readonly Stroke[], measure: Measure): PencilRow | undefined {
  const { direction, face, line, order, opening, side } = stroke;
  if (Math.abs(direction.x * direction.y) > 1e-9) return undefined;
  const crossing = (at: Point): Stroke | undefined =>
    own.find(
      (other) =>
        other !== stroke &&
        Math.abs(dot(other.direction, direction)) < 1e-9 &&
        (distance(other.face.from, at) < 1e-6 || distance(other.face.to, at) < 1e-6),
    );
  const [before, after] = [crossing(face.from), crossing(face.to)];
  if (before === undefined || after === undefined) return undefined;
  return {
    stroke: order,
    opening,
    side: mirroredSide(side),
    line: measure(guideEdge(stroke), line.from),
    start: measure(guideEdge(before), stroke.start),
    stop: measure(guideEdge(after), stroke.stop),
  };
}

function ovalOf(
  { back, backBox }: OpeningLayer,
  opening: number,
  outer: Size,
  measure: Measure,
): PencilOval | undefined {
  if (offEllipse(back, backBox) > NEAR_ENOUGH) return undefined;
  const seen: Box = box(outer.width - right(backBox), backBox.y, backBox.width, backBox.height);
  const middle = centre(seen);
  const { width, height } = backBox;
  return {
    opening,
    ...pinsAndLoop(width, height),
    size: { width, height },
    upright: measure(middle.x <= outer.width / 2 ? 'left' : 'right', middle),
    level: measure(middle.y <= outer.height / 2 ? 'top' : 'bottom', middle),
  };
}
