import type { AvoidBox } from '../../drawing/full-scale.ts';
import type { LineItem } from '../../drawing/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import type { Block } from '../../text/block.ts';
import type { Places } from '../../text/places.ts';

/** Words that belong together, and the places where they may stand. */
export interface Label {
  /** As a warning names it. */
  readonly what: string;
  readonly why: AvoidBox['why'];
  /** What it is about: words that stand off are led to it. */
  readonly target?: Point;
  /** The best first. */
  readonly tries: readonly Try[];
  /** Its places lie along its own line, which tells whose it is: sheet by sheet it needs no leader there. */
  readonly alongLine?: boolean;
  /** Where else it can be read where it finds no room. */
  readonly instead?: string;
  /** Nothing is missed where it finds no room. */
  readonly optional?: boolean;
}

export interface Try {
  readonly places: () => Iterable<Places>;
  /** Farther off, always with a leader to the target. */
  readonly farther?: () => Iterable<Places>;
  /** It says less than it should: what is missing has to be looked up. */
  readonly short?: boolean;
}

export interface PlacedLabel {
  readonly label: Label;
  /** As it stands in the drawing. */
  readonly block: Block;
  readonly box: Box;
  readonly leader?: LineItem;
}
