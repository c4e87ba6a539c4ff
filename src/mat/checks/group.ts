import { SIDES } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { nearest } from '../../problems/nearest.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { shapeOf } from '../../shapes/shapes.ts';
import { theLayer } from '../layers.ts';
import { openingName } from '../names.ts';
import { groupOf } from '../sizes/group.ts';

/** What stands in the way of laying several openings out. */
export function groupProblems(job: Job): readonly Problem[] {
  return [
    ...nameProblems(job),
    ...arrangeProblems(job),
    ...belowProblems(job),
    ...stepProblems(job),
    ...spacerProblems(job),
  ];
}

function nameProblems(job: Job): Problem[] {
  const first = new Map<string, number>();
  return [...job.openings.keys()].flatMap((index) => {
    const name = openingName(job, index);
    const before = first.get(name);
    if (before === undefined) {
      first.set(name, index);
      return [];
    }
    const path = ['openings', index, 'name'];
    const message = `two openings are called ${name}, the first of them is number ${before + 1}`;
    return [error('opening-name-twice', path, message, 'give each its own name')];
  });
}

function arrangeProblems(job: Job): Problem[] {
  const found: Problem[] = [];
  const { placed, below } = groupOf(job);
  const free = job.openings.length - placed.length - below.length;
  const { arrange } = job;
  if (arrange !== undefined) {
    const wanted = arrange.rows.reduce((sum, count) => sum + count, 0);
    if (wanted !== free) {
      const without = placed.length + below.length === 0 ? '' : ' without a place of their own';
      const message = `the rows hold ${wanted} openings, but there are ${free}${without}`;
      found.push(error('arrange-count', ['arrange', 'rows'], message, 'change the rows, or the list of openings'));
    }
  }
  const bordered = SIDES.filter((side) => job.mat.border[side] !== undefined);
  if (free === 0 && bordered.length > 0) {
    const message = 'the mat has borders, but every opening has a place of its own';
    const hint = 'take the borders out, or the place of one opening';
    found.push(error('border-and-places', ['mat', 'border'], message, hint));
  }
  return found;
}

function belowProblems(job: Job): Problem[] {
  const names = job.openings.map((_, index) => openingName(job, index));
  return job.openings.flatMap(({ place }, index) => {
    const under = place?.below;
    if (under === undefined) return [];
    const path = ['openings', index, 'place', 'below'];
    if (!names.includes(under.opening)) return [belowUnknown(job, path, under.opening)];
    const seen = new Set([index]);
    let at = names.indexOf(under.opening);
    while (!seen.has(at)) {
      seen.add(at);
      const next = job.openings[at]!.place?.below?.opening;
      if (next === undefined) return [];
      at = names.indexOf(next);
      if (at < 0) return [];
    }
    const message = `${names[index]} lies below ${under.opening}, which in the end lies below ${names[at]} itself`;
    return [error('below-ring', path, message, 'give one of them a place of its own')];
  });
}

/** Names the nearest of the openings that there are. */
export function belowUnknown(job: Job, path: Problem['path'], name: string): Problem {
  const names = job.openings.map((_, index) => openingName(job, index));
  const near = nearest(name, names);
  const hint = near === undefined ? `there are ${names.slice(0, 12).join(', ')}` : `did you mean ${near}?`;
  return error('below-unknown', path, `no opening is called ${name}`, hint);
}

/** Reveals that differ by side need sides that can be moved by themselves; a skipped layer cannot be cut in a stack. */
function stepProblems(job: Job): Problem[] {
  return job.openings.flatMap((request, index) => {
    const name = openingName(job, index);
    const shape = shapeOf(request.shape);
    const found: Problem[] = [];
    job.mat.layers.forEach((layer, at) => {
      if (at === 0) return;
      const step = request.steps?.[at - 1];
      const own = typeof step === 'object';
      const path = own ? ['openings', index, 'reveals', at - 1] : ['mat', 'layers', at, 'reveal'];
      if (step === 'skip') {
        if (job.bench.stack === 'together') {
          const message = `${name} shows nothing of ${theLayer(at)}, whose opening is then larger than the one above and cannot be cut in its fallout`;
          found.push(error('together-skip', ['openings', index, 'reveals', at - 1], message, 'write stack: apart'));
        }
        return;
      }
      const reveal = own ? step : layer.reveals;
      if (reveal === undefined) return;
      const { top, right, bottom, left } = reveal;
      const alike = top === right && top === left;
      const good =
        shape.reveals === 'any side' ||
        (alike && top === bottom) ||
        (shape.reveals === 'bottom' && alike && bottom >= top);
      if (good) return;
      const only = shape.reveals === 'bottom' ? 'may be larger at the bottom alone' : 'must be the same all round';
      const message = `the reveal of ${theLayer(at)} differs by side, but that of ${name}, ${request.shape}, ${only}`;
      found.push(error('reveal-by-side', path, message, 'give one reveal for all sides, or another shape'));
    });
    if ((request.steps?.length ?? 0) > job.mat.layers.length - 1) {
      const message = `${name} has ${request.steps!.length} reveals, the mat has ${job.mat.layers.length - 1} under mats`;
      found.push(
        error('reveals-count', ['openings', index, 'reveals'], message, 'give one for each under mat at most'),
      );
    }
    return found;
  });
}

function spacerProblems(job: Job): Problem[] {
  return job.mat.layers.flatMap(({ spacer }, at) => {
    if (spacer === undefined) return [];
    const path = ['mat', 'layers', at, 'spacer'];
    if (at === 0) {
      const message = 'the top mat has no layer above it to be spaced from';
      return [error('spacer-top', path, message, 'give the spacer to the layer below it')];
    }
    if (job.bench.stack !== 'together') return [];
    const message = `${theLayer(at)} lies on a spacer, so that it cannot be cut in the fallout of the mat above`;
    return [error('together-spacer', path, message, 'write stack: apart')];
  });
}
