import type { Size } from '../../geometry/point.ts';
import { SIDES } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { fallsShort } from '../../job/rule-of-thumb.ts';
import { error, type Problem, warning } from '../../problems/problem.ts';
import type { Board } from '../../shop/board.ts';
import { showLength, showSize } from '../../units/print.ts';
import { mmFromInches } from '../../units/units.ts';
import { backInset } from '../bevel.ts';
import { theLayer, trimOf } from '../layers.ts';
import type { MatLayer } from '../model.ts';
import { alike, pathOf, whereOn } from '../sides.ts';
import type { AllSizes } from '../sizes/model.ts';
import { asCutProblems } from './as-cut.ts';

/**
 * A window mat is of 4-ply board at least (Library of Congress, Guide to Preservation Matting and Framing), which
 * measures 0.050 in at least, a maker's figure varying by 0.004 in (S. Saitzyk, Art Hardware, 1987).
 */
const THIN = mmFromInches(0.046);
/** Double-weight board runs to 0.120 in, the same 0.004 in allowed (S. Saitzyk, Art Hardware, 1987). */
const THICK = mmFromInches(0.124);
/** Width of under mat that double-sided tape holds on to (common practice). */
const LEAST_TAPE = 10;
/** A mat is 1 to 3 mm smaller than the rebate, by size (Fine Art Trade Guild); 1/8 in counts as 3 mm. */
const CLEARANCE = { least: 1, most: mmFromInches(1 / 8) };
/** Nothing longer than 5 m is a mat. */
const LONGEST = 5000;

function borderProblems(job: Job, sizes: AllSizes): Problem[] {
  const lip = job.mat.frame?.lip ?? 0;
  const show = (mm: number): string => showLength(mm, job.units);
  const hint = 'make the mat larger or the opening smaller';
  return alike(sizes.border).flatMap(({ sides, length }) => {
    const path = pathOf(job.mat.border, sides, ['mat', 'border'], ['mat']);
    const where = whereOn(sides);
    // Of several openings each is told of by its name (`nearness.ts`).
    if (job.openings.length > 1 && length <= lip) return [];
    if (length <= 0) {
      const message = `the border comes to ${show(length)} ${where}, more than 0 is needed`;
      return [error('border-none', path, message, hint)];
    }
    if (length <= lip) {
      const message = `the frame's lip of ${show(lip)} hides the border of ${show(length)} ${where}`;
      return [error('border-hidden', path, message, `${hint}, or give the frame's true lip`)];
    }
    if (fallsShort(length, 2 * lip)) {
      const message = `the frame's lip hides most of the border ${where}: ${show(length - lip)} of ${show(length)} is seen`;
      return [warning('border-mostly-hidden', path, message, hint)];
    }
    return [];
  });
}

function frameProblems(job: Job): Problem[] {
  const { frame } = job.mat;
  if (frame?.inside === undefined) return [];
  const show = (mm: number): string => showLength(mm, job.units);
  const { clearance, lip } = frame;
  const path = ['mat', 'frame', 'clearance'];
  const found: Problem[] = [];
  if (fallsShort(clearance, CLEARANCE.least) || fallsShort(CLEARANCE.most, clearance)) {
    const message = `a mat is 1 to 3 mm smaller than the rebate, here it is ${show(clearance)}`;
    found.push(warning('clearance-unusual', path, message, 'measure the rebate, or change the clearance'));
  }
  if (lip > 0 && fallsShort(lip, clearance)) {
    const message = `the clearance of ${show(clearance)} is more than the lip of ${show(lip)} hides`;
    const hint = 'a mat that slips to one side shows its edge: make the clearance smaller';
    found.push(warning('clearance-beyond-lip', path, message, hint));
  }
  return found;
}

/** Of all openings and sides. */
function leastReveal(sizes: AllSizes, layer: number): number {
  const all = sizes.openings.flatMap(({ reveals }) => {
    const reveal = reveals[layer];
    return reveal === undefined ? [] : SIDES.map((side) => reveal[side]);
  });
  return all.length === 0 ? 0 : Math.min(...all);
}

/** An under mat is cut together with the top mat where it is short of every edge and still has room for tape. */
function togetherProblems(job: Job, layers: readonly MatLayer[], sizes: AllSizes): Problem[] {
  if (job.bench.stack !== 'together') return [];
  const show = (mm: number): string => showLength(mm, job.units);
  let reveals = 0;
  return layers.flatMap((layer, index) => {
    if (index === 0) return [];
    const above = layers[index - 1]!;
    reveals += leastReveal(sizes, index - 1);
    const path = ['mat', 'layers', index, 'trimBack'];
    if (layer.trimBack <= 0) {
      const message = `${layer.name} has no trim-back, cut together it must be short of every edge that touches guide or square`;
      return [error('together-not-short', path, message, 'give it for example 1/8 in or 3 mm, or stack: apart')];
    }
    const backBorder = Math.min(...SIDES.map((side) => sizes.border[side])) + reveals;
    const tape = backBorder + backInset(above.board.thickness, above.bevel) - Math.max(layer.trimBack, above.trimBack);
    if (tape >= LEAST_TAPE) return [];
    const message = `${layer.name} has ${show(tape)} to tape to ${theLayer(index - 1)}, ${show(LEAST_TAPE)} is needed to cut them together`;
    return [error('together-no-tape', path, message, 'trim it back less, make the border wider, or stack: apart')];
  });
}

/** A trim-back that nothing is done with: of the top mat, or of boards that are cut apart. */
function unusedTrims(job: Job, layers: readonly MatLayer[]): Problem[] {
  return layers.flatMap((_, index) => {
    if (job.mat.layers[index]!.trimBack === trimOf(job, index)) return [];
    const message = `${theLayer(index)} is cut full size, only an under mat that is cut together with the top mat is trimmed back`;
    const path = ['mat', 'layers', index, 'trimBack'];
    return [warning('trim-back-unused', path, message, 'leave it out, or stack: together')];
  });
}

function fits(blank: Size, sheet: Size, board: Board): boolean {
  const slack = 1e-6;
  const within = (width: number, height: number): boolean =>
    blank.width <= width + slack && blank.height <= height + slack;
  return within(sheet.width, sheet.height) || (!board.directional && within(sheet.height, sheet.width));
}

function largest(sheets: readonly Size[]): Size {
  return sheets.reduce((most, each) => (each.width * each.height > most.width * most.height ? each : most));
}

function boardProblems(job: Job, layers: readonly MatLayer[]): Problem[] {
  const { units } = job;
  return layers.flatMap(({ board, blank }, index) => {
    const path = ['mat', 'layers', index, 'board'];
    const found: Problem[] = [];
    const name = theLayer(index);
    const thickness = showLength(board.thickness, units);
    if (index === 0 && board.thickness < THIN - 1e-9) {
      const message = `${name} is ${thickness} thick, a window mat is of 4-ply board (about ${showLength(1.4, units)}) at least`;
      found.push(warning('board-thin', path, message, 'take a thicker board, or lift the mat off the art'));
    }
    if (board.thickness > THICK + 1e-9) {
      const message = `the board of ${name} is ${thickness} thick, more than double-weight board`;
      found.push(warning('board-thick', path, message, 'look at the unit, and whether the blade reaches through'));
    }
    // What came off the cutter came out of some sheet.
    const cut = index === 0 ? job.asCut?.outer : job.asCut?.blanks[index];
    if (cut === undefined && board.sheets.length > 0 && !board.sheets.some((sheet) => fits(blank, sheet, board))) {
      const sheet = showSize(largest(board.sheets), units);
      const message = `the blank of ${name}, ${showSize(blank, units)}, comes out of no sheet of ${board.name}, the largest is ${sheet}`;
      found.push(warning('blank-beyond-sheets', path, message, 'take a board with larger sheets'));
    }
    return found;
  });
}

function outerProblems(job: Job, outer: Size): Problem[] {
  if (outer.width <= LONGEST && outer.height <= LONGEST) return [];
  const message = `the mat comes to ${showSize(outer, job.units)}, ${showLength(LONGEST, job.units)} is the most`;
  return [error('mat-too-large', ['mat'], message, 'look at the units of the sizes given')];
}

/** The diagonal method suits wide pieces: on an upright one the top can come out narrower than the sides. */
function diagonalProblems(job: Job, sizes: AllSizes): Problem[] {
  const { border, outer } = sizes;
  const upright = outer.height - border.top - border.bottom > outer.width - border.left - border.right;
  if (job.mat.weighting?.kind !== 'diagonal' || !upright || !fallsShort(border.top, border.left)) return [];
  const show = (mm: number): string => showLength(mm, job.units);
  const message = `the diagonal makes the top border of an upright piece, ${show(border.top)}, narrower than the sides of ${show(border.left)}`;
  const hint = 'weight it by {add: …} or {ratio: …}, or take a narrower mat';
  return [warning('diagonal-top-narrow', ['mat', 'weighting'], message, hint)];
}

/** The boards, how they lie in the frame and on each other. */
export function boardsProblems(job: Job, layers: readonly MatLayer[], sizes: AllSizes): readonly Problem[] {
  return [
    ...outerProblems(job, sizes.outer),
    ...borderProblems(job, sizes),
    ...diagonalProblems(job, sizes),
    ...frameProblems(job),
    ...asCutProblems(job, layers),
    ...togetherProblems(job, layers, sizes),
    ...unusedTrims(job, layers),
    ...boardProblems(job, layers),
  ];
}
