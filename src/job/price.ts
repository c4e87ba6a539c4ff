import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import { described, number, record } from '../read/fields/fields.ts';
import { DEAREST } from '../shop/rate.ts';

/** What was agreed on with the customer, in the shop's money. */
export interface PriceRequest {
  /** For all of the job, tax in it, instead of what the shop's prices come to. */
  readonly agreed?: number;
  /** Paid beforehand; what is left is the balance. */
  readonly deposit?: number;
}

export function priceSchema() {
  const price = record(
    {
      agreed: z.optional(
        number('What all of the job costs, instead of what the shop’s prices come to', [85], 0, DEAREST, 'a price'),
      ),
      deposit: z.optional(number('What was paid beforehand', [20], 0, DEAREST, 'a price')),
    },
    'a map: agreed, deposit',
  );
  return described(price, 'What was agreed on with the customer, for proof and intake form', [{ deposit: 20 }]);
}

export const priceFrom = (given: z.output<ReturnType<typeof priceSchema>>): PriceRequest =>
  defined({ agreed: given.agreed, deposit: given.deposit });
