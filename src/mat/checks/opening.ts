import { box, contains } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import { type BySide, SIDES, type Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { fallsShort } from '../../job/rule-of-thumb.ts';
import { error, type Problem, warning } from '../../problems/problem.ts';
import { showLength, showSize } from '../../units/print.ts';
import { layerName } from '../layers.ts';
import type { Artwork } from '../model.ts';
import type { PlacedOpening } from '../placed.ts';
import { alike, pathOf, whereOn } from '../sides.ts';

/** A strip of colour narrower than this is hard to cut even (common practice). */
const LEAST_STRIP = 1;
/** Least overlap, or float, that a hand-hinged artwork keeps when it settles (common practice). */
export const LEAST_OVERLAP = 2;
/** A length that misses a bound by less meets it. */
const ROUNDING = 1e-9;

/** The side where the length is least. */
function leastSide(lengths: BySide<number>): Side {
  return SIDES.reduce((least, side) => (lengths[side] < lengths[least] ? side : least));
}

function stripProblems(job: Job, index: number, opening: PlacedOpening): Problem[] {
  const show = (mm: number): string => showLength(mm, job.units);
  return opening.layers.flatMap((layer, at) => {
    if (at === 0 || layer.hidden === true) return [];
    const side = leastSide(layer.strip);
    const [strip, reveal] = [layer.strip[side], layer.reveal[side]];
    if (!fallsShort(strip, LEAST_STRIP)) return [];
    const hidden = reveal - strip;
    const path =
      typeof job.openings[index]!.steps?.[at - 1] === 'object'
        ? ['openings', index, 'reveals', at - 1]
        : ['mat', 'layers', at, ...(job.mat.layers[at]!.reveal === undefined ? [] : ['reveal'])];
    const sum = `its reveal of ${show(reveal)} less ${show(hidden)} of bevel above it leaves ${show(strip)}`;
    const name = layerName(at);
    if (strip <= ROUNDING) {
      const hint = `make the reveal more than ${show(hidden + LEAST_STRIP)}`;
      return [error('strip-hidden', path, `nothing is seen of ${name}: ${sum}, more than 0 is needed`, hint)];
    }
    const hint = `make the reveal ${show(hidden + LEAST_STRIP)} or more`;
    return [warning('strip-narrow', path, `little is seen of ${name}: ${sum}`, hint)];
  });
}

function sightProblems(job: Job, index: number, opening: PlacedOpening): Problem[] {
  const { sight } = opening;
  if (sight.width > 0 && sight.height > 0) return [];
  const message = `nothing is seen through the opening: its sight comes to ${showSize(sight, job.units)}`;
  return [
    error('opening-none', ['openings', index], message, 'make the mat or the artwork larger or the borders narrower'),
  ];
}

/** `real` is what is covered, or for a float what is seen around the artwork. */
function coverProblem(
  job: Job,
  index: number,
  floated: boolean,
  sides: readonly Side[],
  real: number,
): Problem | undefined {
  if (!fallsShort(real, LEAST_OVERLAP)) return undefined;
  const request = job.openings[index]!;
  const key = floated ? 'float' : 'overlap';
  const path = pathOf(request[key], sides, ['openings', index, key], ['openings', index]);
  const where = whereOn(sides);
  const show = (mm: number): string => showLength(mm, job.units);
  const least = `${show(LEAST_OVERLAP)} at least is sound`;
  const hint = `make the ${key} larger, or the opening ${floated ? 'larger' : 'smaller'}`;
  if (floated) {
    return real <= ROUNDING
      ? error('float-none', path, `the mat covers the floated artwork by ${show(-real)} ${where}`, hint)
      : warning('float-narrow', path, `only ${show(real)} is seen around the artwork ${where}, ${least}`, hint);
  }
  return real <= ROUNDING
    ? error(
        'overlap-none',
        path,
        `the opening reaches ${show(-real)} beyond the edge of the artwork ${where}, the mat does not cover it`,
        hint,
      )
    : warning('overlap-narrow', path, `the mat really overlaps the artwork by ${show(real)} ${where}, ${least}`, hint);
}

function coverProblems(job: Job, index: number, artwork: Artwork): Problem[] {
  return alike(artwork.overlap).flatMap(({ sides, length }) => {
    const found = coverProblem(job, index, artwork.floated, sides, artwork.floated ? -length : length);
    return found === undefined ? [] : [found];
  });
}

function artworkProblems(job: Job, index: number, artwork: Artwork, outer: Size): Problem[] {
  const found = coverProblems(job, index, artwork);
  if (contains(box(0, 0, outer.width, outer.height), artwork.box)) return found;
  const message = `the artwork of ${showSize(artwork.size, job.units)} reaches beyond the mat of ${showSize(outer, job.units)}`;
  const hint = 'make the mat larger, or crop the artwork';
  return [...found, error('artwork-beyond-mat', ['openings', index, 'artwork'], message, hint)];
}

/** What is seen of every layer and of the artwork. */
export function openingProblems(job: Job, index: number, opening: PlacedOpening, outer: Size): readonly Problem[] {
  return [
    ...sightProblems(job, index, opening),
    ...stripProblems(job, index, opening),
    ...(opening.artwork === undefined ? [] : artworkProblems(job, index, opening.artwork, outer)),
  ];
}
