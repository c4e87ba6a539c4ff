export interface Guide {
  readonly graduation: number;
  readonly longest?: number;
  /** Thickness it was set at; undefined switches the thickness term off. */
  readonly setAt?: number;
  /** True setting = a + b × reading. */
  readonly a: number;
  readonly b: number;
}
