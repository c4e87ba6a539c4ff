import * as z from 'zod/mini';
import { shortened } from './node.ts';

/**
 * The kinds of value that jobs and shops are made of. The error message of a schema is the phrase for what is
 * expected there ("true or false"); `issues.ts` makes sentences of them. Checks of our own push an issue with
 * `params: {code, hint}`. `about` and `examples` go into the JSON Schema and the reference page.
 */
type Examples = readonly unknown[];

/** `more` are keywords of JSON Schema for what our own checks say. */
export const described = (about: string, examples: Examples = [], more: Readonly<Record<string, unknown>> = {}) =>
  z.meta({ description: about, ...(examples.length === 0 ? {} : { examples: [...examples] }), ...more });

export interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly hint: string;
}

/** Ends a transform with an issue that `issues.ts` understands. */
export function refuse(context: { issues: unknown[] }, input: unknown, refusal: Refusal): typeof z.NEVER {
  const { code, message, hint } = refusal;
  context.issues.push({ code: 'custom', input, message, params: { code, hint } });
  return z.NEVER;
}

/** A check of a whole value that needs no new value. */
export const check = <T>(find: (value: T) => Refusal | undefined) =>
  z.check<T>((payload) => {
    const refusal = find(payload.value);
    if (refusal !== undefined) refuse(payload, payload.value, refusal);
  });

/** A strict map. Another key is an error; its message is the list of known ones (see `issues.ts`). */
export function record<S extends z.core.$ZodLooseShape>(shape: S, expected: string) {
  const known = Object.keys(shape).join(' ');
  return z.strictObject(shape, { error: (issue) => (issue.code === 'unrecognized_keys' ? known : expected) });
}

export const oneOf = <const T extends string>(about: string, values: readonly T[]) =>
  z.enum(values, `one of ${values.join(', ')}`).check(described(about, values));

export const yesNo = (about: string) => z.boolean('true or false').check(described(about, [true, false]));

/** Safe in file names and on a command line. */
const ID = /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/;

export const id = (about: string, examples: Examples = []) =>
  z.pipe(
    z.string('a name in letters, digits, dots and hyphens').check(described(about, examples, { pattern: ID.source })),
    z.transform((input, context) =>
      ID.test(input)
        ? input
        : refuse(context, input, {
            code: 'id-unusable',
            message: `${quoted(input)} cannot be a name here`,
            hint: 'use up to 64 letters (a to z), digits, dots, hyphens and underscores, a letter or digit first',
          }),
    ),
  );

const LONGEST_LINE = 200;
const NOT_IN_LINE = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/u;

/** One line of text that can be printed. */
export const line = (about: string, examples: Examples = []) =>
  z.pipe(
    z.string('text').check(described(about, examples, { minLength: 1, maxLength: LONGEST_LINE })),
    z.transform((input, context) => {
      const text = input.trim();
      const no = (code: string, message: string, hint: string) => refuse(context, input, { code, message, hint });
      if (text === '') return no('text-missing', 'the text is empty', 'write it, or take the key out');
      if (text.length > LONGEST_LINE) {
        return no('text-line-long', `the text has ${text.length} characters`, `keep it to ${LONGEST_LINE}`);
      }
      if (NOT_IN_LINE.test(text)) {
        return no('text-line', 'the text holds a line break or an invisible character', 'keep it to one plain line');
      }
      return text;
    }),
  );

const COLOUR = /^#(?:[0-9a-fA-F]{3}|[0-9a-fA-F]{6})$/;

/** `#rgb` or `#rrggbb`; in the model always the latter, in small letters. */
export const colour = (about: string, examples: Examples) =>
  z.pipe(
    z.string('a colour such as "#efe9dc"').check(described(about, examples, { pattern: COLOUR.source })),
    z.transform((input, context) => {
      if (!COLOUR.test(input)) {
        const hint = 'write # and six hexadecimal digits, in quotes: "#efe9dc"';
        return refuse(context, input, { code: 'colour-unreadable', message: `${quoted(input)} is not a colour`, hint });
      }
      const digits = input.slice(1).toLowerCase();
      return `#${digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits}`;
    }),
  );

/** A number without a unit, both bounds allowed. */
export const number = (about: string, examples: Examples, least: number, most: number, expected: string) =>
  z.number(expected).check(z.gte(least), z.lte(most), described(about, examples));

export const whole = (about: string, examples: Examples, least: number, most: number) =>
  z.int('a whole number').check(z.gte(least), z.lte(most), described(about, examples));

const RATIO = /^\s*(\d{1,6}(?:\.\d{1,12})?)\s*(?:[/:]\s*(\d{1,6}(?:\.\d{1,12})?)\s*)?$/;

/** A number or a fraction such as 4/3. */
export const ratio = (about: string, examples: Examples, least: number, most: number) =>
  z.pipe(
    z.union([z.number(), z.string()], 'a ratio such as 4/3 or 1.25').check(described(about, examples)),
    z.transform((input, context) => {
      const match = RATIO.exec(String(input));
      const value = match === null ? Number.NaN : Number(match[1]) / Number(match[2] ?? 1);
      if (!Number.isFinite(value)) {
        const message = `${quoted(String(input))} is not a ratio`;
        return refuse(context, input, { code: 'ratio-unreadable', message, hint: 'write for example 4/3 or 1.25' });
      }
      if (value < least || value > most) {
        const message = `${quoted(String(input))} is out of range: it must be ${least} to ${most}`;
        return refuse(context, input, { code: 'number-range', message, hint: '' });
      }
      return value;
    }),
  );

/** Things by name, as jobs refer to them. */
export const named = <T extends z.core.$ZodType>(about: string, example: Record<string, unknown>, value: T) =>
  z.record(id('The name that jobs use'), value, 'a map of names').check(described(about, [example]));

export const quoted = (text: string): string => JSON.stringify(shortened(text));
