import * as z from 'zod/mini';
import { nearest } from '../problems/nearest.ts';
import { word } from '../problems/quoted.ts';
import {
  described,
  leaf,
  line,
  needed,
  number,
  oneOf,
  type Reading,
  record,
  refused,
  taken,
  whole,
  yesNo,
} from '../read/fields/fields.ts';
import { RATES, type Rate } from './rate.ts';

const MOST = 1e6;

function readAmount(input: unknown, per: Rate['per']): Reading<Rate> {
  if (typeof input !== 'number') return undefined;
  if (input >= 0 && input <= MOST) return taken({ amount: input, per });
  const limit = input < 0 ? 'at least 0' : `at most ${MOST}`;
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
  const properties = Object.fromEntries(known.map((per) => [per, { type: 'number', minimum: 0, maximum: MOST }]));
  return leaf(
    'a price',
    read,
    `${about}, for one ${RATES[alone]} where no unit is named`,
    [9.5, { [others[0] ?? alone]: 1.25 }],
    {
      anyOf: [
        { type: 'number', minimum: 0, maximum: MOST },
        { type: 'object', properties, additionalProperties: false, minProperties: 1, maxProperties: 1 },
      ],
    },
  );
}

/** What the shop asks for, and how it is added up. */
export function pricesSchema() {
  const tax = record(
    {
      name: z.optional(line('What documents call it; Tax without it', ['VAT'])),
      percent: needed(number('Of the price before tax', [20], 0, 100, 'a percentage from 0 to 100')),
      included: z.optional(yesNo('True where the shop’s prices hold it already')),
    },
    'a map: percent, name, included',
  );
  const share = 'A blank costs its share of a sheet by area, or every sheet that is begun counts whole';
  const prices = record(
    {
      currency: z.optional(line('Sign or letters that stand before amounts', ['€', 'GBP'])),
      decimals: z.optional(whole('Digits after the point', [2], 0, 3)),
      boards: z.optional(oneOf(share, ['share', 'sheet'])),
      unitedInch: z.optional(number('For the mat, each inch of its width + height', [0.8], 0, MOST, 'a price')),
      labour: z.optional(number('For cutting, mounting and fitting one piece', [25], 0, MOST, 'a price')),
      tax: z.optional(described(tax, 'Tax on everything', [{ name: 'VAT', percent: 20, included: true }])),
    },
    'a map: currency, boards, unitedInch, labour, tax, decimals',
  );
  return described(prices, 'Prices that belong to no board, glazing or moulding, and how prices are added up', [
    { currency: '€', labour: 25, tax: { name: 'VAT', percent: 20, included: true } },
  ]);
}
