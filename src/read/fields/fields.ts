import * as z from 'zod/mini';
import { $constructor, $ZodType } from 'zod/v4/core';
import { defined } from '../../problems/defined.ts';
import { nearest } from '../../problems/nearest.ts';
import { once } from '../../problems/once.ts';
import { quoted, word } from '../../problems/quoted.ts';

/**
 * The kinds of value that jobs and shops are made of. A leaf is read by one function, and says in JSON Schema's
 * keywords what that function takes: schemas are built anew in each run, so they are made of as few parts as can be.
 * The message of an issue of a wrong kind is the phrase for what is expected there ("true or false"); `issues.ts`
 * makes sentences of it.
 */
type Examples = readonly unknown[];

/** Keywords of JSON Schema, kept beside the schema that they describe. */
export type Keywords = Readonly<Record<string, unknown>>;

export const DESCRIPTIONS = z.registry<Record<string, unknown>>();

const keywords = (about: string, examples: Examples, more: Keywords): Record<string, unknown> => ({
  description: about,
  ...defined({ examples: examples.length === 0 ? undefined : examples }),
  ...more,
});

/** Describes a schema, for the JSON Schema and the reference page; gives it back. */
export function described<T extends z.core.$ZodType>(
  schema: T,
  about: string,
  examples: Examples = [],
  more: Keywords = {},
): T {
  DESCRIPTIONS.add(schema, keywords(about, examples, more));
  return schema;
}

export interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly hint: string;
  /** Within the value. */
  readonly path?: readonly number[];
}

/** Undefined where the value is of another kind. */
export type Reading<T> = { readonly ok: true; readonly value: T } | ({ readonly ok: false } & Refusal) | undefined;

export const taken = <T>(value: T): Reading<T> => ({ ok: true, value });
export const refused = (code: string, message: string, hint: string): Reading<never> => ({
  ok: false,
  code,
  message,
  hint,
});

/** Where the issues of a schema are put. */
interface Issues {
  readonly issues: unknown[];
}

/** Ends a transform with an issue that `issues.ts` understands. */
export function refuse(context: Issues, input: unknown, refusal: Refusal): typeof z.NEVER {
  const { code, message, hint, path } = refusal;
  const place = path === undefined ? {} : { path: [...path] };
  context.issues.push({ code: 'custom', input, message, params: { code, hint }, ...place });
  return z.NEVER;
}

/** A check of a whole value that needs no new value. */
export const check = <T>(find: (value: T) => Refusal | undefined) =>
  z.check<T>((payload) => {
    const refusal = find(payload.value);
    if (refusal !== undefined) refuse(payload, payload.value, refusal);
  });

/** A value that one function reads. */
export function leaf<T>(
  expected: string,
  read: (input: unknown) => Reading<T>,
  about: string,
  examples: Examples,
  more: Keywords,
) {
  const schema = z.transform((input: unknown, context): T => {
    const reading = read(input);
    if (reading === undefined) {
      context.issues.push({ code: 'invalid_type', expected: 'unknown', input, message: expected });
      return z.NEVER;
    }
    return reading.ok ? reading.value : refuse(context, input, reading);
  });
  return described(schema, about, examples, more);
}

/** A leaf whose value goes through one more function. */
export function converted<T, U>(schema: z.ZodMiniTransform<T, unknown>, convert: (value: T) => U) {
  const pipe = z.pipe(
    schema,
    z.transform((value: T): U => convert(value)),
  );
  DESCRIPTIONS.add(pipe, DESCRIPTIONS.get(schema) ?? {});
  return pipe;
}

const ANYTHING = z.unknown();

/** A leaf whose key must be there. */
export function needed<T>(schema: z.ZodMiniTransform<T, unknown>) {
  const pipe = z.pipe(ANYTHING, schema);
  DESCRIPTIONS.add(pipe, DESCRIPTIONS.get(schema) ?? {});
  return pipe;
}

/**
 * What stands for another schema and is built when a value is read by it. The map that it stands in asks each part whether it would
 * make something of nothing; the library's own lazy kind asks what it stands for, and so would build it for every document.
 */
const Later = $constructor<z.core.$ZodLazy>('Later', (schema, def) => {
  $ZodType.init(schema, def);
  const built = once(def.getter);
  Object.defineProperty(schema._zod, 'innerType', { get: built });
  schema._zod.parse = (payload, context) => built()._zod.run(payload, context);
});

/** A part that few documents have: built when one has it, and made of nothing by none. */
export const part = <T extends z.core.$ZodType>(build: () => T) =>
  z.optional(new Later({ type: 'lazy', getter: build }) as z.core.$ZodLazy<T>);

/** A strict map. Another key is an error; its message is the list of known ones (see `issues.ts`). */
export function record<S extends z.core.$ZodLooseShape>(shape: S, expected: string) {
  const known = Object.keys(shape).join(' ');
  return z.strictObject(shape, { error: (issue) => (issue.code === 'unrecognized_keys' ? known : expected) });
}

export const oneOf = <const T extends string>(
  about: string,
  words: readonly T[],
  expected = `one of ${words.join(', ')}`,
) =>
  leaf(
    expected,
    (input): Reading<T> => {
      if (typeof input !== 'string') return undefined;
      const found = words.find((each) => each === input);
      if (found !== undefined) return taken(found);
      const near = nearest(input, words);
      const hint = near === undefined ? '' : `did you mean ${near}?`;
      return refused('value-unknown', `${word(input)} is not known here: write ${expected}`, hint);
    },
    about,
    words,
    { type: 'string', enum: words },
  );

export const yesNo = (about: string) =>
  leaf('true or false', (input) => (typeof input === 'boolean' ? taken(input) : undefined), about, [true, false], {
    type: 'boolean',
  });

/** Safe in file names and on a command line. */
const ID = /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/;
const ID_KEYWORDS: Keywords = { type: 'string', pattern: ID.source };

const unusable = (text: string): Refusal => ({
  code: 'id-unusable',
  message: `${quoted(text)} cannot be a name here`,
  hint: 'use up to 64 letters (a to z), digits, dots, hyphens and underscores, a letter or digit first',
});

export const id = (about: string, examples: Examples = []) =>
  leaf(
    'a name in letters, digits, dots and hyphens',
    (input) => {
      if (typeof input !== 'string') return undefined;
      return ID.test(input) ? taken(input) : { ok: false, ...unusable(input) };
    },
    about,
    examples,
    ID_KEYWORDS,
  );

const LONGEST_LINE = 200;
/** Control characters, lone surrogates, line and paragraph separators, and what turns the direction of writing. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what it looks for.
const NOT_IN_LINE = /[\u0000-\u001f\u007f-\u009f\ud800-\udfff\u2028-\u202e\u2066-\u2069]/u;

export function readLine(input: unknown, longest = LONGEST_LINE): Reading<string> {
  if (typeof input !== 'string') return undefined;
  const text = input.trim();
  if (text === '') return refused('text-missing', 'the text is empty', 'write it, or take the key out');
  if (text.length > longest) {
    return refused('text-line-long', `the text has ${text.length} characters`, `keep it to ${longest}`);
  }
  if (!NOT_IN_LINE.test(text)) return taken(text);
  return refused('text-line', 'the text holds a line break or an invisible character', 'keep it to one plain line');
}

/** One line of text that can be printed. */
export const line = (about: string, examples: Examples = [], longest = LONGEST_LINE) =>
  leaf('text', (input) => readLine(input, longest), about, examples, {
    type: 'string',
    minLength: 1,
    maxLength: longest,
  });

const LONGEST_NUMBER = 24;

export const readCount = (input: unknown): Reading<string> =>
  readLine(Number.isSafeInteger(input) && Number(input) >= 0 ? String(input) : input, LONGEST_NUMBER);

/** A number as a shop counts its jobs: `41`, `A-07`. */
export const jobNumber = (about: string, examples: Examples) =>
  leaf('a number or a short text such as A-07', readCount, about, examples, {
    anyOf: [
      { type: 'integer', minimum: 0 },
      { type: 'string', minLength: 1, maxLength: LONGEST_NUMBER },
    ],
  });

const COLOUR = /^#(?:[0-9a-fA-F]{3}|[0-9a-fA-F]{6})$/;

function readColour(input: unknown): Reading<string> {
  if (typeof input !== 'string') return undefined;
  if (!COLOUR.test(input)) {
    const hint = 'write # and six hexadecimal digits, in quotes: "#efe9dc"';
    return refused('colour-unreadable', `${quoted(input)} is not a colour`, hint);
  }
  const digits = input.slice(1).toLowerCase();
  return taken(`#${digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits}`);
}

/** `#rgb` or `#rrggbb`; in the model always the latter, in small letters. */
export const colour = (about: string, examples: Examples) =>
  leaf('a colour such as "#efe9dc"', readColour, about, examples, { type: 'string', pattern: COLOUR.source });

function inRange(value: number, shown: string, least: number, most: number): Reading<number> {
  if (value >= least && value <= most) return taken(value);
  const limit = value < least ? `at least ${least}` : `at most ${most}`;
  return refused('number-range', `${shown} is out of range: it must be ${limit}`, '');
}

/** A number without a unit, both bounds allowed. */
export const number = (about: string, examples: Examples, least: number, most: number, expected: string) =>
  leaf(
    expected,
    (input) => (typeof input === 'number' ? inRange(input, String(input), least, most) : undefined),
    about,
    examples,
    { type: 'number', minimum: least, maximum: most },
  );

export const whole = (about: string, examples: Examples, least: number, most: number) =>
  leaf(
    'a whole number',
    (input) => (Number.isInteger(input) ? inRange(Number(input), String(input), least, most) : undefined),
    about,
    examples,
    { type: 'integer', minimum: least, maximum: most },
  );

const RATIO = /^\s*(\d{1,6}(?:\.\d{1,12})?)\s*(?:[/:]\s*(\d{1,6}(?:\.\d{1,12})?)\s*)?$/;

/** A number or a fraction such as 4/3. */
export const ratio = (about: string, examples: Examples, least: number, most: number) =>
  leaf(
    'a ratio such as 4/3 or 1.25',
    (input) => {
      if (typeof input !== 'number' && typeof input !== 'string') return undefined;
      const text = String(input);
      const match = RATIO.exec(text);
      const value = match === null ? Number.NaN : Number(match[1]) / Number(match[2] ?? 1);
      if (Number.isFinite(value)) return inRange(value, text, least, most);
      return refused('ratio-unreadable', `${quoted(text)} is not a ratio`, 'write for example 4/3 or 1.25');
    },
    about,
    examples,
    { type: ['number', 'string'] },
  );

/** Things by name, as jobs refer to them. */
export function named<T extends z.core.$ZodType>(about: string, example: Keywords, value: T) {
  const name = z.string().check(check((key: string) => (ID.test(key) ? undefined : unusable(key))));
  return described(
    z.record(described(name, 'The name that jobs use', [], ID_KEYWORDS), value, 'a map of names'),
    about,
    [example],
  );
}
