import * as z from 'zod/mini';
import { LENGTH_UNITS, type LengthUnit } from '../units/units.ts';
import { boardShape, boardThickness } from './board-schema.ts';
import { id, lengthFields, line, number, oneOf, record, yesNo } from './fields.ts';

const named = <T extends z.core.$ZodType>(value: T, expected: string, about: string, example: unknown) =>
  z.optional(
    z
      .record(id({ about: 'The name that jobs use' }), value, expected)
      .check(z.meta({ description: about, examples: [example] })),
  );

/** The whole shop, bare numbers being in `unit`. */
export function shopSchema(unit: LengthUnit) {
  return record(
    {
      units: z.optional(
        oneOf(LENGTH_UNITS as readonly ['in', 'mm', 'cm'], {
          about: 'The unit of bare numbers in this file',
          examples: ['in'],
        }),
      ),
      boards: named(boardSchema(unit), 'boards by name', 'The boards that the shop cuts', {
        'bone-4': { thickness: '1.4 mm', colour: '#efe9dc', sheets: ['32 x 40 in'], price: 9.5 },
      }),
      heads: named(headSchema(unit), 'heads by name', 'The cutting heads', {
        'pull-45': {
          bevel: 45,
          opening: 'left',
          straightedge: 0,
          start: '1.2 mm',
          stop: '-0.4 mm',
          overrun: '0.25 mm',
        },
      }),
      guide: z.optional(guideSchema(unit)),
      printers: named(printerSchema(unit), 'printers by name', 'Printers with what their check line measured', {
        office: { x: 0.9965, y: 0.998 },
      }),
      papers: named(paperSchema(unit), 'papers by name', 'Papers of the shop’s own', {
        banner: { size: '13 x 40 in' },
      }),
    },
    'a map of keys: boards, heads, guide, printers …',
    { about: 'The shop: its boards, heads, guide and printers' },
  );
}

export type ShopInput = z.output<ReturnType<typeof shopSchema>>;

function boardSchema(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  return record(
    {
      thickness: z.optional(boardThickness(unit)),
      ...boardShape(),
      sheets: z.optional(
        z
          .array(size({ about: 'A stock sheet', examples: ['32 x 40 in'], least: 50 }), 'a list of sheet sizes')
          .check(z.meta({ description: 'Sizes it is stocked in', examples: [['32 x 40 in', '40 x 60 in']] })),
      ),
      price: z.optional(
        number({
          about: 'Price of the largest sheet, in the shop’s money',
          examples: [9.5],
          min: 0,
          max: 1e6,
          expected: 'a price',
        }),
      ),
      directional: z.optional(
        yesNo({ about: 'The board has a grain or a pattern, so blanks may not be turned', examples: [false] }),
      ),
    },
    'a map: thickness, plies, name, colour, core, sheets, price, directional',
    { about: 'A board' },
  );
}

function headSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const signed = (about: string) => length({ about, examples: ['1.2 mm'], least: -50, most: 50 });
  const offset = (about: string) =>
    z
      .union(
        [
          z.pipe(
            signed(about),
            z.transform((mm) => [{ offset: mm }]),
          ),
          z.array(
            record(
              {
                thickness: length({ about: 'Thickness of the board', examples: ['1.4 mm'], least: 0.1, most: 25 }),
                offset: signed(about),
              },
              'a map: thickness, offset',
            ),
            'a list of {thickness, offset}',
          ),
        ],
        'a length, or a list of {thickness, offset}',
      )
      .check(z.meta({ description: about, examples: ['1.2 mm', [{ thickness: '1.4 mm', offset: '1.2 mm' }]] }));
  return record(
    {
      bevel: z.optional(
        number({
          about: 'Degrees between the bevel and the face of the board',
          examples: [45],
          min: 20,
          max: 90,
          expected: 'an angle from 20 to 90 degrees',
        }),
      ),
      opening: z.optional(
        oneOf(['left', 'right'], {
          about: 'The hand of the travel on which the opening lies, seen from the back',
          examples: ['left'],
        }),
      ),
      straightedge: z.optional(
        length({
          about: 'Straightedge to the blade’s line of entry; 0 where the head needs none',
          examples: ['1 3/8'],
          least: 0,
          most: 500,
        }),
      ),
      straightedgeOn: z.optional(
        oneOf(['border', 'opening'], {
          about: 'The side of the line on which the straightedge lies',
          examples: ['border'],
        }),
      ),
      bar: z.optional(
        length({
          about: 'Bar to blade, for sides that the guide cannot reach',
          examples: ['1 1/2'],
          least: 0,
          most: 500,
        }),
      ),
      scribe: z.optional(line({ about: 'Where on the head the scribe is read', examples: ['the notch at the front'] })),
      start: z.optional(offset('How far ahead of the scribe the blade reaches the face when it is pushed in')),
      stop: z.optional(offset('How far ahead of the scribe the cut in the face ends')),
      overrun: z.optional(length({ about: 'Wished overrun at both ends', examples: ['0.25 mm'], least: 0, most: 10 })),
      blade: z.optional(line({ about: 'The blade it was calibrated with', examples: ['0.012 in, fresh'] })),
      depth: z.optional(line({ about: 'The depth it was calibrated at', examples: ['just scratches the slip sheet'] })),
      date: z.optional(line({ about: 'The day it was calibrated', examples: ['2024-03-01'] })),
    },
    'a map: bevel, opening, straightedge, start, stop, overrun …',
    { about: 'A cutting head' },
  );
}

function guideSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  return record(
    {
      graduation: z.optional(
        length({ about: 'The finest division of its scale', examples: ['1/16 in'], least: 0.05, most: 25.4 }),
      ),
      longest: z.optional(length({ about: 'The longest distance it can be set to', examples: ['12 in'], least: 10 })),
      setAt: z.optional(
        length({
          about: 'Thickness of the board it was set at; left out where the bar keeps its height',
          examples: ['1.4 mm'],
          least: 0.1,
          most: 25,
        }),
      ),
      a: z.optional(length({ about: 'True setting = a + b × reading', examples: [0, '0.3 mm'], least: -50, most: 50 })),
      b: z.optional(
        number({
          about: 'True setting = a + b × reading',
          examples: [1],
          min: 0.8,
          max: 1.25,
          expected: 'a number near 1',
        }),
      ),
    },
    'a map: graduation, longest, setAt, a, b',
    {
      about: 'The guide that sets the border',
      examples: [{ graduation: '1/16 in', longest: '12 in', setAt: '1.4 mm', a: 0, b: 1 }],
    },
  );
}

function printerSchema(unit: LengthUnit) {
  const { sides } = lengthFields(unit);
  const scale = (axis: string) =>
    z.optional(
      number({
        about: `Measured over nominal length ${axis} the page`,
        examples: [0.9965],
        min: 0.8,
        max: 1.25,
        expected: 'a number near 1: measured over nominal length',
      }),
    );
  return record(
    {
      x: scale('across'),
      y: scale('along'),
      margin: z.optional(sides({ about: 'Unprintable edge', examples: ['1/6 in'], least: 0, most: 100 })),
    },
    'a map: x, y, margin',
    { about: 'A printer' },
  );
}

function paperSchema(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  return record(
    { size: size({ about: 'Width × height of the paper', examples: ['13 x 40 in'], least: 50 }) },
    'a map: size',
    { about: 'A paper' },
  );
}
