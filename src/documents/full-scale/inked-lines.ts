import { penOf } from '../../drawing/bounds.ts';
import type { Drawing, Item } from '../../drawing/model.ts';
import type { Line } from '../../geometry/clip.ts';
import { flattened } from '../../geometry/flatten.ts';
import { type Path, polygon, straightSides } from '../../geometry/path.ts';
import type { InkedLine } from '../../text/room.ts';

/** The lines of an item that words must keep clear of, curves as chords. */
export function linesOf(item: Item, pens: Drawing['pens']): readonly InkedLine[] {
  const half =
    (item.kind === 'line' || item.kind === 'path') && item.pen !== undefined ? penOf(item.pen, pens).width / 2 : 0;
  if (item.kind === 'line') return [{ from: item.from, to: item.to, half }];
  return item.kind === 'path' ? item.paths.flatMap(chords).map((side) => ({ ...side, half: half + CHORD })) : [];
}

/** Farthest that a chord lies from its curve. */
const CHORD = 0.1;

function chords(path: Path): readonly Line[] {
  if (path.segments.every((segment) => segment.kind === 'line')) return straightSides(path);
  return straightSides(polygon(flattened(path, CHORD), path.closed));
}
