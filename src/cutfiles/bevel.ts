import { beyondCorners, offsetsOn, outsideWarning } from '../bench/offsets.ts';
import { reverseCornerWords } from '../documents/words/reverse-corners.ts';
import type { Path } from '../geometry/path.ts';
import { backInset } from '../mat/bevel.ts';
import { theNamed } from '../mat/layers.ts';
import type { Mat, MatLayer } from '../mat/model.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { type Hand, otherHand } from '../shop/head.ts';
import type { BevelMachine } from '../shop/machine.ts';
import { printDecimal } from '../units/print.ts';
import type { CutJob, LaidBoard, LaidOpening, MachineKindWork, Tilt, Toolpath } from './model.ts';
import { movedRun, type Run, runsOf, strokeAlong, turnedRun } from './toolpaths/bevel-runs.ts';

/**
 * A head whose blade is tilted to one side of its travel: a stroke for every stretch between corners, from where the blade
 * is pushed in to where it comes out. With the back up a stroke follows the line where the blade enters, which is the back
 * edge of the bevel; with the face up it is the face edge. Along it the head
 * goes as far beyond the face corners as a scribe at the bench (`beyondCorners`).
 */
export const bevel: MachineKindWork<BevelMachine> = {
  prepare: (job, machine) => {
    const problems = job.mat.layers.flatMap((layer, i) => angleProblems(layer.bevel.angle, i, machine));
    return problems.length > 0 ? fail(problems) : succeed(job);
  },
  reach: ({ overrun, start, stop }) =>
    overrun + Math.max(0, ...start.map(({ offset }) => offset), ...stop.map(({ offset }) => -offset)),
  width: () => ({ width: 0, height: 0 }),
  leastGap: () => 0,
  allowances,
  toolpaths,
};

/** The hand on which the opening lies, and that on which the blade comes out below. */
function handsOf({ opening, up }: BevelMachine, reverse: boolean): { readonly opening: Hand; readonly lean: Hand } {
  // The blade leans to one hand for good. What is cut from the other side, or reversed, is travelled the other way round.
  const swapped = reverse !== (up === 'face');
  return { opening: swapped ? otherHand(opening) : opening, lean: otherHand(opening) };
}

function toolpaths(board: LaidBoard, cut: CutJob, machine: BevelMachine): Result<readonly Toolpath[]> {
  const layer = cut.mat.layers[board.layer - 1]!;
  const offsets = offsetsOn(machine, layer.board.thickness);
  const hint = 'cut its coupon from this board first';
  const warnings = outsideWarning(layer, board.layer - 1, machine.id, offsets.outside, hint);
  const hands = handsOf(machine, layer.bevel.reverse);
  const { angle } = layer.bevel;
  const tilt: Tilt = angle === 90 ? { angle } : { angle, lean: hands.lean };
  // Out of the opening where positive: where the blade enters, seen from the face edge.
  const entry = machine.up === 'face' ? 0 : -backInset(board.board.thickness, layer.bevel);
  const problems: Problem[] = [];
  const strokeOf = (run: Run, bevelled: boolean): Path | undefined => {
    const on = (turn: number): number => (bevelled ? intoWaste(turn, layer) : 0);
    const { before, after } = run.turns;
    const beyond = beyondCorners(offsets, machine.overrun, { before: on(before), after: on(after) });
    return strokeAlong(run, beyond.before, beyond.after);
  };
  const strokes = (outline: Path, by: number, id: string, told: Tilt, opening?: LaidOpening) => {
    const found: Toolpath[] = [];
    // Run through clockwise the inside lies on the right, the outside on the left.
    const runs = runsOf(outline).map((run) => movedRun(run, by));
    const ordered = hands.opening === 'right' ? runs : runs.toReversed();
    for (const [i, run] of ordered.entries()) {
      const own = run === undefined || hands.opening === 'right' ? run : turnedRun(run);
      const path = own === undefined ? undefined : strokeOf(own, opening !== undefined && opening.upright !== true);
      const operation = opening === undefined ? 'outer' : 'bevel';
      if (path !== undefined) found.push({ operation, path, id: `${id}-${i + 1}`, reversible: false, tilt: told });
      else if (opening !== undefined) problems.push(noStroke(board, opening, run === undefined));
    }
    return found;
  };
  const found = board.openings.flatMap((opening) => {
    const id = `${opening.id.replace('opening', 'bevel')}-${board.layer}`;
    if (opening.upright !== true) return strokes(opening.face, entry, id, tilt, opening);
    // A head that cannot stand upright leaves these to a template: `byHand` says so.
    return standsUpright(machine) ? strokes(opening.face, 0, id, { angle: 90 }, opening) : [];
  });
  if (machine.outside) found.push(...strokes(board.outline, 0, `outside-${board.layer}`, { angle: 90 }));
  return problems.length > 0 ? fail(problems) : succeed(found, warnings);
}

export const standsUpright = ({ bevel: fixed }: BevelMachine): boolean => fixed === undefined || fixed === 90;

/**
 * Where the mat has a corner that points into the opening, a stroke runs on into the fallout: a normal bevel's mitre lies
 * beyond the face corner on the back, and what is not cut there would hold the fallout.
 */
function intoWaste(turn: number, { setback, bevel: { reverse } }: MatLayer): number {
  return !reverse && turn < 0 ? setback * Math.tan(-turn / 2) : 0;
}

function angleProblems(angle: number, index: number, machine: BevelMachine): readonly Problem[] {
  if (machine.bevel === undefined) return [];
  const path = ['mat', 'layers', index, 'bevel'];
  const fixed = `${machine.id} cuts ${machine.bevel}° and nothing else`;
  const problems: Problem[] = [];
  if (machine.bevel !== angle) {
    const hint = 'give the layer that bevel, or take the machine’s bevel out where its head can be set';
    problems.push(error('bevel-fixed', path, `the layer has a bevel of ${angle}°, ${fixed}`, hint));
  }
  if (index === 0 && machine.outside && machine.bevel !== 90) {
    const hint = 'trim the board before and give the machine outside: false';
    problems.push(error('bevel-outside', [], `the outside is cut square, but ${fixed}`, hint));
  }
  return problems;
}

function noStroke(board: LaidBoard, { name, path }: LaidOpening, tight: boolean): Problem {
  const where = `${name} in ${theNamed(board.name)}`;
  const message = tight
    ? `${where} has a bend that is tighter than its bevel is wide`
    : `${where} has a side that is too short for the offsets of the head`;
  return error('bevel-no-stroke', path, message, 'cut it by hand, or with a square cut');
}

const mm = (length: number): string => printDecimal(length, 'mm', 3).text;

function allowances(machine: BevelMachine, { mat }: CutJob): readonly string[] {
  const state = machine.calibrated
    ? mat.layers.map(({ name, board }) => {
        const { start, stop } = offsetsOn(machine, board.thickness);
        return `${name}: start ${mm(start)} mm, stop ${mm(stop)} mm`;
      })
    : ['the head is UNCALIBRATED: cut the coupon, measure it and give the machine its offsets'];
  const line = machine.up === 'back' ? 'the line where the blade enters the back' : 'the face edge';
  return [
    `strokes follow ${line}, the blade leaning ${otherHand(machine.opening)} of the travel`,
    ...state,
    `overrun ${mm(machine.overrun)} mm at both ends`,
    ...mat.layers.flatMap((layer, i) => cornersToFree(mat, layer, i, machine.overrun)),
  ];
}

/** What strokes of a reverse bevel leave uncut at the back: a corner there lies further out than on the face. */
function cornersToFree(mat: Mat, layer: MatLayer, index: number, overrun: number): readonly string[] {
  if (!layer.bevel.reverse) return [];
  const turns = mat.openings
    .flatMap(({ layers }) => runsOf(layers[index]!.face))
    .flatMap(({ turns: { before, after } }) => [before, after]);
  const most = Math.max(0, ...turns.map((turn) => layer.setback * Math.tan(turn / 2)));
  return reverseCornerWords(most - overrun).map((words) => `${layer.name}: ${words}`);
}
