import type { Item, PathItem, Pen } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, box, centre, grown } from '../../geometry/box.ts';
import { parallelOf } from '../../geometry/parallel.ts';
import { type Path, placedPath, polygon, straightSides } from '../../geometry/path.ts';
import { type Point, point } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { decor } from '../../mat/decor.ts';
import { frameOf, pieceBox, sightBox } from '../../mat/framed.ts';
import type { Mat, MatOpening } from '../../mat/model.ts';
import { labelBlock, moved } from '../../text/block.ts';
import { boxItem } from '../../text/figures.ts';
import { widthOf } from '../../text/line.ts';
import { SMALL } from '../../text/styles.ts';
import { facets } from './bevel.ts';
import { frameItems, lipShadow, mitreColour, mitrePen, shadow } from './frame.ts';
import { coreColour, darker, isAlike, mixed, slope } from './shades.ts';

/** Where the piece stands on the sheet: its mat's top left, and mm of the sheet for each of the piece. */
export interface Place {
  readonly at: Point;
  readonly scale: number;
}

/** What of an opening the artwork fills: all of it, or its own size where it floats. */
export function artBox({ sight, artwork }: MatOpening): Box {
  return artwork?.floated === true ? artwork.box : sight;
}

/** A picture that was prepared for an opening: its name among the drawing's pictures, and the part of the piece it fills. */
export interface PlacedPicture {
  readonly id: string;
  readonly box: Box;
}

const PLACEHOLDER = '#e7e4de';
/** What lies behind a floated artwork, unless it is known. */
const GROUND = '#f4f1ea';

export function piecePens(job: Job, scale: number): Readonly<Record<string, Pen>> {
  const frame = frameOf(job);
  const thin = (colour: string | number, width = 0.1): Pen => ({ width, colour, dash: [], cap: 'butt' });
  const inks = job.openings.flatMap(({ decor: lines }) => (lines ?? []).filter(({ kind }) => kind === 'ink'));
  return {
    ...Object.fromEntries(inks.map(({ width }) => [inkPen(width), thin(INK_LINE, Math.max(0.1, width * scale))])),
    edge: thin(0.6),
    cut: thin(0.55, 0.08),
    ...(frame === undefined ? {} : { [mitrePen(frame.colour)]: thin(mitreColour(frame.colour), 0.09) }),
  };
}

/** The piece as it will hang, seen from the face, with its shadow on white paper. */
export function pieceItems(
  mat: Mat,
  job: Job,
  place: Place,
  pictures: readonly (PlacedPicture | undefined)[],
  words: readonly (readonly string[])[],
  fonts: Fonts,
): readonly Item[] {
  const { scale } = place;
  const { x, y, width, height } = pieceBox(mat, job);
  const whole = box(place.at.x + x * scale, place.at.y + y * scale, width * scale, height * scale);
  return [
    ...shadow(whole, Math.min(3.4, 0.03 * Math.min(whole.width, whole.height))),
    ...bareItems(mat, job, place, pictures, words, fonts),
  ];
}

/** The same on whatever lies behind it. `words` stand in openings that have no picture. */
export function bareItems(
  mat: Mat,
  job: Job,
  place: Place,
  pictures: readonly (PlacedPicture | undefined)[],
  words: readonly (readonly string[])[],
  fonts: Fonts,
): readonly Item[] {
  const { scale } = place;
  const at = (p: Point): Point => point(place.at.x + p.x * scale, place.at.y + p.y * scale);
  const placed = (path: Path): Path => placedPath(path, at);
  const placedBox = (b: Box): Box => ({ ...at(b), width: b.width * scale, height: b.height * scale });
  const frame = frameOf(job);

  const items: Item[] = [];
  mat.openings.forEach((opening, i) => {
    items.push(...artItems(opening, pictures[i], words[i] ?? [], placedBox, fonts));
  });
  if (mat.layers.length === 1)
    for (const each of mat.lettering ?? []) items.push(boxItem(placedBox(grown(each.box, 0.5)), GROUND));
  for (let k = mat.layers.length - 1; k >= 0; k--) items.push(...layerItems(mat, k, placed, placedBox, scale));
  items.push(...decorItems(mat, job, placed, scale));
  if (frame === undefined) {
    items.push(boxItem(placedBox(box(0, 0, mat.outer.width, mat.outer.height)), undefined, 'edge'));
  } else {
    const sight = placedBox(sightBox(mat, job));
    const top = mat.layers[0]!.board.colour;
    items.push(...lipShadow(sight, Math.min(1.1, 3.2 * scale), top));
    items.push(...frameItems(sight, frame.width * scale, frame.colour));
  }
  return items;
}

/** Ink of a line on the mat: no shop names its inks. */
const INK_LINE = '#6b6358';
const inkPen = (width: number): string => `ink ${width.toFixed(4)}`;

/** Grooves, whose two sides show the core, and ink lines, on the face of the top mat. */
function decorItems(mat: Mat, job: Job, placed: (path: Path) => Path, scale: number): readonly Item[] {
  const { board } = mat.layers[0]!;
  const core = coreColour(board.core, board.colour);
  return decor(mat, job).flatMap(({ request, whole: path, runs }): readonly Item[] => {
    if (request.kind === 'ink') return [{ kind: 'path', pen: inkPen(request.width), paths: runs.map(placed) }];
    const half = request.width / 2;
    if (request.sides !== undefined) return runs.flatMap((run) => straightGroove(run, half, placed, core));
    const outer = parallelOf(path, half);
    if (typeof outer === 'string') return [];
    return [...facets(placed(outer), half * scale, core, 0), ...facets(placed(path), half * scale, core, 0, true)];
  });
}

/** Of a groove along some sides alone: the two slopes of each side, square at their ends. */
function straightGroove(run: Path, half: number, placed: (path: Path) => Path, core: string): readonly Item[] {
  return straightSides(run).flatMap(({ from, to }): Item[] => {
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    const out = point((to.y - from.y) / long, (from.x - to.x) / long);
    const band = (by: number): Path =>
      polygon([from, to, point(to.x + out.x * by, to.y + out.y * by), point(from.x + out.x * by, from.y + out.y * by)]);
    return [
      { kind: 'path', paths: [placed(band(half))], fill: slope(core, out) },
      { kind: 'path', paths: [placed(band(-half))], fill: slope(core, point(-out.x, -out.y)) },
    ];
  });
}

/** One board: its slopes below, its face over them, both with the holes of all openings. */
function layerItems(
  mat: Mat,
  k: number,
  placed: (path: Path) => Path,
  placedBox: (b: Box) => Box,
  scale: number,
): readonly Item[] {
  const { board, bevel, blankBox, setback } = mat.layers[k]!;
  const edge = boxItem(placedBox(blankBox), undefined).paths[0]!;
  const letters = k === 0 ? (mat.lettering ?? []) : [];
  const upright = letters.flatMap(({ square, parts }) => (square ? parts.map(({ face }) => placed(face)) : []));
  const sloped = letters.flatMap(({ square, parts }) => (square ? [] : parts));
  const faces = [
    ...mat.openings.map(({ layers }) => placed(layers[k]!.face)),
    ...sloped.map(({ face }) => placed(face)),
  ];
  const board_: PathItem = {
    kind: 'path',
    paths: [edge, ...faces, ...upright],
    fill: board.colour,
    id: `layer-${k + 1}`,
  };
  if (bevel.reverse || setback === 0) {
    // No core is seen: the edge alone parts the board from what lies behind.
    return [board_, { kind: 'path', paths: [...faces, ...upright], pen: 'cut' }];
  }
  const core = coreColour(board.core, board.colour);
  const backs = [
    ...mat.openings.map(({ layers }) => placed(layers[k]!.back)),
    ...sloped.map(({ back }) => placed(back)),
    ...upright,
  ];
  // Where nothing differs in colour, the edge alone is seen: a hairline. Letters that are cut upright have no slope at all.
  const below = mat.layers[k + 1]?.board.colour;
  const alike = [core, below].some((colour) => colour !== undefined && isAlike(colour, board.colour));
  const edges = [...(alike ? faces : []), ...upright];
  const hairlines: readonly PathItem[] = edges.length === 0 ? [] : [{ kind: 'path', paths: edges, pen: 'cut' }];
  const slopes: PathItem = { kind: 'path', paths: [edge, ...backs], fill: mixed(core, darker(core, 0.15), 0.5) };
  return [slopes, ...faces.flatMap((face) => facets(face, setback * scale, core)), board_, ...hairlines];
}

function artItems(
  opening: MatOpening,
  picture: PlacedPicture | undefined,
  words: readonly string[],
  placedBox: (b: Box) => Box,
  fonts: Fonts,
): readonly Item[] {
  const floated = opening.artwork?.floated === true;
  const around = placedBox(grown(opening.sight, 0.5));
  const art = placedBox(artBox(opening));
  const ground = boxItem(around, floated ? GROUND : PLACEHOLDER);
  const paper: readonly Item[] = floated ? [...paperShadow(art), boxItem(art, PLACEHOLDER)] : [];
  const shown: readonly Item[] =
    picture === undefined
      ? wordsItems(words, art, fonts)
      : [{ kind: 'picture', picture: picture.id, box: placedBox(picture.box) }];
  return [ground, ...paper, ...shown];
}

/** A sheet that stands off its ground. */
function paperShadow(art: Box): readonly PathItem[] {
  return [
    boxItem({ ...art, x: art.x + 0.35, y: art.y + 0.5 }, darker(GROUND, 0.08)),
    boxItem({ ...art, x: art.x + 0.2, y: art.y + 0.28 }, darker(GROUND, 0.16)),
  ];
}

/** Lines about the middle of an opening; one that is too wide for it is left out. */
function wordsItems(words: readonly string[], art: Box, fonts: Fonts): readonly Item[] {
  const style = SMALL;
  const lines = words.filter((text) => text !== '' && widthOf(text, style, fonts) <= 0.86 * art.width);
  const { items } = labelBlock(
    lines.map((text) => ({ text, style })),
    fonts,
    'middle',
  );
  const [first, last] = [items[0], items.at(-1)];
  if (first?.kind !== 'text' || last?.kind !== 'text') return [];
  const middle = centre(art);
  const base = middle.y + 0.35 * style.size - (last.at.y - first.at.y) / 2;
  return moved(items, middle.x - first.at.x, base - first.at.y);
}
