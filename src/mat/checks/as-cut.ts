import { SIDES } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { showLength } from '../../units/print.ts';
import { theLayer } from '../layers.ts';
import type { Mat, MatLayer, Moved } from '../model.ts';
import { AXES } from '../sizes/unknowns.ts';

/** What was cut must still go into the frame. */
export function asCutProblems(job: Job, layers: readonly MatLayer[]): readonly Problem[] {
  const { asCut } = job;
  const { frame } = job.mat;
  const inside = frame?.inside ?? frame?.nominal;
  if (asCut === undefined || frame === undefined || inside === undefined) return [];
  // A nominal size has its clearance already: the rebate is larger by it.
  const more = frame.inside === undefined ? frame.clearance : 0;
  const show = (mm: number): string => showLength(mm, job.units);
  return layers.flatMap(({ blank }, index) => {
    const given = index === 0 ? asCut.outer : asCut.blanks[index];
    if (given === undefined) return [];
    const path = index === 0 ? ['asCut', 'outer'] : ['asCut', 'layers', index, 'blank'];
    return AXES.flatMap(({ extent }) => {
      const over = blank[extent] - inside[extent] - more;
      if (over <= 1e-9) return [];
      const message = `${theLayer(index)} as cut has a ${extent} of ${show(blank[extent])}, ${show(over)} more than the frame takes`;
      return [error('as-cut-beyond-frame', path, message, 'trim it, and give its size again')];
    });
  });
}

/** An artwork that is left uncovered by what was cut is told of at what was cut. */
export function onCutPiece(job: Job, problem: Problem): Problem {
  const opening = problem.path[0] === 'openings' ? problem.path[1] : undefined;
  if (job.asCut === undefined || (problem.code !== 'overlap-none' && problem.code !== 'float-none')) return problem;
  const at = job.asCut.openings.findLastIndex((each) => each.opening === opening);
  const path = at < 0 ? ['asCut'] : ['asCut', 'openings', at, 'size'];
  const hint = 'it cannot be saved as it is: cut that board again, or put another under mat below it';
  return error('as-cut-uncovers', path, `as it was cut, ${problem.message}`, hint);
}

/** Below this two lengths are printed alike. */
export const CHANGED = 0.005;

/** Every length that is not as it was planned. */
export function changesOf(planned: Mat, mat: Mat): readonly Moved[] {
  const found: Moved[] = [];
  const compare = (what: string, from: number, to: number): void => {
    if (Math.abs(to - from) > CHANGED) found.push({ what, from, to });
  };
  for (const { extent } of AXES) compare(`outer ${extent}`, planned.outer[extent], mat.outer[extent]);
  for (const side of SIDES) compare(`${side} border`, planned.border[side], mat.border[side]);
  mat.layers.forEach((layer, index) => {
    if (index === 0) return;
    for (const { extent } of AXES)
      compare(`${layer.name}, blank's ${extent}`, planned.layers[index]!.blank[extent], layer.blank[extent]);
  });
  mat.openings.forEach((opening, o) => {
    const was = planned.openings[o]!;
    opening.layers.forEach((layer, index) => {
      const name = `${opening.name} in ${mat.layers[index]!.name}`;
      const plan = was.layers[index]!;
      for (const { extent } of AXES) compare(`${name}, face ${extent}`, plan.faceBox[extent], layer.faceBox[extent]);
      for (const side of SIDES) compare(`${name}, ${side} reveal`, plan.reveal[side], layer.reveal[side]);
    });
    if (opening.artwork !== undefined && was.artwork !== undefined) {
      for (const side of SIDES)
        compare(`${opening.name}, ${side} overlap`, was.artwork.overlap[side], opening.artwork.overlap[side]);
    }
  });
  return found;
}
