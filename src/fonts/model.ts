export type Weight = 'regular' | 'bold';

/** Vertical metrics in em. */
export interface Metrics {
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
}
