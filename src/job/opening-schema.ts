import * as z from 'zod/mini';
import { SIDES } from '../geometry/sides.ts';
import {
  check,
  described,
  leaf,
  line,
  needed,
  oneOf,
  type Reading,
  type Refusal,
  record,
  refused,
  taken,
  whole,
} from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { readOutline } from '../shapes/read-outline.ts';
import type { Field } from '../shapes/shape.ts';
import { SHAPE_KINDS, type ShapeKind, shapeOf } from '../shapes/shapes.ts';
import { type LengthUnit, mmPer } from '../units/units.ts';

/** More openings than this are no mat. */
export const MOST_OPENINGS = 400;

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
  const { size, sides } = lengthFields(unit);
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
      overlap: z.optional(sides('Mat over the edge of the artwork', overlaps, { least, most: 500 })),
      float: z.optional(sides('Paper or backing shown around the artwork', floats, { least, most: 1000 })),
      size: z.optional(size('Size of the opening', ['10 x 13'], { least: 5 })),
      place: z.optional(placeSchema(unit)),
      reveals: z.optional(revealsSchema(unit)),
      lines: z.optional(linesSchema(unit)),
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
  const kind = (given.shape ?? (given.outline === undefined ? 'rectangle' : 'outline')) as ShapeKind;
  // An unknown one was told of already.
  if (!SHAPE_KINDS.includes(kind)) return undefined;
  const { fields } = shapeOf(kind);
  const stray = FIELD_NAMES.find((name) => given[name] !== undefined && fields[name] === undefined);
  if (stray !== undefined) {
    const of = SHAPE_KINDS.filter((each) => shapeOf(each).fields[stray] !== undefined).join(' or ');
    const message = `${stray} is nothing that ${kind} has`;
    return { code: 'shape-field-stray', message, hint: `take it out, or write shape: ${of}` };
  }
  for (const [name, field] of Object.entries(fields)) {
    const usual = field.kind === 'outline' ? undefined : field.usual;
    if (given[name] !== undefined || usual !== undefined) continue;
    const example = field.kind === 'choice' ? field.words[0] : field.examples[0];
    const message = `a shape ${kind} needs its ${name}`;
    return { code: 'shape-field-missing', message, hint: `write for example ${name}: ${example}` };
  }
  return undefined;
}

/** Every field of every shape, by name. Two shapes that share a name mean the same by it. */
const FIELDS: Readonly<Record<string, Field>> = Object.assign({}, ...SHAPE_KINDS.map((kind) => shapeOf(kind).fields));
export const FIELD_NAMES: readonly string[] = Object.keys(FIELDS);

function shapeFields(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const of = (name: string): string => `of ${SHAPE_KINDS.filter((kind) => shapeOf(kind).fields[name] !== undefined)}`;
  const make = (name: string, field: Field) => {
    const about = `${field.about} (${of(name)})`;
    switch (field.kind) {
      case 'length':
        return z.optional(length(about, field.examples, field));
      case 'count':
        return z.optional(whole(about, field.examples, field.least, field.most));
      case 'choice':
        return z.optional(oneOf(about, field.words));
      case 'outline':
        return z.optional(
          leaf('an outline: SVG path data or corners', (input) => outlineIn(input, unit), about, field.examples, {
            type: 'string',
          }),
        );
      default: {
        const never: never = field;
        throw new TypeError(`unknown field ${JSON.stringify(never)}`);
      }
    }
  };
  return Object.fromEntries(Object.entries(FIELDS).map(([name, field]) => [name, make(name, field)]));
}

function outlineIn(input: unknown, unit: LengthUnit): Reading<unknown> {
  if (typeof input !== 'string') return undefined;
  const read = readOutline(input, mmPer(unit));
  return read.ok ? taken(read.path) : refused('outline-unreadable', read.message, read.hint);
}

export function placeSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const edge = (side: string) =>
    z.optional(length(`${side} edge of the mat to the face opening of the top mat`, ['3']));
  const place = record(
    {
      left: edge('Left'),
      right: edge('Right'),
      top: edge('Top'),
      bottom: edge('Bottom'),
      below: z.optional(line('Under the opening of that name, centred on it', ['Heron'])),
      gap: z.optional(length('Between the two, face to face', ['1/2'])),
    },
    'a map: left or right, top or bottom; or below and gap',
  ).check(
    check<Readonly<Record<string, unknown>>>((given) => {
      const sides = ['left', 'right', 'top', 'bottom'].filter((side) => given[side] !== undefined);
      if (given.below !== undefined && sides.length > 0) {
        const message = `the place says below and ${sides.join(', ')}`;
        return { code: 'place-twice', message, hint: 'keep below with its gap, or distances from the edges' };
      }
      if ((given.below === undefined) !== (given.gap === undefined)) {
        const message = `the place says ${given.below === undefined ? 'gap, but not below what' : 'below, but no gap'}`;
        return { code: 'place-below', message, hint: 'write both: {below: Heron, gap: 1/2}' };
      }
      if (given.below !== undefined || sides.length > 0) return undefined;
      return { code: 'place-empty', message: 'the place says nothing', hint: 'write for example {left: 3, top: 4}' };
    }),
  );
  return described(place, 'Where the opening lies; centred in a direction that says nothing', [
    { left: 3, top: 4 },
    { below: 'Heron', gap: '1/2' },
  ]);
}

function revealsSchema(unit: LengthUnit) {
  const { sides } = lengthFields(unit);
  const expected = 'a reveal, same or skip';
  const word = oneOf('As the layer says, or nothing seen of it', ['same', 'skip'], expected);
  const own = sides('The reveal in this opening', ['1/4'], { least: 0.1, most: 500 });
  const each = described(
    z.union([word, own], expected),
    'A reveal; same as the layer says; or skip, where nothing of it is seen',
  );
  const list = z.array(each, 'a list, one for each under mat');
  return described(list, 'What this opening does with each under mat', [
    ['1/4', 'skip'],
    [{ top: '1/4', sides: '1/4', bottom: '1/2' }],
  ]);
}

function linesSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const one = record(
    {
      kind: z.optional(oneOf('A groove is cut, an ink line is drawn', ['groove', 'ink'])),
      distance: needed(
        length('Face opening of the top mat to the middle of the line', ['1/2'], { least: 1, most: 1000 }),
      ),
      width: z.optional(length('Width of the line as it is seen', ['1/16', '0.5 mm'], { least: 0.1, most: 20 })),
      sides: z.optional(
        described(
          z.array(oneOf('A straight side', SIDES), 'a list of sides').check(
            check<readonly unknown[]>(({ length: given }) =>
              given > 0
                ? undefined
                : {
                    code: 'line-sides-empty',
                    message: 'the list of sides is empty',
                    hint: 'leave it out for all round',
                  },
            ),
          ),
          'Only along these sides; all round without it',
          [['top', 'bottom']],
          { minItems: 1 },
        ),
      ),
    },
    'a map: kind, distance, width, sides',
  );
  const each = described(one, 'A line round the opening, or along some of its sides', [
    { kind: 'ink', distance: '3/8' },
  ]);
  const list = z
    .array(each, 'a list of lines')
    .check(
      check<readonly unknown[]>(({ length: count }) =>
        count <= 12 ? undefined : { code: 'lines-many', message: `there are ${count} lines`, hint: 'give 12 at most' },
      ),
    );
  return described(list, 'Lines on the face round the opening', [[{ kind: 'groove', distance: '1/2' }]], {
    maxItems: 12,
  });
}
