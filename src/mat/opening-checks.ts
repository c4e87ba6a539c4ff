import { box, contains } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import { type BySide, type Job, SIDES, type Side } from '../job/model.ts';
import { error, type Problem, warning } from '../problems/problem.ts';
import { showLength, showSize } from '../units/print.ts';
import { layerName } from './layers.ts';
import type { Artwork } from './model.ts';
import type { PlacedOpening } from './placed.ts';

/** A strip of colour narrower than this is hard to cut even (common practice). */
const LEAST_STRIP = 1;
/** Least overlap, or float, that a hand-hinged artwork keeps when it settles (common practice). */
export const LEAST_OVERLAP = 2;

/** The side where the length is least. */
function leastSide(lengths: BySide<number>): Side {
  return SIDES.reduce((least, side) => (lengths[side] < lengths[least] ? side : least));
}

function stripProblems(job: Job, opening: PlacedOpening): Problem[] {
  const show = (mm: number): string => showLength(mm, job.units);
  return opening.layers.flatMap((layer, index) => {
    if (index === 0) return [];
    const side = leastSide(layer.strip);
    const [strip, reveal] = [layer.strip[side], layer.reveal[side]];
    if (strip >= LEAST_STRIP) return [];
    const hidden = reveal - strip;
    const path = ['mat', 'layers', index, ...(job.mat.layers[index]!.reveal === undefined ? [] : ['reveal'])];
    const sum = `its reveal of ${show(reveal)} less ${show(hidden)} of bevel above it leaves ${show(strip)}`;
    const name = layerName(index);
    if (strip <= 0) {
      const hint = `make the reveal more than ${show(hidden + LEAST_STRIP)}`;
      return [error('strip-hidden', path, `nothing is seen of ${name}: ${sum}, more than 0 is needed`, hint)];
    }
    const hint = `make the reveal ${show(hidden + LEAST_STRIP)} or more`;
    return [warning('strip-narrow', path, `little is seen of ${name}: ${sum}`, hint)];
  });
}

function sightProblems(job: Job, opening: PlacedOpening): Problem[] {
  const { sight } = opening;
  if (sight.width > 0 && sight.height > 0) return [];
  const message = `nothing is seen through the opening: its sight comes to ${showSize(sight, job.units)}`;
  return [
    error('opening-none', ['openings', 0], message, 'make the mat or the artwork larger or the borders narrower'),
  ];
}

function overlapProblem(job: Job, artwork: Artwork, side: Side): Problem[] {
  const request = job.openings[0]!;
  const key = artwork.floated ? 'float' : 'overlap';
  const given = request[key]?.[side] !== undefined;
  const path = ['openings', 0, ...(given ? [key, side] : [])];
  const real = artwork.floated ? -artwork.overlap[side] : artwork.overlap[side];
  if (real >= LEAST_OVERLAP) return [];
  const length = showLength(real, job.units);
  const least = `${showLength(LEAST_OVERLAP, job.units)} at least is sound`;
  const hint = `make the ${key} larger, or the opening ${artwork.floated ? 'larger' : 'smaller'}`;
  if (artwork.floated) {
    return real <= 0
      ? [error('float-none', path, `the mat covers the floated artwork at the ${side}: its float is ${length}`, hint)]
      : [warning('float-narrow', path, `only ${length} is seen around the artwork at the ${side}, ${least}`, hint)];
  }
  return real <= 0
    ? [error('overlap-none', path, `the mat does not cover the artwork at the ${side}: it overlaps by ${length}`, hint)]
    : [
        warning(
          'overlap-narrow',
          path,
          `the mat really overlaps the artwork by ${length} at the ${side}, ${least}`,
          hint,
        ),
      ];
}

function artworkProblems(job: Job, artwork: Artwork, outer: Size): Problem[] {
  const found = SIDES.flatMap((side) => overlapProblem(job, artwork, side));
  if (contains(box(0, 0, outer.width, outer.height), artwork.box)) return found;
  const message = `the artwork of ${showSize(artwork.size, job.units)} reaches beyond the mat of ${showSize(outer, job.units)}`;
  const hint = 'make the mat larger, or crop the artwork';
  return [...found, error('artwork-beyond-mat', ['openings', 0, 'artwork'], message, hint)];
}

/** What is seen of every layer and of the artwork. */
export function openingProblems(job: Job, opening: PlacedOpening, outer: Size): readonly Problem[] {
  return [
    ...sightProblems(job, opening),
    ...stripProblems(job, opening),
    ...(opening.artwork === undefined ? [] : artworkProblems(job, opening.artwork, outer)),
  ];
}
