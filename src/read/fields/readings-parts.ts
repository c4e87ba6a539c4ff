import * as z from 'zod/mini';
import { check, described, type Keywords, line } from './fields.ts';

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
