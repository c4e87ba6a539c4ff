/** A cutting head and what was found out by calibrating it. Lengths are mm. */
export interface Head {
  readonly id: string;
  readonly bevel: number;
  /** The hand of the travel on which the opening lies, as seen from the back. */
  readonly opening: 'left' | 'right';
  /** Straightedge to the blade's entry line; 0 where the head needs none. */
  readonly straightedge: number;
  readonly straightedgeOn: 'border' | 'opening';
  /** Where on the head the scribe is read, in the shop's words. */
  readonly scribe?: string;
  /** How far ahead of the scribe the blade reaches the face when pushed in (`e_start`). */
  readonly start: readonly OffsetAt[];
  /** How far ahead of the scribe the face cut ends (`e_stop`). */
  readonly stop: readonly OffsetAt[];
  /** How far the ends of its cuts stray: the standard deviation of one of them, from its calibration. */
  readonly spread?: number;
  /** The overrun wished at both ends. */
  readonly overrun: number;
  /** False until offsets were given: the pattern then says so. */
  readonly calibrated: boolean;
  /** Bar to blade, for sides that the guide cannot reach. */
  readonly bar?: number;
  /** Blade, depth and day of the calibration, in the shop's words. */
  readonly blade?: string;
  readonly depth?: string;
  readonly date?: string;
}

/** `thickness` is undefined where one offset serves for all. */
export interface OffsetAt {
  readonly thickness?: number;
  readonly offset: number;
}
