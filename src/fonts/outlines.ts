import type { Path, Segment } from '../geometry/path.ts';
import { between, type Point, plus } from '../geometry/point.ts';
import { placesOf } from './faces.ts';
import { BETWEEN_OUTLINES, type FaceOutlines, type FontId, type Fonts, type Weight } from './model.ts';

/**
 * The text as closed paths, y down, its base line from 0 0 to the right; `size`, the em, gives the unit. To be filled
 * non-zero, not even-odd: parts of a letter may overlap. Quadratic curves come out as the same curves in cubic form.
 */
export function textOutline(text: string, weight: Weight, size: number, fonts: Fonts): readonly Path[] {
  return lettersOf(text, weight, size, fonts).flatMap(({ font, glyph, x, scale }) => {
    const place = (p: Point): Point => ({ x: x + p.x * scale, y: -p.y * scale });
    return letterContours(font, glyph, fonts).map((contour) => pathOf(contour, place));
  });
}

/** A letter of a text: where its base line begins, and how large a unit of its font is. */
interface PlacedLetter {
  readonly font: FontId;
  readonly glyph: number;
  readonly x: number;
  readonly scale: number;
}

export function lettersOf(text: string, weight: Weight, size: number, fonts: Fonts): readonly PlacedLetter[] {
  let along = 0;
  return placesOf(text, weight, fonts).map(({ table, glyph }) => {
    const scale = size / table.unitsPerEm;
    const x = along;
    along += table.advances[glyph]! * scale;
    return { font: table.id, glyph, x, scale };
  });
}

/** One letter of a font. */
export const letterContours = (id: FontId, glyph: number, fonts: Fonts): readonly Contour[] =>
  contoursOf(outlinesOf(id, fonts)[glyph] ?? '');

/** Split when a font is first drawn: most drawings use one or two. */
const SPLIT = new WeakMap<object, Map<FontId, FaceOutlines>>();

function outlinesOf(id: FontId, { outlines }: Fonts): FaceOutlines {
  if (outlines === undefined) throw new TypeError('these fonts were loaded without the outlines of letters');
  const known = SPLIT.get(outlines) ?? new Map<FontId, FaceOutlines>();
  SPLIT.set(outlines, known);
  const split = known.get(id) ?? (outlines[id] ?? '').split(BETWEEN_OUTLINES);
  known.set(id, split);
  return split;
}

/** A step of a contour, font units: a quadratic curve where it has a handle. */
interface Step {
  readonly from: Point;
  readonly handle?: Point;
  readonly to: Point;
}

/** Font units, y up; closed by a straight line where its end is not its start. */
export interface Contour {
  readonly start: Point;
  readonly steps: readonly Step[];
}

/** Letters come back all the time, and reading one takes longer than placing it. */
const READ = new Map<string, readonly Contour[]>();
const MOST_READ = 1000;

function contoursOf(outline: string): readonly Contour[] {
  const known = READ.get(outline);
  if (known !== undefined) return known;
  const read = readContours(outline);
  if (READ.size >= MOST_READ) READ.clear();
  READ.set(outline, read);
  return read;
}

/** Reads an outline as `FaceOutlines` writes it. */
function readContours(outline: string): readonly Contour[] {
  const contours: { start: Point; steps: Step[] }[] = [];
  let at: Point = { x: 0, y: 0 };
  for (const [, letter, list] of outline.matchAll(/([mlq])([^mlq]+)/g)) {
    const [x, y, x2, y2] = list!.match(/-?[\d.]+(?:e-\d+)?/g)!.map(Number) as [number, number, number, number];
    const first = plus(at, { x, y });
    if (letter === 'm') {
      contours.push({ start: first, steps: [] });
      at = first;
    } else if (letter === 'l') {
      contours.at(-1)!.steps.push({ from: at, to: first });
      at = first;
    } else {
      const to = plus(at, { x: x2, y: y2 });
      contours.at(-1)!.steps.push({ from: at, handle: first, to });
      at = to;
    }
  }
  return contours;
}

/** A contour as a path; `place` takes font units to the plane of the text. */
function pathOf(contour: Contour, place: (p: Point) => Point): Path {
  const start = place(contour.start);
  const segments = contour.steps.map(({ from, handle, to }): Segment => {
    if (handle === undefined) return { kind: 'line', to: place(to) };
    return cubic(place(from), place(handle), place(to));
  });
  const end = segments.at(-1)?.to ?? start;
  if (end.x !== start.x || end.y !== start.y) segments.push({ kind: 'line', to: start });
  return { start, segments, closed: true };
}

/** Degree raised by one: the handles lie two thirds of the way from the ends to the quadratic's own. */
function cubic(from: Point, handle: Point, to: Point): Segment {
  return { kind: 'cubic', c1: between(from, handle, 2 / 3), c2: between(to, handle, 2 / 3), to };
}
