import { signedArea } from '../../geometry/measure.ts';
import { type Path, placedPath, reversed } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';

/** A closed path, run through clockwise as the eye sees it. */
export const clockwise = (path: Path): Path => (signedArea(path) < 0 ? reversed(path) : path);

/** Run through as asked, after every point was moved by a shift or a turn. */
export const laid = (path: Path, place: (p: Point) => Point): Path => clockwise(placedPath(path, place));
