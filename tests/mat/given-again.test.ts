import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SIDES, type Side } from '../../src/geometry/sides.ts';
import type { Job } from '../../src/job/job.ts';
import type { OpeningRequest } from '../../src/job/opening.ts';
import { readJob } from '../../src/job/read.ts';
import type { Mat } from '../../src/mat/model.ts';
import { measuredInset, seenLayers } from '../../src/mat/sizes/unknowns.ts';
import { solve } from '../../src/mat/solve.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { anyOpening, groupJob, groupShop } from './random-groups.ts';

const shop = { shopText: groupShop(), shopFile: 'shop.yaml' };

/** Groups in rows or columns, groups that fill or are centred on a given mat, openings that each have a place of their own. */
const onGivenMat = fc
  .record({
    openings: fc.array(anyOpening, { minLength: 2, maxLength: 6 }),
    how: fc.constantFrom('fill: true', 'gap: 50', 'gap: {across: 40, down: 60}', 'gap: 45, rowWeighting: {ratio: 3/2}'),
    columns: fc.constantFrom('rows: 1', 'columns: 2', 'columns: 3', 'rows: 2'),
    weighting: fc.constantFrom('none', '{add: 12}', '{ratio: 4/3}'),
    reveal: fc.constantFrom('', ', {board: b, reveal: 6}', ', {board: b, reveal: {top: 6, sides: 6, bottom: 6}}'),
  })
  .map(
    ({ openings, how, columns, weighting, reveal }) => `units: mm
mat: {outer: 1900 x 1700, weighting: ${weighting}, layers: [{board: b}${reveal}]}
openings:
${openings.map((each, i) => `  - {name: n${i + 1}, ${each}}`).join('\n')}
arrange: {${columns}, ${how}}
bench: {head: h, stack: apart}`,
  );

const inPlaces = fc
  .record({
    openings: fc.array(anyOpening, { minLength: 2, maxLength: 5 }),
    shift: fc.integer({ min: 0, max: 60 }),
    below: fc.boolean(),
  })
  .map(({ openings, shift, below }) => {
    const place = (i: number): string => {
      if (below && i === 1) return '{below: n1, gap: 70}';
      return ['left', 'right'][i % 2] === 'left'
        ? `{left: ${40 + 330 * i + shift}, top: ${40 + shift}}`
        : `{left: ${40 + 330 * i}, bottom: ${60 + shift}}`;
    };
    return `units: mm
mat: {outer: 1900 x 900, layers: [{board: b}, {board: b, reveal: 6}]}
openings:
${openings.map((each, i) => `  - {name: n${i + 1}, ${each}, place: ${place(i)}}`).join('\n')}
bench: {head: h, stack: apart}`;
  });

interface Again {
  readonly outer: boolean;
  readonly border: readonly Side[];
  readonly gaps: boolean;
  readonly reveals: boolean;
  /** By opening, taken round and round. */
  readonly sizes: readonly boolean[];
  readonly overlaps: readonly boolean[];
  readonly places: readonly Side[];
}

const again: fc.Arbitrary<Again> = fc.record({
  outer: fc.boolean(),
  border: fc.subarray([...SIDES]),
  gaps: fc.boolean(),
  reveals: fc.boolean(),
  sizes: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
  overlaps: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
  places: fc.subarray([...SIDES]),
});

/** The job with any of what was solved written down too. */
function withResults(job: Job, mat: Mat, given: Again): Job {
  const places = job.openings.some(({ place }) => place !== undefined);
  const openings = job.openings.map((request, i): OpeningRequest => {
    const { layers, artwork } = mat.openings[i]!;
    const lowest = layers[seenLayers(job, request).at(-1)!]!.faceBox;
    const inset = measuredInset(job, request);
    // A slanting side moves its box by more than its distance: there the measured edge is not the box drawn in.
    const plain = inset === 0 || shapeOf(request.shape).growsUnevenly !== true;
    const size = { width: lowest.width - 2 * inset, height: lowest.height - 2 * inset };
    const { border } = layers[0]!;
    const overlap =
      artwork === undefined || request.float !== undefined
        ? {}
        : {
            left: lowest.x + inset - artwork.box.x,
            top: lowest.y + inset - artwork.box.y,
            right: artwork.box.x + artwork.box.width - (lowest.x + lowest.width - inset),
            bottom: artwork.box.y + artwork.box.height - (lowest.y + lowest.height - inset),
          };
    const { place } = request;
    return {
      ...request,
      ...(given.sizes[i % 3] && plain ? { size } : {}),
      ...(given.overlaps[i % 3] && plain ? { overlap } : {}),
      ...(place === undefined || place.below !== undefined
        ? {}
        : { place: { ...place, ...Object.fromEntries(given.places.map((side) => [side, border[side]])) } }),
    };
  });
  const boxes = mat.openings.map(({ layers }) => layers[0]!.faceBox);
  const first = job.arrange?.rows[0] ?? 0;
  const across = job.arrange?.columns === false && first > 1 ? boxes[1]!.x - boxes[0]!.x - boxes[0]!.width : undefined;
  return {
    ...job,
    openings,
    mat: {
      ...job.mat,
      ...(given.outer ? { outer: mat.outer } : {}),
      border: places
        ? job.mat.border
        : { ...job.mat.border, ...Object.fromEntries(given.border.map((side) => [side, mat.border[side]])) },
      layers: job.mat.layers.map((layer, k) =>
        given.reveals && k > 0 && layer.reveals === undefined
          ? { ...layer, reveal: mat.openings[0]!.layers[k]!.reveal.top }
          : layer,
      ),
    },
    ...(job.arrange === undefined || !given.gaps || across === undefined
      ? {}
      : { arrange: { ...job.arrange, across } }),
  };
}

const lengths = (mat: Mat): readonly number[] => [
  mat.outer.width,
  mat.outer.height,
  ...SIDES.map((side) => mat.border[side]),
  ...mat.openings.flatMap(({ layers, artwork, sight }) =>
    [...layers.flatMap(({ faceBox, backBox }) => [faceBox, backBox]), sight, ...(artwork ? [artwork.box] : [])].flatMap(
      ({ x, y, width, height }) => [x, y, width, height],
    ),
  ),
];

describe('what was solved, given back with any of its results', () => {
  for (const [name, texts] of [
    ['rows and columns of every shape', groupJob.map(({ text }) => text)],
    ['groups on a mat of given size', onGivenMat],
    ['openings with places of their own', inPlaces],
  ] as const) {
    it(`makes the same mat: ${name}`, () => {
      let compared = 0;
      fc.assert(
        fc.property(texts, again, (text, given) => {
          const read = readJob({ text, file: 'job.yaml', ...shop });
          if (!read.ok) throw new Error(JSON.stringify(read.problems));
          const { job } = read.value;
          const made = solve(job);
          if (!made.ok) return;
          const mat = made.value;
          const second = solve(withResults(job, mat, given));
          if (!second.ok) throw new Error(JSON.stringify(second.problems));
          compared++;
          const [before, now] = [lengths(mat), lengths(second.value)];
          expect(now.length).toBe(before.length);
          for (const [i, each] of now.entries()) expect(Math.abs(each - before[i]!)).toBeLessThan(1e-6);
        }),
        { numRuns: 25 },
      );
      expect(compared).toBeGreaterThan(5);
    });
  }
});
