import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import { check, described, line, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';

/** Where one opening lies: mat edge to its face opening in the top mat; centred in a direction that says nothing. */
export interface PlaceRequest {
  readonly left?: number;
  readonly right?: number;
  readonly top?: number;
  readonly bottom?: number;
  /** Under the opening of that name, centred on it. */
  readonly below?: { readonly opening: string; readonly gap: number };
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

export function placeFrom(given: z.output<ReturnType<typeof placeSchema>> | undefined): PlaceRequest | undefined {
  if (given === undefined) return undefined;
  const { below, gap, left, right, top, bottom } = given;
  if (below !== undefined) return { below: { opening: below, gap: gap ?? 0 } };
  return defined({ left, right, top, bottom });
}
