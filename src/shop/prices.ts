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
  readonly tax?: { readonly name: string; readonly percent: number; readonly included: boolean };
}
