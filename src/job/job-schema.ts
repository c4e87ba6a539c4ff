import * as z from 'zod/mini';
import { LENGTH_UNITS, type LengthUnit } from '../units/units.ts';
import { boardInPlace } from './board-schema.ts';
import { id, lengthFields, line, number, oneOf, ratio, record, yesNo } from './fields.ts';

const meta = (description: string, ...examples: unknown[]) =>
  z.meta({ description, ...(examples.length > 0 ? { examples } : {}) });

/** The whole job, bare numbers being in `unit`. */
export function jobSchema(unit: LengthUnit) {
  return record(
    {
      title: z.optional(
        line({
          about: 'What the piece is called on every document; the file’s name without one',
          examples: ['Heron, linocut'],
        }),
      ),
      customer: z.optional(line({ about: 'Whom it is for', examples: ['Saltmarsh Print Room'] })),
      units: z.optional(
        oneOf(LENGTH_UNITS as readonly ['in', 'mm', 'cm'], {
          about: 'The unit of bare numbers, and of what documents print',
          examples: ['in'],
        }),
      ),
      mat: z.optional(matSchema(unit)),
      openings: z
        .array(openingSchema(unit), 'a list of openings')
        .check(meta('The openings of the mat; one for now'), exactlyOne()),
      count: z.optional(
        number({
          about: 'How many alike',
          examples: [1, 40],
          min: 1,
          max: 999,
          whole: true,
          expected: 'a whole number',
        }),
      ),
      bench: z.optional(benchSchema(unit)),
      print: z.optional(printSchema(unit)),
    },
    'a map of keys: title, units, mat, openings …',
    { about: 'A framed piece: its mat, its opening and how it is made' },
  );
}

export type JobInput = z.output<ReturnType<typeof jobSchema>>;

const exactlyOne = () =>
  z.check<readonly unknown[]>((payload) => {
    if (payload.value.length === 1) return;
    payload.issues.push({
      code: 'custom',
      input: payload.value,
      message:
        payload.value.length === 0 ? 'the list of openings is empty' : `there are ${payload.value.length} openings`,
      params: { code: 'openings-one', hint: 'give exactly one opening' },
    });
  });

function matSchema(unit: LengthUnit) {
  const { size, sides } = lengthFields(unit);
  return record(
    {
      outer: z.optional(size({ about: 'Width × height of the whole mat', examples: ['16 x 20', [16, 20]], least: 25 })),
      frame: z.optional(frameSchema(unit)),
      border: z.optional(
        sides({
          about: 'Mat edge to the face opening of the top mat',
          examples: [3, { top: 3, bottom: '3 1/2', sides: 2.75 }],
          least: 1,
        }),
      ),
      weighting: z.optional(weightingSchema(unit)),
      layers: z.optional(
        z
          .array(layerSchema(unit), 'a list of layers, the top mat first')
          .check(
            meta('Top mat first; one 4-ply mat without it', [{ board: 'bone-4' }, { board: 'slate-4', reveal: '1/4' }]),
            atLeastOne(),
          ),
      ),
    },
    'a map: outer, frame, border, weighting, layers',
    { about: 'The mat: its size, its borders and its layers' },
  );
}

const MOST_LAYERS = 8;

const atLeastOne = () =>
  z.check<readonly unknown[]>((payload) => {
    const { length } = payload.value;
    if (length >= 1 && length <= MOST_LAYERS) return;
    payload.issues.push({
      code: 'custom',
      input: payload.value,
      message: length === 0 ? 'the list of layers is empty' : `there are ${length} layers`,
      params: { code: 'layers-count', hint: `give 1 to ${MOST_LAYERS} layers, or leave the key out for one top mat` },
    });
  });

function frameSchema(unit: LengthUnit) {
  const { length, size } = lengthFields(unit);
  return record(
    {
      inside: z.optional(
        size({ about: 'Size of the rebate, measured; the clearance comes off it', examples: ['16 x 20'], least: 25 }),
      ),
      nominal: z.optional(
        size({ about: 'Size the frame is sold as, its clearance already in it', examples: ['16 x 20'], least: 25 }),
      ),
      clearance: z.optional(
        length({ about: 'Play of the mat in the rebate, over all', examples: ['1/8'], least: 0, most: 25 }),
      ),
      lip: z.optional(
        length({
          about: 'How much of the mat the frame’s lip covers on each side',
          examples: ['1/4'],
          least: 0,
          most: 100,
        }),
      ),
    },
    'a map: inside or nominal, clearance, lip',
    { about: 'The frame that the mat goes into', examples: [{ inside: '16 x 20', clearance: '1/8', lip: '1/4' }] },
  ).check(
    z.check<{ inside?: unknown; nominal?: unknown }>((payload) => {
      const { inside, nominal } = payload.value;
      if ((inside === undefined) !== (nominal === undefined)) return;
      payload.issues.push({
        code: 'custom',
        input: payload.value,
        message: inside === undefined ? 'the frame has no size' : 'the frame has both inside and nominal',
        params: { code: 'frame-size', hint: 'give inside (measured in the rebate) or nominal (as sold)' },
      });
    }),
  );
}

function weightingSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const expected = 'none, diagonal, {add: a length} or {ratio: 4/3}';
  const word = z.pipe(
    z.enum(['none', 'diagonal'], expected),
    z.transform((kind) => ({ kind })),
  );
  const map = z.pipe(
    record(
      {
        add: z.optional(length({ about: 'Bottom border = top + this', examples: ['1/2'], least: 0 })),
        ratio: z.optional(ratio({ about: 'Bottom border = this × top', examples: ['4/3', 1.25], min: 1, max: 5 })),
      },
      expected,
    ),
    z.transform(({ add, ratio: times }, context) => {
      if (add !== undefined && times === undefined) return { kind: 'add' as const, length: add };
      if (times !== undefined && add === undefined) return { kind: 'ratio' as const, ratio: times };
      context.issues.push({
        code: 'custom',
        input: add,
        message:
          add === undefined ? 'the weighting says neither add nor ratio' : 'the weighting says both add and ratio',
        params: { code: 'weighting-one', hint: 'give one of the two' },
      });
      return z.NEVER;
    }),
  );
  return z
    .union([word, map], expected)
    .check(meta('Extra border at the bottom', 'none', 'diagonal', { add: '1/2' }, { ratio: '4/3' }));
}

function layerSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  return record(
    {
      board: z.optional(
        z
          .union(
            [id({ about: 'A board of the shop' }), boardInPlace(unit)],
            'a board of the shop by its name, or a map with its thickness',
          )
          .check(
            meta('What the layer is made of: a board of the shop, or one described in place', 'bone-4', {
              thickness: '1.4 mm',
              colour: '#efe9dc',
              name: 'Bone',
            }),
          ),
      ),
      bevel: z.optional(bevelSchema()),
      reveal: z.optional(
        length({
          about: 'Face edge of the layer above to the face edge of this one',
          examples: ['1/4'],
          least: 0.1,
          most: 500,
        }),
      ),
      trimBack: z.optional(
        length({ about: 'Taken off each edge of an under mat', examples: ['1/8'], least: 0, most: 100 }),
      ),
    },
    'a map: board, bevel, reveal, trimBack',
    { about: 'One layer of the mat', examples: [{ board: 'slate-4', reveal: '1/4' }] },
  );
}

function bevelSchema() {
  const angle = number({
    about: 'Degrees between the bevel and the face of the board; 90 is square',
    examples: [45, 60, 90],
    min: 20,
    max: 90,
    expected: 'an angle from 20 to 90 degrees',
  });
  const expected = 'an angle from 20 to 90 degrees, or {angle, reverse}';
  const plain = z.pipe(
    angle,
    z.transform((degrees) => ({ angle: degrees as number | undefined, reverse: false })),
  );
  const map = z.pipe(
    record(
      {
        angle: z.optional(angle),
        reverse: z.optional(yesNo({ about: 'The bevel slopes the other way and hides the core', examples: [true] })),
      },
      expected,
    ),
    z.transform((given) => ({ angle: given.angle, reverse: given.reverse ?? false })),
  );
  return z
    .union([plain, map], expected)
    .check(meta('Angle of the bevel; 45, or the head’s own, without one', 45, 90, { angle: 45, reverse: true }));
}

function openingSchema(unit: LengthUnit) {
  const { size, sides } = lengthFields(unit);
  return record(
    {
      name: z.optional(line({ about: 'What documents call the opening', examples: ['Heron'] })),
      shape: z.optional(oneOf(['rectangle'], { about: 'The shape of the opening', examples: ['rectangle'] })),
      artwork: z.optional(
        size({
          about: 'Size of the artwork: the smaller where its ends differ',
          examples: ['10 1/2 x 13 1/2'],
          least: 5,
        }),
      ),
      overlap: z.optional(
        sides({
          about: 'Mat over the edge of the artwork',
          examples: ['1/4', { top: '1/4', bottom: '1/4', sides: '1/8' }],
          least: 0.1,
          most: 500,
        }),
      ),
      float: z.optional(
        sides({
          about: 'Paper or backing shown around the artwork',
          examples: ['1/4', { sides: '1/4', top: '1/4', bottom: '1/2' }],
          least: 0.1,
          most: 1000,
        }),
      ),
      size: z.optional(size({ about: 'Size of the opening itself', examples: ['10 x 13'], least: 5 })),
      measure: z.optional(
        oneOf(['face', 'sight'], {
          about: 'Whether sizes are the face opening of the lowest layer, or what is seen through the innermost edge',
          examples: ['face'],
        }),
      ),
    },
    'a map: shape, artwork, overlap or float, size, measure',
    { about: 'One opening', examples: [{ shape: 'rectangle', artwork: '10 1/2 x 13 1/2', overlap: '1/4' }] },
  );
}

function benchSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  return record(
    {
      head: z.optional(id({ about: 'The head of the shop that cuts the bevels', examples: ['pull-45'] })),
      graduation: z.optional(
        length({
          about: 'What guide settings are rounded to; the guide’s own without one',
          examples: ['1/16', '1 mm'],
          least: 0.05,
          most: 25.4,
        }),
      ),
      snap: z.optional(
        yesNo({ about: 'Move the opening evenly so that settings lie on the graduation', examples: [true] }),
      ),
      stack: z.optional(
        oneOf(['together', 'apart'], {
          about: 'Whether under mats are cut on the top mat or each by itself',
          examples: ['together'],
        }),
      ),
      hinge: z.optional(
        oneOf(['top', 'right', 'bottom', 'left'], {
          about: 'The edge along which window and backing hinge together',
          examples: ['left'],
        }),
      ),
    },
    'a map: head, graduation, snap, stack, hinge',
    { about: 'How it is cut' },
  );
}

function printSchema(unit: LengthUnit) {
  const { length, sides } = lengthFields(unit);
  return record(
    {
      paper: z.optional(
        line({
          about: 'A paper by its name, one of the shop’s own, width x height, fit or roll:WIDTH',
          examples: ['letter', 'a4', '13 x 19 in', 'roll:24 in'],
        }),
      ),
      margin: z.optional(
        sides({ about: 'Left blank at the edges of the paper', examples: ['1/4'], least: 0, most: 100 }),
      ),
      lap: z.optional(
        length({ about: 'How far neighbouring sheets lie over one another', examples: ['1/2'], least: 0, most: 100 }),
      ),
      join: z.optional(
        oneOf(['lap', 'butt'], { about: 'Sheets laid over one another, or edge to edge', examples: ['lap'] }),
      ),
      transfer: z.optional(
        oneOf(['prick', 'cut-through'], {
          about: 'Corners pricked through and the paper taken off, or the paper left on and cut through',
          examples: ['prick'],
        }),
      ),
      paperThickness: z.optional(
        length({
          about: 'Thickness of the pattern’s paper, which counts where it is cut through',
          examples: ['0.1 mm'],
          least: 0,
          most: 2,
        }),
      ),
      printer: z.optional(id({ about: 'The printer of the shop whose scale is corrected', examples: ['office'] })),
    },
    'a map: paper, margin, lap, join, transfer, paperThickness, printer',
    { about: 'How the pattern is printed' },
  );
}
