import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import { described, line, needed, number, oneOf, record, whole, yesNo } from '../read/fields/fields.ts';
import { DEAREST } from './rate.ts';

/** What a shop asks for beside the prices of its things. */
export interface Prices {
  /** Stands before amounts. */
  readonly currency?: string;
  readonly decimals: number;
  /** A blank costs its share of a sheet by area, or every sheet that is begun counts whole. */
  readonly boards: 'share' | 'sheet';
  /** For the mat, each inch of its width + height. */
  readonly unitedInch?: number;
  readonly labour?: number;
  /** What a customer reads: every line, or the total alone. */
  readonly show: 'lines' | 'total';
  readonly tax?: { readonly name: string; readonly percent: number; readonly included: boolean };
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
      unitedInch: z.optional(number('For the mat, each inch of its width + height', [0.8], 0, DEAREST, 'a price')),
      labour: z.optional(number('For cutting, mounting and fitting one piece', [25], 0, DEAREST, 'a price')),
      show: z.optional(oneOf('What a customer reads: every line, or the total alone', ['lines', 'total'])),
      tax: z.optional(described(tax, 'Tax on everything', [{ name: 'VAT', percent: 20, included: true }])),
    },
    'a map: currency, boards, unitedInch, labour, show, tax, decimals',
  );
  return described(prices, 'Prices that belong to no board, glazing or moulding, and how prices are added up', [
    { currency: '€', labour: 25, tax: { name: 'VAT', percent: 20, included: true } },
  ]);
}

/** Adding up where the shop says no more. */
export const PRICES = { decimals: 2, boards: 'share', show: 'lines' } as const;

export function pricesFrom(given: z.output<ReturnType<typeof pricesSchema>>): Prices {
  const { tax } = given;
  return {
    decimals: given.decimals ?? PRICES.decimals,
    boards: given.boards ?? PRICES.boards,
    show: given.show ?? PRICES.show,
    ...defined({ currency: given.currency, unitedInch: given.unitedInch, labour: given.labour }),
    ...(tax === undefined
      ? {}
      : { tax: { name: tax.name ?? 'Tax', percent: tax.percent, included: tax.included ?? false } }),
  };
}
