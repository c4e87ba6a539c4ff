import type { Stroke } from '../../bench/model.ts';
import { mirror } from '../../bench/outline.ts';
import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, centre, contains, grown, overlaps, union } from '../../geometry/box.ts';
import { pathBox } from '../../geometry/extent.ts';
import { type Path, placedPath, polygon } from '../../geometry/path.ts';
import { distance, dot, minus, type Point, plus, point, times, unit } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { defined } from '../../problems/defined.ts';
import type { Block } from '../../text/block.ts';
import { boxItem } from '../../text/figures.ts';
import { capHeight, depthOf, ellipsized, set, widthOf } from '../../text/line.ts';
import { disc, discRadius } from '../../text/signs.ts';
import { Squares } from '../../text/squares.ts';
import { BOLD, FINE, FINE_BOLD, type Style } from '../../text/styles.ts';
import { BACK_WORDS } from '../words/back-side.ts';

/** Of the numbers, the largest first. */
const NUMBERS: readonly Style[] = [BOLD, FINE_BOLD];
const ARROW = 1.9;
/** Two lines nearer than this run into one. */
const LEAST_SEEN = 0.8;

/**
 * One layer in the back view, TOP up: the line to cut, the strokes with their numbers and the way that they run. Layers
 * above, where the boards lie together, are dashed.
 */
export function diagram(
  mat: Mat,
  job: Job,
  strokes: readonly Stroke[],
  layer: number,
  room: { readonly width: number; readonly height: number },
  fonts: Fonts,
): Block {
  const top = capHeight(BOLD, fonts) + 1.4;
  const below = capHeight(FINE, fonts) + 1.8;
  const ratio = Math.min(room.width / mat.outer.width, (room.height - top - below) / mat.outer.height);
  const [width, height] = [mat.outer.width * ratio, mat.outer.height * ratio];
  const left = (room.width - width) / 2;
  const at = (p: Point): Point => point(left + p.x * ratio, top + p.y * ratio);
  const outline = (path: Path): Path => placedPath(mirror(path, mat.outer.width), at);

  const together = job.bench.stack === 'together' && layer > 1;
  const items: Item[] = [boxItem(box(left, top, width, height), undefined, 'edge')];
  const blank = mat.layers[layer - 1]!.blankBox;
  if (together && mat.layers[layer - 1]!.trimBack * ratio > LEAST_SEEN) {
    const own = { x: mat.outer.width - blank.x - blank.width, y: blank.y };
    items.push(boxItem({ ...at(own), width: blank.width * ratio, height: blank.height * ratio }, undefined, 'hidden'));
  }
  const paths = mat.openings.map(({ layers }) => outline(layers[layer - 1]!.back));
  items.push({ kind: 'path', pen: 'cut', paths });

  const lines = strokes
    .filter((stroke) => stroke.layer === layer)
    .map((stroke) => ({ stroke, from: at(stroke.line.from), to: at(stroke.line.to) }));
  const words = [
    set('TOP', left + width / 2, top - 1.4, BOLD, 'middle'),
    ...upArrows(left + width / 2, top - 1.4, widthOf('TOP', BOLD, fonts), capHeight(BOLD, fonts)),
    set(BACK_WORDS, room.width / 2, top + height + below, FINE, 'middle'),
  ];
  items.push(...lines.flatMap(({ from, to }) => arrowItems(from, to)));
  const board = box(left, top, width, height);
  const names = mat.openings.length === 1 ? [] : openingNames(mat, paths, fonts);
  const within = names.flatMap(({ inside }) => inside ?? []);
  const discs = numbers(lines, board, paths, within, fonts);
  items.push(...discs.flatMap((each) => each.items));
  items.push(...nameItems(names, board, [...within, ...discs.map(({ around }) => around)], fonts));
  return { items: [...items, ...words], width: room.width, height: top + height + below + 0.6 };
}

function upArrows(x: number, base: number, width: number, cap: number): readonly Item[] {
  return [-1, 1].map((side): Item => {
    const middle = x + side * (width / 2 + 2.6);
    const corners = [point(middle, base - cap), point(middle + 1.1, base), point(middle - 1.1, base)];
    return { kind: 'path', fill: 0, paths: [polygon(corners)] };
  });
}

interface Name {
  readonly text: string;
  readonly own: Box;
  /** Where it stands in its opening, if there is room. */
  readonly inside?: Box;
}

/** What each opening is called. */
function openingNames(mat: Mat, paths: readonly Path[], fonts: Fonts): readonly Name[] {
  return mat.openings.map(({ name: text }, i) => {
    const own = pathBox(paths[i]!);
    const inside = nameBox(text, centre(own).x, centre(own).y, fonts);
    const fits = contains(grown(own, -1.2), inside) && inside.height < 0.4 * own.height;
    return { text, own, ...defined({ inside: fits ? inside : undefined }) };
  });
}

/** From the tops of capitals to the descenders, its capitals' middle at a height. */
function nameBox(text: string, x: number, y: number, fonts: Fonts): Box {
  const [width, cap] = [widthOf(text, FINE, fonts), capHeight(FINE, fonts)];
  return box(x - width / 2, y - cap / 2, width, cap + depthOf(FINE, fonts));
}

/** How far below or above an opening its name may stand, mm: past the numbers there. */
const BESIDE = [1, 3.6, 5.4, 7];

/** Names inside their openings, else below or above them, else cut off inside; none where something else stands. */
function nameItems(names: readonly Name[], board: Box, already: readonly Box[], fonts: Fonts): readonly Item[] {
  const cap = capHeight(FINE, fonts);
  const taken = new Squares<Box>();
  for (const area of already) taken.add(area, area);
  const owns = new Squares<Box>();
  for (const own of names.map((name) => grown(name.own, 0.6))) owns.add(own, own);
  const within = grown(board, -0.8);
  return names.flatMap(({ text, own, inside }): readonly Item[] => {
    const { x, y } = centre(own);
    if (inside !== undefined) return [set(text, x, inside.y + cap, FINE, 'middle')];
    const free = (around: Box): boolean =>
      taken.find(grown(around, 1), (other) => overlaps(around, other, 0.2)) === undefined;
    const isClear = (around: Box): boolean =>
      contains(within, around) && owns.find(around, (other) => overlaps(around, other)) === undefined;
    const beside = BESIDE.flatMap((gap) => [
      bottom(own) + gap + cap / 2,
      own.y - gap - cap / 2 - depthOf(FINE, fonts),
    ]).map((middle) => ({ said: text, around: nameBox(text, x, middle, fonts) }));
    const said = ellipsized(text, FINE, 0.8 * own.width, fonts);
    const short = { said, around: nameBox(said, x, y, fonts) };
    const place = [...beside.filter(({ around }) => isClear(around)), short].find(({ around }) => free(around));
    if (place === undefined) return [];
    taken.add(place.around, place.around);
    return [set(place.said, x, place.around.y + cap, FINE, 'middle')];
  });
}

interface Placed {
  readonly stroke: Stroke;
  readonly from: Point;
  readonly to: Point;
}

/** A head on the line where the stroke is three quarters done. */
function arrowItems(from: Point, to: Point): readonly Item[] {
  const long = distance(from, to);
  const size = Math.min(ARROW, long / 3);
  if (size < 0.3) return [];
  const along = unit(minus(to, from));
  const aside = point(-along.y, along.x);
  const tip = plus(from, times(along, 0.78 * long));
  const foot = plus(tip, times(along, -size));
  const corners = [tip, plus(foot, times(aside, 0.42 * size)), plus(foot, times(aside, -0.42 * size))];
  return [{ kind: 'path', fill: 0, paths: [polygon(corners)] }];
}

/** Discs beside the middle of each stroke: all outside if there is room, else all inside, else as it comes; all of one size. */
function numbers(
  lines: readonly Placed[],
  board: Box,
  paths: readonly Path[],
  names: readonly Box[],
  fonts: Fonts,
): readonly Disc[] {
  const walls = new Squares<Wall>();
  for (const wall of [...paths, polygon(cornersOf(board))].flatMap(sidesOf))
    walls.add(wall, union([wall.from, wall.to].map(({ x, y }) => box(x, y, 0, 0))));
  for (const ways of [[1], [-1], [1, -1]]) {
    for (const style of NUMBERS) {
      const found = lines.length === 0 ? [] : tryStyle(lines, board, walls, names, style, ways, fonts);
      if (found !== undefined) return found;
    }
  }
  return [];
}

interface Wall {
  readonly from: Point;
  readonly to: Point;
}

interface Disc {
  readonly items: readonly Item[];
  readonly around: Box;
}

/** Undefined where one finds no place, but for the smallest, which leaves such a number to the rows beside. */
function tryStyle(
  lines: readonly Placed[],
  board: Box,
  walls: Squares<Wall>,
  names: readonly Box[],
  style: Style,
  ways: readonly number[],
  fonts: Fonts,
): readonly Disc[] | undefined {
  const discs: Disc[] = [];
  const taken = new Squares<Box>();
  for (const name of names) taken.add(name, name);
  for (const { stroke, from, to } of lines) {
    const text = `${stroke.order}`;
    const radius = discRadius(text, style);
    const along = unit(minus(to, from));
    const aside = point(-along.y, along.x);
    const outward = dot(aside, outwardOf(stroke)) > 0 ? aside : times(aside, -1);
    const clear = (p: Point): boolean => {
      const off = radius + 0.25;
      const near = grown(box(p.x, p.y, 0, 0), off + 1);
      return walls.find(near, (wall) => toLine(p, wall.from, wall.to) <= off) === undefined;
    };
    const spots = [0.5, 0.36, 0.64].flatMap((share) => {
      const middle = plus(from, times(along, share * distance(from, to)));
      return ways.map((way) => plus(middle, times(outward, way * (radius + 0.7))));
    });
    const spot = spots.find((p) => {
      const own = box(p.x - radius, p.y - radius, 2 * radius, 2 * radius);
      return (
        contains(board, own) &&
        clear(p) &&
        taken.find(grown(own, 1), (other) => overlaps(own, other, 0.3)) === undefined
      );
    });
    if (spot === undefined) {
      if (ways.length === 1 || style !== NUMBERS.at(-1)) return undefined;
      continue;
    }
    const around = box(spot.x - radius, spot.y - radius, 2 * radius, 2 * radius);
    discs.push({ items: disc(text, spot, style, fonts), around });
    taken.add(around, around);
  }
  return discs;
}

/** From the line towards the border, in the back view; for a reverse bevel alike. */
function outwardOf({ side }: Stroke): Point {
  switch (side) {
    case 'top':
      return point(0, -1);
    case 'bottom':
      return point(0, 1);
    case 'left':
      return point(1, 0);
    case 'right':
      return point(-1, 0);
    default: {
      const never: never = side;
      return never;
    }
  }
}

const cornersOf = ({ x, y, width, height }: Box): readonly Point[] => [
  point(x, y),
  point(x + width, y),
  point(x + width, y + height),
  point(x, y + height),
];

/** Chords are enough here: discs keep a quarter of a millimetre away. */
function sidesOf(path: Path): readonly { readonly from: Point; readonly to: Point }[] {
  let from = path.start;
  return path.segments.map(({ to }) => {
    const side = { from, to };
    from = to;
    return side;
  });
}

function toLine(p: Point, from: Point, to: Point): number {
  const along = minus(to, from);
  const square = along.x * along.x + along.y * along.y;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - from.x) * along.x + (p.y - from.y) * along.y) / square));
  return distance(p, plus(from, times(along, t)));
}
