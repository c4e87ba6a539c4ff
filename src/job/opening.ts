import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import type { GivenBySides } from '../geometry/sides.ts';
import { defined } from '../problems/defined.ts';
import { check, described, line, oneOf, part, type Refusal, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { Fields } from '../shapes/shape.ts';
import { SHAPE_KINDS, type ShapeKind } from '../shapes/shapes.ts';
import type { LengthUnit, Units } from '../units/units.ts';
import { type DecorRequest, decorFrom, linesSchema } from './lines.ts';
import { fieldsFrom, shapeFields, shapeRefusal } from './opening-fields.ts';
import { type PlaceRequest, placeFrom, placeSchema } from './place.ts';
import { type OpeningStep, revealsSchema, stepFrom } from './reveals.ts';

export interface OpeningRequest {
  readonly name?: string;
  readonly shape: ShapeKind;
  /** What the shape needs beside its size. */
  readonly fields?: Fields;
  readonly place?: PlaceRequest;
  /** One for each under mat, where this opening treats them otherwise than the mat's layers say. */
  readonly steps?: readonly OpeningStep[];
  readonly decor?: readonly DecorRequest[];
  readonly artwork?: Size;
  /** Mat over artwork, per side; only with an artwork. */
  readonly overlap: GivenBySides;
  /** Paper or backing shown around the artwork, per side; undefined where the artwork is overlapped. */
  readonly float?: GivenBySides;
  readonly size?: Size;
  /** The file of the artwork's picture, as the job names it: relative to the job. */
  readonly picture?: string;
  /** `face`: sizes are the face opening of the lowest layer; `sight`: the innermost of all edges. */
  readonly measure: 'face' | 'sight';
}

/** More openings than this are no mat. */
const MOST_OPENINGS = 400;

export function openingsSchema(unit: LengthUnit) {
  const openings = z.array(openingSchema(unit), 'a list of openings').check(
    check<readonly unknown[]>(({ length }) => {
      if (length >= 1 && length <= MOST_OPENINGS) return undefined;
      const message = length === 0 ? 'the list of openings is empty' : `there are ${length} openings`;
      return { code: 'openings-count', message, hint: `give 1 to ${MOST_OPENINGS}` };
    }),
  );
  return described(
    openings,
    'The openings of the mat, row by row',
    [
      [{ artwork: '10 1/2 x 13 1/2', overlap: '1/4' }],
      [
        { name: 'Heron', size: '5 x 7' },
        { name: 'Tern', size: '5 x 7' },
      ],
    ],
    { minItems: 1, maxItems: MOST_OPENINGS },
  );
}

function openingSchema(unit: LengthUnit) {
  const { size, writtenSides } = lengthFields(unit);
  const least = 0.1;
  const overlaps = ['1/4', { top: '1/4', bottom: '1/4', sides: '1/8' }];
  const floats = ['1/4', { top: '1/4', sides: '1/4', bottom: '1/2' }];
  const artwork = 'Size of the artwork, the smaller where its ends differ';
  const measure = 'Sizes are the face opening of the lowest layer, or the innermost edge of all';
  const opening = record(
    {
      name: z.optional(line('What documents call the opening', ['Heron'])),
      shape: z.optional(oneOf('The shape of the opening', SHAPE_KINDS)),
      ...shapeFields(unit),
      artwork: z.optional(size(artwork, ['10 1/2 x 13 1/2'], { least: 5 })),
      overlap: z.optional(writtenSides('Mat over the edge of the artwork', overlaps, { least, most: 500 })),
      float: z.optional(writtenSides('Paper or backing shown around the artwork', floats, { least, most: 1000 })),
      size: z.optional(size('Size of the opening', ['10 x 13'], { least: 5 })),
      place: part(() => placeSchema(unit)),
      reveals: part(() => revealsSchema(unit)),
      lines: part(() => linesSchema(unit)),
      picture: z.optional(line('The artwork’s picture, JPEG or PNG, for proofs: a file beside the job', ['heron.png'])),
      measure: z.optional(oneOf(measure, ['face', 'sight'])),
    },
    'a map: artwork or size, overlap or float, shape, place, measure, picture, name',
  ).check(check<Readonly<Record<string, unknown>>>(refusalOf));
  return described(opening, 'An opening', [{ shape: 'rectangle', artwork: '10 1/2 x 13 1/2', overlap: '1/4' }], {
    not: { required: ['overlap', 'float'] },
  });
}

function refusalOf(given: Readonly<Record<string, unknown>>): Refusal | undefined {
  const { artwork, overlap, float } = given;
  if (overlap !== undefined && float !== undefined) {
    const hint = 'keep overlap where the mat covers the edge of the artwork, float where it does not';
    return { code: 'overlap-or-float', message: 'the opening has both overlap and float', hint };
  }
  if (artwork === undefined && (overlap !== undefined || float !== undefined)) {
    const message = `the opening has ${overlap === undefined ? 'a float' : 'an overlap'}, but no artwork`;
    return { code: 'artwork-missing', message, hint: 'give the size of the artwork too' };
  }
  return shapeRefusal(given);
}

const SHAPE = 'rectangle';

/** A float shows to the innermost edge; all else is measured on the face, where it is marked. */
const usualMeasure = (floated: boolean): 'face' | 'sight' => (floated ? 'sight' : 'face');

export function openingFrom(
  given: z.output<ReturnType<typeof openingSchema>>,
  units: Units,
  bevel: number,
): OpeningRequest {
  const fields = fieldsFrom(given);
  return {
    shape: given.shape ?? (fields?.outline === undefined ? SHAPE : 'outline'),
    overlap: given.overlap ?? {},
    measure: given.measure ?? usualMeasure(given.float !== undefined),
    ...defined({
      name: given.name,
      fields,
      artwork: given.artwork,
      float: given.float,
      size: given.size,
      place: placeFrom(given.place),
      steps: given.reveals?.map(stepFrom),
      decor: given.lines?.map((line) => decorFrom(line, units, bevel)),
      picture: given.picture,
    }),
  };
}
