import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import type { GivenBySides } from '../geometry/sides.ts';
import { defined } from '../problems/defined.ts';
import type { Problem } from '../problems/problem.ts';
import { converted, described, oneOf, part, ratio, record, refuse } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { Shop } from '../shop/shop.ts';
import type { LengthUnit, Units } from '../units/units.ts';
import type { BenchRequest } from './bench.ts';
import { type FrameRequest, frameFrom, frameSchema, rebateProblems } from './frame.ts';
import { type LayerRequest, layersFrom, layersSchema } from './layer.ts';

export interface MatRequest {
  readonly outer?: Size;
  readonly frame?: FrameRequest;
  /** Mat edge to the face opening of the top mat. */
  readonly border: GivenBySides;
  readonly weighting?: Weighting;
  /** Board between any two cuts of neighbouring openings, at least. */
  readonly leastBar?: number;
  /** Top mat first; never empty. */
  readonly layers: readonly LayerRequest[];
}

export type Weighting =
  | { readonly kind: 'none' }
  | { readonly kind: 'add'; readonly length: number }
  | { readonly kind: 'ratio'; readonly ratio: number }
  | { readonly kind: 'diagonal' };

export function matSchema(unit: LengthUnit) {
  const { length, size, writtenSides } = lengthFields(unit);
  const borders = [3, { top: 3, bottom: '3 1/2', sides: '2 3/4' }];
  const mat = record(
    {
      outer: z.optional(size('Width x height of the whole mat', ['16 x 20', [16, 20]], { least: 25 })),
      frame: part(() => frameSchema(unit)),
      border: z.optional(writtenSides('Mat edge to the face opening of the top mat', borders, { least: 1 })),
      weighting: part(() => weightingSchema(unit)),
      leastBar: z.optional(
        length('Board between neighbouring openings, where more is wanted than holds', ['1/2'], {
          least: 0,
          most: 500,
        }),
      ),
      layers: part(() => layersSchema(unit)),
    },
    'a map: outer, frame, border, weighting, leastBar, layers',
  );
  return described(mat, 'The mat: its size, its borders and its layers');
}

function weightingSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const expected = 'none, diagonal, {add: a length} or {ratio: 4/3}';
  const kinds = oneOf('No extra at the bottom, or by the diagonal', ['none', 'diagonal'], expected);
  const one = converted(kinds, (kind): Weighting => ({ kind }));
  const map = z.pipe(
    record(
      {
        add: z.optional(length('Bottom border = top + this', ['1/2'])),
        ratio: z.optional(ratio('Bottom border = this x top', ['4/3', 1.25], 1, 5)),
      },
      expected,
    ),
    z.transform((given, context): Weighting => {
      const { add, ratio: times } = given;
      if (add !== undefined && times === undefined) return { kind: 'add', length: add };
      if (times !== undefined && add === undefined) return { kind: 'ratio', ratio: times };
      const which = add === undefined ? 'neither add nor ratio' : 'both add and ratio';
      const hint = 'give one of the two';
      return refuse(context, given, { code: 'weighting-one', message: `the weighting says ${which}`, hint });
    }),
  );
  return described(z.union([one, map], expected), 'Extra border at the bottom', [
    'none',
    'diagonal',
    { add: '1/2' },
    { ratio: '4/3' },
  ]);
}

export function matFrom(
  given: z.output<ReturnType<typeof matSchema>>,
  bench: BenchRequest,
  headNamed: boolean,
  shop: Shop,
  units: Units,
  problems: Problem[],
): MatRequest {
  const layers = layersFrom(given.layers, bench, headNamed, shop, units, problems);
  const frame = given.frame === undefined ? undefined : frameFrom(given.frame, shop, units, problems);
  if (frame !== undefined) problems.push(...rebateProblems(frame, layers, units));
  return {
    border: borderFrom(given.border ?? {}, given.weighting),
    layers,
    ...defined({ outer: given.outer, weighting: given.weighting, leastBar: given.leastBar, frame }),
  };
}

/** One length for every side is the weighted mat's narrower border: the weighting says how much more the others have. */
function borderFrom(given: GivenBySides, weighting: Weighting | undefined): GivenBySides {
  if (given.written !== 'once' || weighting === undefined || weighting.kind === 'none') return given;
  const { top, left, right } = given;
  const sides = weighting.kind === 'diagonal' ? { left, right } : { top, left, right };
  return defined({ ...sides, written: given.written });
}
