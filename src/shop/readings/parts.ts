import * as z from 'zod/mini';
import { check, converted, described, id, type Keywords, line, needed } from '../../read/fields/fields.ts';
import { lengthFields, type Range } from '../../read/fields/length-fields.ts';
import type { LengthUnit } from '../../units/units.ts';

export const date = () => z.optional(line('The day of the readings', ['2026-03-01']));

/** A list of maps that has something in it; `one` is what an item is. */
export function some<T extends z.core.$ZodType>(about: string, one: string, example: Keywords, item: T, hint: string) {
  const list = z
    .array(described(item, one), 'a list')
    .check(
      check((given: readonly unknown[]) =>
        given.length > 0 ? undefined : { code: 'readings-none', message: 'the list of readings is empty', hint },
      ),
    );
  return described(list, about, [[example]]);
}

/** Of one reading, mm. */
export const CALIPER: Range = { least: 1, most: 1000 };

/** One length, or a list of them where it was measured several times. */
export function lengths(unit: LengthUnit, about: string, example: readonly [string, ...string[]], range: Range) {
  const length = lengthFields(unit).length(about, [example[0]], range);
  const one = converted(length, (mm): readonly number[] => [mm]);
  const list = z
    .array(length, 'a list of lengths')
    .check(
      check((given: readonly unknown[]) =>
        given.length > 0
          ? undefined
          : { code: 'readings-none', message: 'the list of readings is empty', hint: 'measure, or take the key out' },
      ),
    );
  const many = z.pipe(
    list,
    z.transform((given): readonly number[] => given),
  );
  return described(z.union([one, many], 'a length, or a list of lengths'), about, [[...example]]);
}

export const machine = (example: string) => needed(id('The machine, by the name that the shop gives it', [example]));
