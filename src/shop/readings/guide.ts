import * as z from 'zod/mini';
import { needed, record } from '../../read/fields/fields.ts';
import { lengthFields } from '../../read/fields/length-fields.ts';
import type { LengthUnit } from '../../units/units.ts';
import { date, some } from './parts.ts';

export const GUIDE_EXAMPLE = { setting: '2 in', width: '50.9 mm' };

export function guideShape(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const strip = record(
    {
      setting: needed(length('What the guide was set to', ['2 in', '50 mm'], { least: 0 })),
      width: needed(length('How wide the strip is at its face', ['50.3 mm'], { least: 0 })),
    },
    'a map: setting, width',
  );
  const thickness = 'Of the strips’ board; left out where the bar keeps its height';
  return {
    thickness: z.optional(length(thickness, ['1.4 mm'], { least: 0.1, most: 25 })),
    date: date(),
    strips: some('Strips cut by the guide', 'A strip', GUIDE_EXAMPLE, strip, 'cut strips at five settings'),
  };
}
