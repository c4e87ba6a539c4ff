/** What is wanted: copies of each type, from so many sheets of each stock at most. */
export interface Wanted {
  readonly need: Int32Array;
  readonly limits: readonly number[];
}
