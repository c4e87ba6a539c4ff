import * as z from 'zod/mini';
import { bevelAngle } from '../read/fields/bevel-angle.ts';
import {
  colour,
  converted,
  described,
  leaf,
  needed,
  number,
  oneOf,
  record,
  refused,
  taken,
  whole,
  yesNo,
} from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';
import { offsets } from './head-schema.ts';
import { CUT_FORMATS, DIALECTS, MACHINE_KINDS, OPERATIONS } from './machine.ts';

/** Allowed by every dialect of DXF, and an id in SVG. */
const LAYER = /^[A-Za-z][A-Za-z0-9_$-]{0,30}$/;

const layer = () =>
  leaf(
    'a layer’s name',
    (input) => {
      if (typeof input !== 'string') return undefined;
      const hint = 'use up to 31 letters (a to z), digits, hyphens and underscores, a letter first';
      return LAYER.test(input)
        ? taken(input)
        : refused('layer-unusable', 'this cannot name a layer in every file', hint);
    },
    'The layer that the machine’s driver expects',
    ['CUT'],
    { type: 'string', pattern: LAYER.source },
  );

const speed = (about: string) => number(`${about}, mm a second`, [20], 0.01, 5000, 'a number of mm a second');

function operationsSchema() {
  const operation = described(
    record(
      {
        layer: z.optional(layer()),
        colour: z.optional(colour('The colour that the machine’s driver expects', ['#c62828'])),
        pen: z.optional(whole('The pen of a plotter; 0 leaves it out of a plotter’s file', [1], 0, 8)),
        speed: z.optional(speed('How fast the tool goes')),
      },
      'a map: layer, colour, pen, speed',
    ),
    'How one operation is told to the machine',
  );
  const shape = Object.fromEntries(OPERATIONS.map((name) => [name, z.optional(operation)])) as Record<
    (typeof OPERATIONS)[number],
    z.ZodMiniOptional<typeof operation>
  >;
  return described(record(shape, `a map: ${OPERATIONS.join(', ')}`), 'Layer, colour, pen and speed by operation');
}

/** A cutting machine. Which keys go with which kind is told in `machine.ts`. */
export function machineSchema(unit: LengthUnit) {
  const { length, size } = lengthFields(unit);
  const nearOne = (axis: string) =>
    number(`Length moved over length told, ${axis}`, [1.0004], 0.9, 1.1, 'a number near 1');
  const scale = record({ x: z.optional(nearOne('across')), y: z.optional(nearOne('up')) }, 'a map: x, y');
  const width = (about: string) => length(about, ['0.2 mm'], { least: 0, most: 3 });
  const across = needed(width('Across a cut that runs up the bed'));
  const up = needed(width('Across a cut that runs across the bed'));
  const KERF = 'a length, or a map: x, y';
  const both = converted(width('In every direction'), (mm) => ({ x: mm, y: mm }));
  const tabs = record(
    {
      count: needed(whole('Of every opening', [4], 1, 48)),
      width: needed(length('Of each', ['0.5 mm'], { least: 0.05, most: 20 })),
    },
    'a map: count, width',
  );
  const machine = record(
    {
      kind: z.optional(oneOf('What it cuts with', MACHINE_KINDS)),
      bed: z.optional(size('What it can reach, width x height', ['600 x 400 mm'], { least: 20 })),
      gap: z.optional(length('Between boards that lie on the bed together', ['5 mm'], { least: 0, most: 200 })),
      up: z.optional(oneOf('The side of the board that lies up', ['back', 'face'])),
      outside: z.optional(yesNo('False where the board is trimmed to its outer size before')),
      marks: z.optional(yesNo('Centre, hinge and title scored on the back')),
      notes: z.optional(yesNo('Words and a 100 mm line on a layer that is not cut')),
      thickest: z.optional(length('The thickest board that it cuts', ['2 mm'], { least: 0.05, most: 50 })),
      format: z.optional(oneOf('The file that it takes', CUT_FORMATS)),
      dialect: z.optional(oneOf('Of DXF', DIALECTS)),
      tolerance: z.optional(
        length('How far arcs or chords may lie from a curve', ['0.01 mm'], { least: 0.001, most: 0.5 }),
      ),
      line: z.optional(length('Width of the lines in a file', ['0.1 mm'], { least: 0.001, most: 1 })),
      scale: z.optional(described(scale, 'Corrected in a plotter’s file')),
      origin: z.optional(oneOf('Where a plotter counts from', ['corner', 'centre'])),
      travel: z.optional(speed('How fast it goes without cutting')),
      lift: z.optional(number('Seconds for each time down and up', [0.4], 0, 60, 'a number of seconds')),
      sendSpeeds: z.optional(yesNo('Whether a plotter’s file sets speeds')),
      comments: z.optional(yesNo('Whether a plotter’s file holds words; not every plotter knows comments')),
      operations: z.optional(operationsSchema()),
      kerf: z.optional(
        described(z.union([both, record({ x: across, y: up }, KERF)], KERF), 'What the beam takes away', ['0.2 mm']),
      ),
      tabs: z.optional(described(tabs, 'Bridges that hold each fallout', [{ count: 4, width: '0.5 mm' }])),
      offset: z.optional(width('How far the tip of the knife trails its axis')),
      overcut: z.optional(length('How far a cut goes past its beginning', ['1 mm'], { least: 0, most: 50 })),
      lead: z.optional(length('Radius by which the knife comes in from the waste', ['3 mm'], { least: 0.2, most: 50 })),
      passes: z.optional(whole('All but the last are light ones', [2], 1, 6)),
      registration: z.optional(length('Size of the printed targets', ['8 mm'], { least: 2, most: 50 })),
      bevel: z.optional(bevelAngle()),
      opening: z.optional(
        oneOf('The hand of the travel on which the opening lies, the back being up', ['left', 'right']),
      ),
      start: z.optional(offsets(unit, 'How far ahead of the head’s own place the blade reaches the face')),
      stop: z.optional(offsets(unit, 'How far ahead of the head’s own place the cut in the face ends')),
      spread: z.optional(
        length('How far one end of its cuts strays, from its calibration', ['0.12 mm'], { least: 0, most: 10 }),
      ),
      overrun: z.optional(
        length('Wished overrun at both ends; twice the spread without it', ['0.25 mm'], { least: 0, most: 10 }),
      ),
    },
    'a map: kind, bed, kerf, offset, bevel …',
  );
  return described(machine, 'A cutting machine');
}
