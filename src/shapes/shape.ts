import type { Box } from '../geometry/box.ts';
import type { Path } from '../geometry/path.ts';

/** What a kind of opening must know about itself. Lengths are mm, the view is the face view. */
export interface Shape {
  /** The outline that fills `frame`, clockwise as the eye sees it, from the top left. */
  readonly outline: (frame: Box) => Path;
  /** The true parallel of that outline, `by` outwards (inwards where negative); undefined where nothing is left of it. */
  readonly parallel: (frame: Box, by: number) => Path | undefined;
}
