import * as z from 'zod/mini';
import type { Weight } from '../fonts/model.ts';
import { check, described, line, needed, oneOf, part, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { either } from '../shop/units.ts';
import type { LengthUnit, Units } from '../units/units.ts';
import { type PlaceRequest, placeFrom, placeSchema } from './place.ts';

/** A text that is cut through the top mat, so that what lies below shows in the shape of its letters. Lengths are mm. */
export interface LetteringRequest {
  readonly text: string;
  readonly weight: Weight;
  /** Of the capitals. */
  readonly height: number;
  /** Added after each letter. */
  readonly spacing: number;
  /** Width of what ties an island (the inside of O, A, e) to the board, and the least board between two letters. */
  readonly bridge: number;
  /** Letters with an island are bridged, or refused. */
  readonly islands: 'bridge' | 'refuse';
  /** Upright, or with the bevel of the top mat. */
  readonly edge: 'square' | 'bevel';
  /** Of the box round all letters; centred in a direction that says nothing. */
  readonly place: PlaceRequest;
}

const MOST = 8;
/** A mat has room for no more at a height that a blade can follow. */
const LONGEST = 60;

export function letteringSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const bridge =
    'Width of the bridges that hold the inside of O, A or e, and the least board between letters; 1/16 in or 2 mm';
  const one = record(
    {
      text: needed(line('What is cut', ['HERON'], LONGEST)),
      height: needed(length('Height of the capitals', ['3/4'], { least: 5, most: 1000 })),
      weight: z.optional(oneOf('Of the bundled font; bold without it', ['regular', 'bold'])),
      spacing: z.optional(length('Added after each letter; a tenth of the height without it', ['1/16'], { most: 200 })),
      bridge: z.optional(length(bridge, ['1/16'], { least: 0.5, most: 50 })),
      islands: z.optional(oneOf('Letters with an island are bridged, or refused', ['bridge', 'refuse'])),
      edge: z.optional(oneOf('Cut upright, or with the bevel of the top mat', ['square', 'bevel'])),
      place: part(() => placeSchema(unit)),
    },
    'a map: text, height, weight, spacing, bridge, islands, edge, place',
  );
  const each = described(one, 'A text cut through the top mat; what lies below shows in its letters', [
    { text: 'HERON', height: '3/4', place: { below: 'Heron', gap: '1/2' } },
  ]);
  const list = z
    .array(each, 'a list of texts')
    .check(
      check<readonly unknown[]>(({ length: count }) =>
        count <= MOST
          ? undefined
          : { code: 'lettering-many', message: `there are ${count} texts`, hint: `give ${MOST} at most` },
      ),
    );
  return described(
    list,
    'Windows in the shape of letters, by template or machine',
    [[{ text: 'HERON', height: '3/4' }]],
    {
      maxItems: MOST,
    },
  );
}

/** Between letters and islands: narrower paper board tears when it is lifted (common practice, no source). */
const usualBridge = (units: Units): number => either(units, 1 / 16, 2);

/** A tenth of the height holds letters apart that the font sets close together (common practice, no source). */
const SPACING = 1 / 10;

export function letteringFrom(
  given: z.output<ReturnType<typeof letteringSchema>> | undefined,
  units: Units,
): readonly LetteringRequest[] | undefined {
  return given?.map((each) => ({
    text: each.text,
    weight: each.weight ?? 'bold',
    height: each.height,
    spacing: each.spacing ?? each.height * SPACING,
    bridge: each.bridge ?? usualBridge(units),
    islands: each.islands ?? 'bridge',
    edge: each.edge ?? 'square',
    place: placeFrom(each.place) ?? {},
  }));
}
