import fc from 'fast-check';
import type { Side, SomeSides } from '../../src/geometry/sides.ts';
import { SIDES } from '../../src/geometry/sides.ts';
import type { Job } from '../../src/job/job.ts';
import type { Weighting } from '../../src/job/mat.ts';
import { board, jobOf, layer, opening } from './job.ts';

/** A mat with every size written down, consistent by construction. Lengths are mm. */
export interface WholeMat {
  readonly outer: { readonly width: number; readonly height: number };
  readonly border: Readonly<Record<Side, number>>;
  readonly layers: readonly {
    readonly thickness: number;
    readonly angle: number;
    readonly reverse: boolean;
    readonly reveal: number;
  }[];
  readonly size: { readonly width: number; readonly height: number };
  readonly artwork: { readonly width: number; readonly height: number };
  readonly cover: Readonly<Record<Side, number>>;
  readonly floated: boolean;
  readonly measure: 'face' | 'sight';
  /** From the lowest face to the measured edge. */
  readonly inset: number;
}

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const bySide = (min: number, max: number) =>
  fc.record({ top: length(min, max), right: length(min, max), bottom: length(min, max), left: length(min, max) });

export const wholeMat: fc.Arbitrary<WholeMat> = fc
  .record({
    border: bySide(20, 150),
    layers: fc.array(
      fc.record({
        thickness: length(1.2, 3),
        angle: fc.oneof(fc.constant(90), fc.constant(45), length(30, 90)),
        reverse: fc.boolean(),
        reveal: length(7, 20),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    size: fc.record({ width: length(60, 600), height: length(60, 600) }),
    cover: bySide(9, 19),
    floated: fc.boolean(),
    measure: fc.constantFrom('face' as const, 'sight' as const),
  })
  .map((drawn) => {
    const reveals = drawn.layers.slice(1).reduce((sum, each) => sum + each.reveal, 0);
    const { border, cover, size } = drawn;
    const sign = drawn.floated ? -1 : 1;
    const lowest = drawn.layers.at(-1)!;
    const setback = lowest.angle === 90 ? 0 : lowest.thickness / Math.tan((lowest.angle * Math.PI) / 180);
    const inset = drawn.measure === 'sight' && !lowest.reverse ? setback : 0;
    return {
      ...drawn,
      inset,
      outer: {
        width: border.left + border.right + 2 * reveals + size.width + 2 * inset,
        height: border.top + border.bottom + 2 * reveals + size.height + 2 * inset,
      },
      artwork: {
        width: size.width + sign * (cover.left + cover.right),
        height: size.height + sign * (cover.top + cover.bottom),
      },
    };
  });

/** What of a whole mat a job leaves out. */
export interface LeftOut {
  readonly outer?: boolean;
  readonly size?: boolean;
  readonly borders?: readonly Side[];
  readonly reveal?: number;
  readonly covers?: readonly Side[];
  readonly weighting?: Weighting;
}

function without(lengths: Readonly<Record<Side, number>>, sides: readonly Side[] = []): SomeSides {
  return Object.fromEntries(SIDES.filter((side) => !sides.includes(side)).map((side) => [side, lengths[side]]));
}

/** The job that states the whole mat but for what is left out. */
export function jobWithout(mat: WholeMat, out: LeftOut = {}): Job {
  const cover = without(mat.cover, out.covers);
  return jobOf({
    units: 'mm',
    openings: [
      opening({
        artwork: mat.artwork,
        measure: mat.measure,
        ...(mat.floated ? { float: cover } : { overlap: cover }),
        ...(out.size === true ? {} : { size: mat.size }),
      }),
    ],
    mat: {
      border: without(mat.border, out.borders),
      layers: mat.layers.map(({ thickness, angle, reverse, reveal }, index) =>
        layer({
          board: board(thickness),
          bevel: { angle, reverse },
          ...(index === 0 || index === out.reveal ? {} : { reveal }),
        }),
      ),
      ...(out.outer === true ? {} : { outer: mat.outer }),
      ...(out.weighting === undefined ? {} : { weighting: out.weighting }),
    },
  });
}
