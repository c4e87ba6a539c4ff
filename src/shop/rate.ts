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
