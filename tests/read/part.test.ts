import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { part, record, yesNo } from '../../src/read/fields/fields.ts';

test('a part is built for a document that has it, once, and for no other', () => {
  let built = 0;
  const schema = record(
    {
      seldom: part(() => {
        built++;
        return record({ on: yesNo('whether it is on') }, 'a map');
      }),
    },
    'a map',
  );
  expect([z.safeParse(schema, {}, { jitless: true }), built]).toEqual([{ success: true, data: {} }, 0]);
  for (const seldom of [{ on: true }, { on: false }])
    expect(z.safeParse(schema, { seldom }, { jitless: true })).toEqual({ success: true, data: { seldom } });
  expect(built).toBe(1);
  expect(z.safeParse(schema, { seldom: { on: 3 } }, { jitless: true }).error?.issues[0]?.path).toEqual([
    'seldom',
    'on',
  ]);
});
