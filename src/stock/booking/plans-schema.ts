import * as z from 'zod/mini';

/** No sheet is longer than that, mm. */
const LONGEST = 1e5;
const size = {
  width: z.number().check(z.positive(), z.lte(LONGEST)),
  height: z.number().check(z.positive(), z.lte(LONGEST)),
};
const text = z.string().check(z.minLength(1), z.maxLength(1000));
const whole = (least: number) => z.int().check(z.gte(least), z.lte(1e6));

const change = z.strictObject({
  sheets: z.array(
    z.strictObject({ kind: z.enum(['board', 'backing']), board: text, index: whole(0), ...size, count: whole(1) }),
  ),
  used: z.array(z.strictObject({ id: text, board: text, ...size, note: z.optional(text) })),
  kept: z.array(z.strictObject({ id: text, board: text, ...size, from: text })),
});

/** The journal: plans in the order in which they were printed or booked. Programs write it, so what is wrong in it is said in one. */
export const PLANS = z.strictObject({
  plans: z.array(
    z.strictObject({
      number: text,
      made: text,
      jobs: z.array(text),
      change,
      booked: z.optional(z.strictObject({ date: text, change })),
    }),
  ),
});

export type GivenPlan = z.output<typeof PLANS>['plans'][number];
