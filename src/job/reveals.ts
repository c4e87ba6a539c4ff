import * as z from 'zod/mini';
import { type BySide, namesNoSide, SIDES, type SomeSides } from '../geometry/sides.ts';
import { described, oneOf } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';

/** What one opening does with an under mat: its own reveal by side, or nothing is seen of it. */
export type OpeningStep = BySide<number> | 'same' | 'skip';

export function revealsSchema(unit: LengthUnit) {
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

/** Sides that are left out have the least of the reveals that are given, of which there must be one. */
export function withLeast(given: SomeSides): BySide<number> {
  const least = Math.min(...SIDES.flatMap((side) => given[side] ?? []));
  const of = (side: (typeof SIDES)[number]): number => given[side] ?? least;
  return { top: of('top'), right: of('right'), bottom: of('bottom'), left: of('left') };
}

export const stepFrom = (given: z.output<ReturnType<typeof revealsSchema>>[number]): OpeningStep =>
  typeof given === 'string' ? given : namesNoSide(given) ? 'same' : withLeast(given);
