import { defined } from '../read/fields/defined.ts';
import * as defaults from './defaults.ts';
import type { Prices } from './prices.ts';
import type { Rate } from './rate.ts';
import type { ShopInput } from './shop-schema.ts';

export function pricesFrom(given: NonNullable<ShopInput['prices']>): Prices {
  const { PRICES } = defaults;
  const { tax } = given;
  return {
    decimals: given.decimals ?? PRICES.decimals,
    boards: given.boards ?? PRICES.boards,
    ...defined({ currency: given.currency, unitedInch: given.unitedInch, labour: given.labour }),
    ...(tax === undefined
      ? {}
      : { tax: { name: tax.name ?? 'Tax', percent: tax.percent, included: tax.included ?? false } }),
  };
}

/** A board's price: `price` is that of a sheet, `areaPrice` one by area. */
export function boardPrice(rate: Rate | undefined): { readonly price?: number; readonly areaPrice?: Rate } {
  if (rate === undefined) return {};
  return rate.per === 'sheet' ? { price: rate.amount } : { areaPrice: rate };
}
