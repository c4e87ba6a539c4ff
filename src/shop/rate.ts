import { nearest } from '../problems/nearest.ts';
import { word } from '../problems/quoted.ts';
import { leaf, type Reading, refused, taken } from '../read/fields/fields.ts';

/** A price for so much of a thing. */
export interface Rate {
  readonly amount: number;
  readonly per: keyof typeof RATES;
}

/** What a price may be for, and what documents call it. */
export const RATES = {
  piece: 'piece',
  sheet: 'sheet',
  squareFoot: 'square foot',
  squareMetre: 'square metre',
  foot: 'foot',
  metre: 'metre',
  unitedInch: 'united inch',
} as const;

/** Of a price; more is a slip of the pen. */
export const DEAREST = 1e6;

function readAmount(input: unknown, per: Rate['per']): Reading<Rate> {
  if (typeof input !== 'number') return undefined;
  if (input >= 0 && input <= DEAREST) return taken({ amount: input, per });
  const limit = input < 0 ? 'at least 0' : `at most ${DEAREST}`;
  return refused('number-range', `${input} is out of range: it must be ${limit}`, '');
}

/** A price: a number alone is for one `alone`, a map of one key says for how much of it. */
export function priceField(about: string, alone: Rate['per'], others: readonly Rate['per'][]) {
  const known = [alone, ...others];
  const hint = `write one of ${known.join(', ')} and its price, for example {${others[0] ?? alone}: 1.25}`;
  const read = (input: unknown): Reading<Rate> => {
    if (typeof input !== 'object' || input === null || Array.isArray(input)) return readAmount(input, alone);
    const keys = Object.keys(input);
    const key = keys[0];
    if (key === undefined || keys.length > 1) {
      return refused('price-one', `the price has ${keys.length === 0 ? 'no key' : `${keys.length} keys`}`, hint);
    }
    const per = known.find((each) => each === key);
    if (per !== undefined) return readAmount((input as Readonly<Record<string, unknown>>)[key], per);
    const near = nearest(key, known);
    return refused(
      'price-per',
      `a price for each ${word(key)} is not known here`,
      near === undefined ? hint : `did you mean ${near}? ${hint}`,
    );
  };
  const properties = Object.fromEntries(known.map((per) => [per, { type: 'number', minimum: 0, maximum: DEAREST }]));
  return leaf(
    'a price',
    read,
    `${about}, for one ${RATES[alone]} where no unit is named`,
    [9.5, { [others[0] ?? alone]: 1.25 }],
    {
      anyOf: [
        { type: 'number', minimum: 0, maximum: DEAREST },
        { type: 'object', properties, additionalProperties: false, minProperties: 1, maxProperties: 1 },
      ],
    },
  );
}
