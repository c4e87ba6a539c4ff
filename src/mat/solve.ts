import type { Fonts } from '../fonts/model.ts';
import type { Job } from '../job/job.ts';
import { defined } from '../problems/defined.ts';
import { fail, type Result, succeed } from '../problems/problem.ts';
import { inchesFromMm } from '../units/units.ts';
import { rescue } from './as-cut.ts';
import { changesOf, onCutPiece } from './checks/as-cut.ts';
import { boardsProblems } from './checks/board.ts';
import { decorProblems } from './checks/decor.ts';
import { largeProblems } from './checks/large.ts';
import { borderStays } from './checks/must-stay.ts';
import { nearnessProblems } from './checks/nearness.ts';
import { openingProblems } from './checks/opening.ts';
import { fallenApart, shapeProblems } from './checks/shape.ts';
import { matLayers } from './layers.ts';
import { lettered } from './lettering.ts';
import type { Mat } from './model.ts';
import { outlined } from './outlines.ts';
import { placeOpening } from './placed.ts';
import { requestProblems } from './request.ts';
import { solveSizes } from './sizes/sizes.ts';
import { type Snapped, snap } from './snap/snap.ts';

/**
 * Works out every length of the mat that the job asks for. What the job leaves out is derived or assumed
 * (`unknowns.ts` says in which order); all contradictions, or all conditions that fail, come back at once. Fonts with
 * their outlines are needed for lettering alone: without them that is the problem `lettering-needs-fonts`.
 */
export function solve(job: Job, { fonts }: { readonly fonts?: Fonts } = {}): Result<Mat> {
  const refused = requestProblems(job);
  if (refused.length > 0) return fail(refused);
  const solved = solveSizes(job);
  if (!solved.ok) return solved;
  const snapped = snap(job, solved.value);
  if (job.asCut === undefined) return matFrom(job, snapped, fonts);
  const { asCut: _, ...plan } = job;
  const planned = matFrom(plan, snapped, fonts);
  if (!planned.ok) return planned;
  const rescued = rescue(job, solved.value, snapped);
  if (!rescued.ok) return rescued;
  const made = matFrom(job, rescued.value, fonts);
  if (!made.ok) return fail(made.problems.map((problem) => onCutPiece(job, problem)));
  const changed = changesOf(planned.value, made.value);
  return succeed({ ...made.value, planned: planned.value, changed }, made.warnings);
}

/** The mat of these sizes, or every condition that it fails. */
function matFrom(job: Job, { sizes, moved, warnings }: Snapped, fonts: Fonts | undefined): Result<Mat> {
  const { outer } = sizes;
  const faults = shapeProblems(job, sizes);
  if (faults.length > 0) return fail(faults);
  const placed = sizes.openings.map((each, index) => placeOpening(job, index, each));
  const layers = matLayers(job, outer);
  const problems = [
    ...placed.flatMap((each, index) => openingProblems(job, index, each, outer)),
    ...boardsProblems(job, layers, sizes),
    ...borderStays(job, layers, placed),
    ...warnings,
  ];
  if (problems.some((each) => each.severity === 'error')) return fail(problems);
  const openings = placed.map((each, index) => outlined(job, index, each, sizes.openings[index]!));
  problems.push(...fallenApart(job, openings));
  // What lies around an opening is looked at by its place among them: only where none is missing.
  if (problems.some((each) => each.severity === 'error')) return fail(problems);
  const whole = openings.filter((each) => each !== undefined);
  problems.push(
    ...nearnessProblems(job, outer, whole),
    ...decorProblems(job, outer, whole),
    ...largeProblems(job, outer),
  );
  const lettering = lettered(job, outer, layers, whole, fonts);
  problems.push(...lettering.problems);
  if (problems.some((each) => each.severity === 'error')) return fail(problems);
  const mat: Mat = {
    outer,
    unitedInches: inchesFromMm(outer.width + outer.height),
    glazing: outer,
    backing: outer,
    lip: job.mat.frame?.lip ?? 0,
    border: sizes.border,
    layers,
    openings: whole,
    ...defined({ lettering: job.lettering && lettering.made }),
    moved,
  };
  return succeed(mat, problems);
}
