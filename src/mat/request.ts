import { namesNoSide } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import { error, type Problem } from '../problems/problem.ts';
import { groupProblems } from './checks/group.ts';
import { theLayer } from './layers.ts';

/** A bevel flatter than this does not come off a head; 90 is a square cut (common practice). */
const FLATTEST = 20;
const SQUARE = 90;

function layerProblems(job: Job): Problem[] {
  const found: Problem[] = [];
  const { layers } = job.mat;
  if (layers.length === 0) {
    found.push(error('layers-count', ['mat', 'layers'], 'the mat has no layer, at least a top mat is needed'));
  }
  for (const [index, { bevel, board, reveal }] of layers.entries()) {
    const path = ['mat', 'layers', index];
    if (!(bevel.angle >= FLATTEST && bevel.angle <= SQUARE)) {
      const message = `a bevel of ${bevel.angle}° cannot be cut, it lies between ${FLATTEST} and ${SQUARE}`;
      found.push(error('bevel-angle', [...path, 'bevel'], message, 'give the angle from the face, 90 being square'));
    }
    if (!(board.thickness > 0 && Number.isFinite(board.thickness))) {
      const message = `the board of ${theLayer(index)} has no thickness`;
      found.push(error('board-thickness', [...path, 'board'], message, 'measure it, a 4-ply board is about 1.4 mm'));
    }
    if (index === 0 && reveal !== undefined) {
      const message = 'the top mat has no reveal, only the layers under it have one';
      found.push(error('reveal-top', [...path, 'reveal'], message, 'give it to the layer that it shows'));
    }
  }
  return found;
}

function openingProblems(job: Job, index: number): Problem[] {
  const request = job.openings[index]!;
  const found: Problem[] = [];
  const path = ['openings', index];
  const overlapped = !namesNoSide(request.overlap);
  if (request.artwork === undefined && (overlapped || request.float !== undefined)) {
    const key = overlapped ? 'overlap' : 'float';
    const message = `the opening has an ${key} but no artwork to measure it from`.replace('an float', 'a float');
    found.push(error('overlap-without-artwork', [...path, key], message, 'give the size of the artwork too'));
  }
  if (overlapped && request.float !== undefined) {
    const message = 'an artwork is overlapped or floated, not both';
    found.push(error('overlap-and-float', [...path, 'float'], message, 'leave one of them out'));
  }
  return found;
}

function openingsProblems(job: Job): Problem[] {
  if (job.openings.length === 0) {
    return [error('openings-none', ['openings'], 'the job has no opening', 'give at least one')];
  }
  return [...job.openings.keys()].flatMap((index) => openingProblems(job, index));
}

/** What stands in the way of solving at all. A job that was read from text has passed some of it already. */
export function requestProblems(job: Job): readonly Problem[] {
  const found = [...layerProblems(job), ...openingsProblems(job)];
  if (found.length === 0) found.push(...groupProblems(job));
  const { weighting } = job.mat;
  if (weighting?.kind === 'ratio' && !(weighting.ratio > 0 && Number.isFinite(weighting.ratio))) {
    const message = `a ratio of ${weighting.ratio} is none, bottom to top is more than 0`;
    found.push(error('weighting-ratio', ['mat', 'weighting', 'ratio'], message, 'give for example 4/3'));
  }
  return found;
}
