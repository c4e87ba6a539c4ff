import * as z from 'zod/mini';
import { type Parsed, parseLength, parseSize } from '../units/parse.ts';
import { showLength } from '../units/print.ts';
import { type LengthUnit, mmPer } from '../units/units.ts';

/**
 * The kinds of value that jobs and shops are made of. Each error message of a schema is the phrase for what is
 * expected there ("a length"); `issues.ts` makes sentences of them. Checks of our own carry `params: {code, hint}`.
 * `about` and `examples` go into the JSON Schema and the reference page.
 */
export interface About {
  readonly about: string;
  readonly examples?: readonly unknown[];
}

export const MAX_LENGTH = 5000;
const MAX_TEXT = 200;
/** Letters, digits and . _ - after a letter or digit: safe in file names and on a command line. */
const ID = /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/;
const COLOUR = /^#(?:[0-9a-fA-F]{3}|[0-9a-fA-F]{6})$/;

const meta = (given: About) =>
  z.meta({ description: given.about, ...(given.examples === undefined ? {} : { examples: [...given.examples] }) });

type Context = { issues: unknown[] };

function refuse(context: Context, input: unknown, code: string, message: string, hint: string): typeof z.NEVER {
  context.issues.push({ code: 'custom', input, message, params: { code, hint } });
  return z.NEVER;
}

/** A strict map: another key is an error that lists `known` ones (see `issues.ts`). */
export function record<S extends z.core.$ZodLooseShape>(shape: S, expected: string, given?: About) {
  const known = Object.keys(shape).join(' ');
  const schema = z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? known : expected),
  });
  return given === undefined ? schema : schema.check(meta(given));
}

export function oneOf<const T extends readonly string[]>(values: T, given: About) {
  return z.enum(values, `one of ${values.join(', ')}`).check(meta(given));
}

export const yesNo = (given: About) => z.boolean('true or false').check(meta(given));

export const id = (given: About) =>
  z.pipe(
    z.string('a name of letters, digits, dots and hyphens').check(meta(given)),
    z.transform((input, context) =>
      ID.test(input)
        ? input
        : refuse(
            context,
            input,
            'id-unusable',
            `${quoted(input)} cannot be a name here`,
            'use up to 64 letters, digits, dots, hyphens and underscores',
          ),
    ),
  );

/** One line of text that can be printed. */
export const line = (given: About) =>
  z.pipe(
    z.string('text').check(meta(given)),
    z.transform((input, context) => {
      const trimmed = input.trim();
      if (trimmed === '')
        return refuse(context, input, 'text-missing', 'the text is empty', 'write it, or take the key out');
      if (trimmed.length > MAX_TEXT) {
        return refuse(
          context,
          input,
          'text-line-long',
          `the text has ${trimmed.length} characters`,
          `keep it to ${MAX_TEXT}`,
        );
      }
      if (/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/u.test(trimmed)) {
        return refuse(
          context,
          input,
          'text-line',
          'the text holds a line break or an invisible character',
          'keep it to one plain line',
        );
      }
      return trimmed;
    }),
  );

export const colour = (given: About) =>
  z.pipe(
    z.string('a colour such as "#efe9dc"').check(meta(given)),
    z.transform((input, context) => {
      if (!COLOUR.test(input)) {
        return refuse(
          context,
          input,
          'colour-unreadable',
          `${quoted(input)} is not a colour`,
          'write # and six hexadecimal digits, in quotes: "#efe9dc"',
        );
      }
      const digits = input.slice(1).toLowerCase();
      return `#${digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits}`;
    }),
  );

/** A number without a unit, of a named sort. */
export const number = (
  given: About & { readonly min: number; readonly max: number; readonly whole?: boolean; readonly expected: string },
) => {
  const base = given.whole === true ? z.int(given.expected) : z.number(given.expected);
  return base.check(z.gte(given.min), z.lte(given.max), meta(given));
};

/** A number or a fraction such as 4/3. */
export const ratio = (given: About & { readonly min: number; readonly max: number }) =>
  z.pipe(
    z.union([z.number(), z.string()], 'a ratio such as 4/3 or 1.25').check(meta(given)),
    z.transform((input, context) => {
      const match =
        typeof input === 'string'
          ? /^\s*(\d{1,6}(?:\.\d{1,12})?)\s*(?:[/:]\s*(\d{1,6}(?:\.\d{1,12})?)\s*)?$/.exec(input)
          : null;
      const value =
        typeof input === 'number' ? input : match === null ? Number.NaN : Number(match[1]) / Number(match[2] ?? 1);
      if (Number.isNaN(value)) {
        return refuse(
          context,
          input,
          'ratio-unreadable',
          `${quoted(String(input))} is not a ratio`,
          'write for example 4/3 or 1.25',
        );
      }
      if (value < given.min || value > given.max) {
        return refuse(
          context,
          input,
          'ratio-range',
          `the ratio is ${Number(value.toFixed(4))}, allowed is ${given.min} to ${given.max}`,
          '',
        );
      }
      return value;
    }),
  );

/** `least` and `most` in mm, both allowed. */
export interface LengthRange {
  readonly least?: number;
  readonly most?: number;
}

export interface LengthField extends About, LengthRange {}

/** The fields that depend on the unit of bare numbers. */
export function lengthFields(unit: LengthUnit) {
  const parse = (input: string | number): Parsed<number> =>
    typeof input === 'number' ? { ok: true, value: input * mmPer(unit) } : parseLength(input, unit);

  const inRange = (mm: number, range: LengthRange, context: Context, input: unknown): number => {
    const problem = outOfRange(mm, range, unit);
    return problem === undefined ? mm : refuse(context, input, problem.code, problem.message, problem.hint);
  };

  const length = (given: LengthField) =>
    z.pipe(
      z.union([z.number(), z.string()], 'a length such as 2 3/4 or "70 mm"').check(meta(given)),
      z.transform((input, context) => {
        const parsed = parse(input);
        if (!parsed.ok) return refuse(context, input, parsed.code, parsed.message, parsed.hint);
        return inRange(parsed.value, given, context, input);
      }),
    );

  const size = (given: LengthField) => {
    const expected = 'a size such as 16 x 20 or [16, 20]';
    const part = length({ about: 'Width or height', least: given.least ?? 1 });
    return z
      .union(
        [
          z.pipe(
            z.string().check(meta(given)),
            z.transform((input, context) => {
              const parsed = parseSize(input, unit);
              if (!parsed.ok) return refuse(context, input, parsed.code, parsed.message, parsed.hint);
              const { width, height } = parsed.value;
              inRange(width, { least: 1, ...given }, context, input);
              if (outOfRange(width, { least: 1, ...given }, unit) === undefined) {
                inRange(height, { least: 1, ...given }, context, input);
              }
              return { width, height };
            }),
          ),
          z.pipe(
            z.tuple([part, part], expected),
            z.transform(([width, height]: [number, number]) => ({ width, height })),
          ),
        ],
        expected,
      )
      .check(meta(given));
  };

  /** One length for every side, or a map of sides; `sides` is left and right. */
  const sides = (given: LengthField) => {
    const one = (about: string) => z.optional(length({ ...given, about, examples: [] }));
    const map = record(
      {
        top: one('At the top'),
        bottom: one('At the bottom'),
        left: one('At the left, seen from the front'),
        right: one('At the right, seen from the front'),
        sides: one('At the left and at the right'),
      },
      'lengths by side',
    );
    const each = z.pipe(
      map,
      z.transform(({ sides: both, ...own }, context) => {
        if (both !== undefined && (own.left !== undefined || own.right !== undefined)) {
          return refuse(
            context,
            own,
            'sides-twice',
            'left or right is given beside sides, which means both',
            'keep one of the two',
          );
        }
        const found: { -readonly [S in 'top' | 'bottom' | 'left' | 'right']?: number } = {};
        for (const side of ['top', 'bottom', 'left', 'right'] as const) {
          const value = own[side] ?? (side === 'left' || side === 'right' ? both : undefined);
          if (value !== undefined) found[side] = value;
        }
        return found;
      }),
    );
    const every = z.pipe(
      length(given),
      z.transform((mm) => ({ top: mm, bottom: mm, left: mm, right: mm })),
    );
    return z.union([every, each], 'a length, or lengths by side: top, bottom, left, right, sides').check(meta(given));
  };

  return { length, size, sides };
}

export function outOfRange(
  mm: number,
  range: LengthRange,
  unit: LengthUnit,
): { readonly code: string; readonly message: string; readonly hint: string } | undefined {
  const least = range.least ?? 0;
  const most = range.most ?? MAX_LENGTH;
  const shown = showLength(mm, unit);
  if (mm < 0 && least >= 0)
    return { code: 'length-negative', message: `${shown} is negative`, hint: 'write a length without a sign' };
  if (mm === 0 && least > 0)
    return { code: 'length-zero', message: 'the length is zero', hint: `the least is ${showLength(least, unit)}` };
  if (mm < least)
    return {
      code: 'length-small',
      message: `${shown} is too small: the least is ${showLength(least, unit)}`,
      hint: 'is its unit right?',
    };
  if (mm > most)
    return {
      code: 'length-large',
      message: `${shown} is too large: the most is ${showLength(most, unit)}`,
      hint: 'is its unit right?',
    };
  return undefined;
}

export const quoted = (text: string): string => JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
