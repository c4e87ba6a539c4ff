import * as z from 'zod/mini';
import { type Parsed, parseLength, parseSize } from '../units/parse.ts';
import { showLength } from '../units/print.ts';
import { type LengthUnit, mmPer } from '../units/units.ts';
import { described, type Refusal, record, refuse } from './fields.ts';
import type { SomeSides } from './model.ts';

/** Nothing longer is a mat, a frame or a sheet, mm. */
export const LONGEST = 5000;

/** In mm, both allowed; at least 0 and at most 5 m without them. */
export interface Range {
  readonly least?: number;
  readonly most?: number;
}

/** A side of a size is 1 mm long at least, whatever it is the size of. */
const LEAST_SIDE = 1;

const SIDES_EXPECTED = 'a length, or lengths by side: top, bottom, left, right, sides';
const SIZE_EXPECTED = 'a size such as 16 x 20 or [16, 20]';

/** The fields whose bare numbers are in `unit`; their values are mm. */
export function lengthFields(unit: LengthUnit) {
  const parse = (input: string | number): Parsed<number> =>
    typeof input === 'number' ? { ok: true, value: input * mmPer(unit) } : parseLength(input, unit);

  const length = (about: string, examples: readonly unknown[], range: Range = {}) =>
    z.pipe(
      z.union([z.number(), z.string()], 'a length such as 2 3/4 or "70 mm"').check(described(about, examples)),
      z.transform((input, context) => {
        const parsed = parse(input);
        if (!parsed.ok) return refuse(context, input, parsed);
        const wrong = outOfRange(parsed.value, range, unit);
        return wrong === undefined ? parsed.value : refuse(context, input, wrong);
      }),
    );

  const size = (about: string, examples: readonly unknown[], range: Range = {}) => {
    const each = { least: LEAST_SIDE, ...range };
    const text = z.pipe(
      z.string().check(described(about)),
      z.transform((input, context) => {
        const parsed = parseSize(input, unit);
        if (!parsed.ok) return refuse(context, input, parsed);
        const { width, height } = parsed.value;
        const wrong = outOfRange(width, each, unit) ?? outOfRange(height, each, unit);
        return wrong === undefined ? parsed.value : refuse(context, input, wrong);
      }),
    );
    const pair = z.pipe(
      z.tuple([length('Width', [], each), length('Height', [], each)], SIZE_EXPECTED),
      z.transform(([width, height]) => ({ width, height })),
    );
    return z.union([text, pair], SIZE_EXPECTED).check(described(about, examples));
  };

  const sides = (about: string, examples: readonly unknown[], range: Range = {}) => {
    const every = z.pipe(
      length(about, [], range),
      z.transform((mm): SomeSides => ({ top: mm, bottom: mm, left: mm, right: mm })),
    );
    const one = (where: string) => z.optional(length(where, [], range));
    const map = record(
      {
        top: one('At the top'),
        bottom: one('At the bottom'),
        left: one('At the left, seen from the front'),
        right: one('At the right, seen from the front'),
        sides: one('At the left and at the right'),
      },
      SIDES_EXPECTED,
    );
    const each = z.pipe(
      map,
      z.transform(({ sides: both, ...own }, context): SomeSides => {
        if (both !== undefined && (own.left !== undefined || own.right !== undefined)) {
          const message = 'left or right is given beside sides, which means both';
          return refuse(context, own, { code: 'sides-twice', message, hint: 'keep one of the two' });
        }
        const found: { -readonly [S in keyof SomeSides]: SomeSides[S] } = {};
        for (const side of ['top', 'bottom', 'left', 'right'] as const) {
          const value = own[side] ?? (side === 'left' || side === 'right' ? both : undefined);
          if (value !== undefined) found[side] = value;
        }
        return found;
      }),
    );
    return z.union([every, each], SIDES_EXPECTED).check(described(about, examples));
  };

  return { length, size, sides };
}

/** Why a length is none that is allowed; undefined where it is. */
export function outOfRange(mm: number, range: Range, unit: LengthUnit): Refusal | undefined {
  const { least = 0, most = LONGEST } = range;
  const show = (length: number): string => (length === LONGEST ? '5 m' : showLength(length, unit));
  const no = (code: string, message: string, hint: string): Refusal => ({ code, message, hint });
  if (mm < 0 && least >= 0) return no('length-negative', `${show(mm)} is negative`, 'write a length without a sign');
  if (mm === 0 && least > 0) return no('length-zero', 'the length is zero', `the least is ${show(least)}`);
  if (mm < least) return no('length-small', `${show(mm)} is too small: the least is ${show(least)}`, RIGHT_UNIT);
  if (mm > most) return no('length-large', `${show(mm)} is too large: the most is ${show(most)}`, RIGHT_UNIT);
  return undefined;
}

const RIGHT_UNIT = 'is its unit right?';
