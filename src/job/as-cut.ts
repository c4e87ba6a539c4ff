import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import type { SomeSides } from '../geometry/sides.ts';
import { defined } from '../problems/defined.ts';
import { error, type Problem } from '../problems/problem.ts';
import { described, needed, record, whole } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';

/** What really came off the cutter. Lengths are mm; what is not named is as planned, or still to do. */
export interface AsCutRequest {
  /** Of the top mat's blank, which is the size of the mat. */
  readonly outer?: Size;
  /** Blanks of under mats, by the layer's index; those that are as planned have none. */
  readonly blanks: readonly (Size | undefined)[];
  readonly openings: readonly OpeningAsCut[];
}

/** The face opening in one layer, as it was measured. Layers above it count as cut too, as planned where they are not named. */
export interface OpeningAsCut {
  /** Indices, from 0. */
  readonly opening: number;
  readonly layer: number;
  readonly size: Size;
  /** Mat edge to this face opening where that was measured; else the error is taken to lie evenly on both sides. */
  readonly border: SomeSides;
}

export function asCutSchema(unit: LengthUnit) {
  const { size, sides } = lengthFields(unit);
  const blank = record(
    { blank: z.optional(size('Width x height of the blank of this layer', ['15 25/32 x 19 3/4'], { least: 25 })) },
    'a map: blank',
  );
  const blanks = z.array(
    described(blank, 'A layer; {} where its blank is as planned, or still to do', [{ blank: '15 25/32 x 19 3/4' }]),
    'a list of layers, the top mat first',
  );
  const opening = record(
    {
      opening: z.optional(whole('Which opening, from 1', [1], 1, 400)),
      layer: z.optional(whole('In which layer, 1 being the top mat', [1, 2], 1, 8)),
      size: needed(size('Width x height of the opening on the face of that layer', ['10 9/16 x 13 1/2'], { least: 1 })),
      border: z.optional(
        sides(
          'Mat edge to that opening where it was measured; else what is off lies evenly on both sides',
          ['2 11/16', { left: '2 11/16' }],
          { least: 0.1 },
        ),
      ),
    },
    'a map: opening, layer, size, border',
  );
  const openings = z.array(
    described(opening, 'An opening that was cut; the layers above it count as cut too', [
      { layer: 1, size: '10 9/16 x 13 1/2' },
    ]),
    'a list of openings as they were cut',
  );
  const map = record(
    {
      outer: z.optional(
        size('Width x height of the mat: of the blank of the top mat', ['16 1/32 x 20'], { least: 25 }),
      ),
      layers: z.optional(
        described(blanks, 'Blanks of the layers, the top mat first', [[{}, { blank: '15 25/32 x 19 3/4' }]]),
      ),
      openings: z.optional(
        described(openings, 'Openings that are cut already', [[{ opening: 1, layer: 1, size: '10 9/16 x 13 1/2' }]]),
      ),
    },
    'a map: outer, layers, openings',
  );
  return described(map, 'What really came off the cutter: everything still to do is worked out again from it', [
    { outer: '16 1/32 x 20' },
    { openings: [{ layer: 1, size: '10 9/16 x 13 1/2' }] },
  ]);
}

type Given = z.output<ReturnType<typeof asCutSchema>>;

/** What was cut, with every layer and opening that it names there in the job. */
export function asCutFrom(given: Given, layers: number, openings: number, problems: Problem[]): AsCutRequest {
  const blanks = (given.layers ?? []).map(({ blank }) => blank);
  const outer = given.outer ?? blanks[0];
  if (given.outer !== undefined && blanks[0] !== undefined) {
    const message = 'the blank of the top mat is given twice, as outer and as the blank of the first layer';
    problems.push(error('as-cut-twice', ['asCut', 'layers', 0, 'blank'], message, 'keep one of the two'));
  }
  if (blanks.length > layers) {
    const message = `${blanks.length} layers were cut, the mat has ${layers}`;
    problems.push(error('as-cut-layer', ['asCut', 'layers'], message, 'name the layers that the mat has'));
  }
  return {
    blanks: blanks.map((blank, index) => (index === 0 ? undefined : blank)),
    openings: openingsFrom(given.openings ?? [], layers, openings, problems),
    ...defined({ outer }),
  };
}

function openingsFrom(
  given: NonNullable<Given['openings']>,
  layers: number,
  openings: number,
  problems: Problem[],
): readonly OpeningAsCut[] {
  const seen = new Set<string>();
  return given.map(({ opening = 1, layer = 1, size, border }, index) => {
    const path = ['asCut', 'openings', index];
    if (layer > layers) {
      const message = `layer ${layer} was cut, the mat has ${layers}`;
      problems.push(error('as-cut-layer', [...path, 'layer'], message, 'layer 1 is the top mat'));
    }
    if (opening > openings) {
      const message = `opening ${opening} was cut, the job has ${openings}`;
      problems.push(error('as-cut-opening', [...path, 'opening'], message, 'count them as the job lists them, from 1'));
    }
    const place = `${opening} ${layer}`;
    if (seen.has(place)) {
      const message = `opening ${opening} of layer ${layer} was cut twice`;
      problems.push(error('as-cut-twice', path, message, 'keep one of the two'));
    }
    seen.add(place);
    return { opening: opening - 1, layer: layer - 1, size, border: { ...border } };
  });
}
