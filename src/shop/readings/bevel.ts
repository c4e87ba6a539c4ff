import { id, needed, record } from '../../read/fields/fields.ts';
import { lengthFields } from '../../read/fields/length-fields.ts';
import type { LengthUnit } from '../../units/units.ts';
import { date, some } from './parts.ts';

export const BEVEL_EXAMPLE = { thickness: '3.2 mm', setback: '3.1 mm' };

export function bevelShape(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const strip = record(
    {
      thickness: needed(length('Of its board, measured', ['3.2 mm'], { least: 0.1, most: 25 })),
      setback: needed(
        length('The width of the bevel seen from above, by the wedge', ['3.1 mm'], { least: 0, most: 60 }),
      ),
    },
    'a map: thickness, setback',
  );
  return {
    head: needed(id('The head, by the name that the shop gives it', ['pull-45'])),
    date: date(),
    strips: some('Strips with a bevel', 'A strip', BEVEL_EXAMPLE, strip, 'cut a strip of thick board'),
  };
}
