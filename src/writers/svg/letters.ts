import type { TextItem } from '../../drawing/model.ts';
import type { FontId, Fonts } from '../../fonts/model.ts';
import { type Contour, letterContours, lettersOf } from '../../fonts/outlines.ts';
import type { Point } from '../../geometry/point.ts';
import { decimal } from '../decimal.ts';
import { textPlace } from '../item-paths.ts';

/** Letters lie on a grid of 0.001 mm, so that what is written from point to point never drifts. */
const DIGITS = 3;
const GRID = 10 ** DIGITS;

const onGrid = (mm: number): number => Math.round(mm * GRID);
const written = ({ x, y }: Point): string => `${decimal(x / GRID, DIGITS)} ${decimal(y / GRID, DIGITS)}`;

/** A letter in one size and turn: where it begins, on the grid from its place, and how it goes on from there. */
interface Letter {
  readonly start: Point;
  readonly rest: string;
}

/** A text as data of one path, in the curves of its font: each letter begins at a place of the sheet and goes on from point to point. */
export function lettersData(item: TextItem, fonts: Fonts): string {
  const { text, weight, size, turn } = item;
  const place = textPlace(item, fonts);
  let data = '';
  for (const { font, glyph, x, scale } of lettersOf(text, weight, size, fonts)) {
    const letter = letterOf(font, glyph, scale, turn, fonts);
    if (letter === undefined) continue;
    const origin = place({ x, y: 0 });
    data += `M${written({ x: onGrid(origin.x) + letter.start.x, y: onGrid(origin.y) + letter.start.y })}${letter.rest}`;
  }
  return data;
}

/** Letters come back all the time; undefined where nothing of one is drawn. */
const KNOWN = new Map<string, (Letter | undefined)[]>();
const MOST_KNOWN = 200;
/** Fonts of a test may have the same name. */
let knownOf: Fonts['outlines'];

function letterOf(id: FontId, glyph: number, scale: number, turn: number, fonts: Fonts): Letter | undefined {
  if (KNOWN.size > MOST_KNOWN || knownOf !== fonts.outlines) KNOWN.clear();
  knownOf = fonts.outlines;
  const key = `${id} ${scale} ${turn}`;
  let letters = KNOWN.get(key);
  if (letters === undefined) {
    letters = [];
    KNOWN.set(key, letters);
  }
  if (!(glyph in letters)) letters[glyph] = letterFrom(letterContours(id, glyph, fonts), scale, turn);
  return letters[glyph];
}

function letterFrom(contours: readonly Contour[], scale: number, turn: number): Letter | undefined {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle) * scale, Math.sin(angle) * scale];
  const placed = ({ x, y }: Point): Point => ({ x: onGrid(x * cos + y * sin), y: onGrid(x * sin - y * cos) });
  const [first] = contours;
  if (first === undefined) return undefined;
  const start = placed(first.start);
  let rest = '';
  let begun = start;
  for (const contour of contours) {
    const from = placed(contour.start);
    if (contour !== first) rest += `m${step(begun, from)}`;
    begun = from;
    let at = from;
    for (const { handle, to } of contour.steps) {
      const end = placed(to);
      if (handle !== undefined) rest += `q${step(at, placed(handle))} ${step(at, end)}`;
      // The side back to the start is what `z` draws.
      else if (to !== contour.steps.at(-1)!.to || end.x !== from.x || end.y !== from.y) rest += `l${step(at, end)}`;
      at = end;
    }
    rest += 'z';
  }
  return { start, rest };
}

const step = (from: Point, to: Point): string => written({ x: to.x - from.x, y: to.y - from.y });
