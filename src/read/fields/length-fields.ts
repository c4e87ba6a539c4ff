import * as z from 'zod/mini';
import type { Size } from '../../geometry/point.ts';
import { allSides, type GivenBySides, SIDES, type SomeSides } from '../../geometry/sides.ts';
import { parseLength, parseSize } from '../../units/parse.ts';
import { showLength } from '../../units/print.ts';
import { type LengthUnit, mmPer } from '../../units/units.ts';
import { described, leaf, type Reading, record, refuse, refused, taken } from './fields.ts';

/** Nothing longer is a mat, a frame or a sheet, mm. */
const LONGEST = 5000;

/** In mm, both allowed; at least 0 and at most 5 m without them. */
export interface Range {
  readonly least?: number;
  readonly most?: number;
}

/** A side of a size is 1 mm long at least, whatever it is the size of. */
const LEAST_SIDE = 1;

const LENGTH_EXPECTED = 'a length such as 2 3/4 or "70 mm"';
const SIZE_EXPECTED = 'a size such as 16 x 20 or [16, 20]';
const SIDES_EXPECTED = 'a length, or lengths by side: top, bottom, left, right, sides';

const LENGTH = { type: ['number', 'string'] };
const SIZE = {
  anyOf: [{ type: 'string' }, { type: 'array', prefixItems: [LENGTH, LENGTH], items: false, minItems: 2 }],
};

type Examples = readonly unknown[];

/** Which leaves hold a length, and which a size: of these alone a bare number is in the document's unit. */
export const LENGTHS = z.registry<{ readonly kind: 'length' | 'size' }>();

function marked<T extends z.core.$ZodType>(kind: 'length' | 'size', schema: T): T {
  LENGTHS.add(schema, { kind });
  return schema;
}

/** The fields whose bare numbers are in `unit`; their values are mm. */
export function lengthFields(unit: LengthUnit) {
  const readLength = (input: unknown, range: Range): Reading<number> => {
    if (typeof input !== 'number' && typeof input !== 'string') return undefined;
    const parsed = typeof input === 'number' ? taken(input * mmPer(unit)) : parseLength(input, unit);
    return parsed?.ok === true ? bounded(parsed.value, parsed.value, range, unit) : parsed;
  };

  const readSize = (input: unknown, range: Range): Reading<Size> => {
    if (typeof input === 'string') {
      const parsed = parseSize(input, unit);
      if (!parsed.ok) return parsed;
      const width = bounded(parsed.value, parsed.value.width, range, unit);
      return width?.ok === true ? bounded(parsed.value, parsed.value.height, range, unit) : width;
    }
    if (!Array.isArray(input) || input.length !== 2) return undefined;
    const [width, height] = input.map((side) => readLength(side, range));
    if (width?.ok === true && height?.ok === true) return taken({ width: width.value, height: height.value });
    const at = width?.ok === true ? 1 : 0;
    const wrong = at === 0 ? width : height;
    const refusal =
      wrong?.ok === false ? wrong : { code: 'value-kind', message: `expected ${LENGTH_EXPECTED}`, hint: '' };
    return { ...refusal, ok: false, path: [at] };
  };

  const length = (about: string, examples: Examples, range: Range = {}) =>
    marked(
      'length',
      leaf(LENGTH_EXPECTED, (input) => readLength(input, range), about, examples, LENGTH),
    );

  const size = (about: string, examples: Examples, range: Range = {}) =>
    marked(
      'size',
      leaf(SIZE_EXPECTED, (input) => readSize(input, { least: LEAST_SIDE, ...range }), about, examples, SIZE),
    );

  const bySide = <T extends SomeSides>(
    about: string,
    examples: Examples,
    range: Range,
    as: (sides: SomeSides, written?: 'once' | 'pair') => T,
  ) => {
    const every = marked(
      'length',
      leaf(
        LENGTH_EXPECTED,
        (input): Reading<T> => {
          const read = readLength(input, range);
          return read?.ok === true ? taken(as(allSides(read.value), 'once')) : read;
        },
        'On every side',
        [],
        LENGTH,
      ),
    );
    const one = z.optional(length('On that side, seen from the front; sides are left and right', [], range));
    const map = record({ top: one, bottom: one, left: one, right: one, sides: one }, SIDES_EXPECTED);
    const each = z.pipe(
      map,
      z.transform((given, context): T => {
        const sides = sidesOf(given, context);
        return given.sides === undefined ? as(sides) : as(sides, 'pair');
      }),
    );
    return described(z.union([every, each], SIDES_EXPECTED), about, examples);
  };

  const sides = (about: string, examples: Examples, range: Range = {}) =>
    bySide(about, examples, range, (given): SomeSides => given);

  /** With a word on how they were written, for what says later where a length stands. */
  const writtenSides = (about: string, examples: Examples, range: Range = {}) =>
    bySide(
      about,
      examples,
      range,
      (given, written): GivenBySides => (written === undefined ? given : { ...given, written }),
    );

  return { length, size, sides, writtenSides };
}

type GivenSides = { readonly [S in keyof SomeSides | 'sides']?: number | undefined };

function sidesOf(given: GivenSides, context: { issues: unknown[] }): SomeSides {
  if (given.sides !== undefined && (given.left !== undefined || given.right !== undefined)) {
    const message = 'left or right is given beside sides, which means both';
    return refuse(context, given, { code: 'sides-twice', message, hint: 'keep one of the two' });
  }
  const found: { -readonly [S in keyof SomeSides]: SomeSides[S] } = {};
  for (const side of SIDES) {
    const value = given[side] ?? (side === 'left' || side === 'right' ? given.sides : undefined);
    if (value !== undefined) found[side] = value;
  }
  return found;
}

const RIGHT_UNIT = 'is its unit right?';

/** `value` where `mm` is in the range. */
function bounded<T>(value: T, mm: number, range: Range, unit: LengthUnit): Reading<T> {
  const { least = 0, most = LONGEST } = range;
  const show = (length: number): string => (length === LONGEST ? '5 m' : showLength(length, unit));
  if (mm < 0 && least >= 0) return refused('length-negative', `${show(mm)} is negative`, 'write it without a sign');
  if (mm === 0 && least > 0) return refused('length-zero', 'the length is zero', `the least is ${show(least)}`);
  if (mm < least) return refused('length-small', `${show(mm)} is too small: the least is ${show(least)}`, RIGHT_UNIT);
  if (mm > most) return refused('length-large', `${show(mm)} is too large: the most is ${show(most)}`, RIGHT_UNIT);
  return taken(value);
}
