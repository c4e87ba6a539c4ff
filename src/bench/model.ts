import type { Point } from '../geometry/point.ts';
import type { Side } from '../geometry/sides.ts';
import type { Units } from '../units/units.ts';

/**
 * One pull of the head along one straight side, in the BACK view of the mat: origin at the top mat's top left as
 * seen from the back, mm. `side` is named from the face view.
 */
export interface Stroke {
  /** From 1, the top mat being 1, as in `pattern-1`. */
  readonly layer: number;
  /** From 1. */
  readonly opening: number;
  readonly side: Side;
  /** From 1, where the opening has several straight sides of that name. */
  readonly part?: number;
  /** From 1, over all layers, in the order of work. */
  readonly order: number;
  /** Unit vector of the travel. */
  readonly direction: Point;
  /** The line to follow, in the direction of the travel: ends at the back corners (lifted where cut through paper). */
  readonly line: { readonly from: Point; readonly to: Point };
  /** The face edge, in the direction of the travel: u = 0 and u = L. */
  readonly face: { readonly from: Point; readonly to: Point };
  /** Where the scribe starts and stops, on the line. */
  readonly start: Point;
  readonly stop: Point;
  readonly reverse: boolean;
  /** Of a reverse bevel: how far the board stays uncut at the back, from each end of the cut out to the corner there. */
  readonly uncut?: { readonly start: number; readonly stop: number };
  /** Which edge of the board lies against the guide. */
  readonly guideFrom: 'border' | 'far';
  /** That edge to the face line, mm; for an oblique side the board's farthest corner that way, square to the line. */
  readonly distance: number;
  /** What the guide is set to before rounding, mm. */
  readonly guide: number;
  readonly setting: Setting;
  /** Where the straightedge lies, parallel to the line and as long; undefined for a head without an offset. */
  readonly straightedge?: { readonly from: Point; readonly to: Point };
  /** Where the bar of a board-mounted cutter lies, with the guide taken off; only where the guide cannot be set. */
  readonly bar?: { readonly from: Point; readonly to: Point };
  /** True where no guide is set: beyond its longest setting, below its zero, for a side oblique to the edges, or along a straightedge. */
  readonly beyondGuide: boolean;
  /** By what it is laid then. */
  readonly rest?: Rest;
  /** True where the job says that it is cut already. */
  readonly cut?: true;
  /** The setting as it was planned, where something was cut otherwise and this one is another now. */
  readonly planned?: Setting;
}

/** What is measured by a rule where the guide cannot be set. */
export interface Rest {
  /** To the bar's edge, to the straightedge, or to the line that is followed on the back. */
  readonly to: 'bar' | 'straightedge' | 'line';
  /** The edge that the guide would rest on; of a slanting side the board's farthest corner that way. */
  readonly from: 'edge' | 'corner';
  /** From there, square to the line, mm; below nought it lies off the board. */
  readonly distance: number;
  /** As it is printed. */
  readonly setting: Setting;
}

/** A guide reading as it is printed: `3 1/16` `scant` `-0.4 mm`. */
export interface Setting {
  /** mm, on the graduation. */
  readonly value: number;
  /** In the unit of the guide's scale: `2 3/4`, without its unit and with it. */
  readonly amount: string;
  readonly text: string;
  readonly unit: Units;
  readonly sense: 'exact' | 'scant' | 'full';
  /** guide − value, mm. */
  readonly remainder: number;
}
