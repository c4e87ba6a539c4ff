import { hingeBoxes, hingeSide } from '../../bench/hinges.ts';
import type { AvoidBox, Fact, FullScale } from '../../drawing/full-scale.ts';
import type { Drawing, Item, Pen, TextItem } from '../../drawing/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import { textBox } from '../../fonts/measure.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, grown, right } from '../../geometry/box.ts';
import { type Path, placedPath } from '../../geometry/path.ts';
import { distance, type Point, plus, point } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import type { Artwork, Mat, MatOpening } from '../../mat/model.ts';
import { error, fail, type Result, succeed } from '../../problems/problem.ts';
import { BOLD, scaled, TEXT } from '../../text/bench-type.ts';
import { boxItem, capHeight, fitted, LEADING, type Style, set, widthOf } from '../../text/type-scale.ts';
import { showNear } from '../../units/print.ts';
import { sides, size } from '../proof/words.ts';

/** Paper beyond the backing's edge, so that its line is drawn whole. */
const AROUND = 1;
/** What is drawn of a corner of the artwork where sheets are laid on by the backing's corners. */
const CORNER = 28;

const PENS: Readonly<Record<string, Pen>> = {
  backing: { width: 0.35, colour: 0, dash: [], cap: 'butt' },
  artwork: { width: 0.6, colour: 0, dash: [], cap: 'butt' },
  sight: { width: 0.3, colour: 0, dash: [5, 1.5, 1, 1.5], cap: 'butt' },
  hinge: { width: 0.3, colour: 0, dash: [], cap: 'butt' },
  behind: { width: 0.3, colour: 0, dash: [1, 1], cap: 'butt' },
};

const LARGE: Style = scaled(BOLD, 1.9);
const PLAIN: Style = scaled(TEXT, 1.3);

export interface Placement {
  readonly sheet: FullScale;
  /** What the sheet says, as data: mm, seen from the face. */
  readonly record: readonly PlacedArtwork[];
}

export interface PlacedArtwork {
  readonly opening: number;
  readonly name: string;
  readonly fromLeft: number;
  readonly fromTop: number;
  readonly fromRight: number;
  readonly fromBottom: number;
  readonly hinges: 'T' | 'V';
}

/**
 * The backing from the face at full scale: where each artwork lies, the sight over it, where its hinges go, and along
 * which edge window and backing hinge. Errors: `placement-artwork-missing`.
 */
export function placement(mat: Mat, job: Job, fonts: Fonts): Result<Placement> {
  const placed = mat.openings.flatMap((opening, index) =>
    opening.artwork === undefined ? [] : [{ opening, artwork: opening.artwork, index }],
  );
  if (placed.length === 0) {
    const message = 'the job names no artwork to place';
    return fail([error('placement-artwork-missing', ['openings', 0], message, 'give artwork: its size')]);
  }
  const board = box(AROUND, AROUND, mat.backing.width, mat.backing.height);
  const by = point(AROUND, AROUND);
  const items = {
    backing: [boxItem(board, undefined, 'backing')] as Item[],
    artwork: [] as Item[],
    sight: [] as Item[],
    hinges: [] as Item[],
    words: [] as Item[],
  };
  const avoid: AvoidBox[] = [];
  const facts: Fact[] = [];
  placed.forEach(({ opening, artwork, index }) => {
    const art = { ...artwork.box, ...plus(artwork.box, by) };
    items.artwork.push({ ...boxItem(art, undefined, 'artwork'), id: `artwork-${index + 1}` });
    items.sight.push({
      kind: 'path',
      pen: 'sight',
      paths: [placedPath(sightPath(opening), (p) => plus(p, by))],
      id: `sight-${index + 1}`,
    });
    const { behind, above } = hingeBoxes(art, artwork.floated);
    items.hinges.push(...behind.map((each) => boxItem(each, undefined, 'behind')));
    items.hinges.push(...above.map((each) => boxItem(each, undefined, 'hinge')));
    const lines = wordsOf(opening, artwork, mat, job, placed.length > 1);
    const said = wordItems(lines, art, fonts);
    items.words.push(...said);
    avoid.push(...said.map((item): AvoidBox => ({ why: 'text', box: grown(textBox(item, fonts), 1) })));
    avoid.push(...cornersOf(art).map((corner): AvoidBox => ({ why: 'corner', box: grown(corner, 2) })));
    avoid.push(...above.map((each): AvoidBox => ({ why: 'tick', box: each })));
    facts.push(diagonalOf(art, `${placed.length === 1 ? 'artwork' : opening.name}, corner to corner`, job));
  });
  items.hinges.push(...windowHinge(mat, job, board));
  const edge = [...topWords(board, placed[0]!.artwork.box.y, fonts), ...windowWords(mat, job, board, fonts)];
  items.words.push(...edge);
  avoid.push(...edge.map((item): AvoidBox => ({ why: 'text', box: textBox(item, fonts) })));

  const drawing: Drawing = {
    title: `${job.title}, placement`,
    width: board.width + 2 * AROUND,
    height: board.height + 2 * AROUND,
    view: 'face',
    pens: PENS,
    groups: [
      { name: 'backing', label: 'Backing’s edge', shown: true, items: items.backing },
      { name: 'artwork', label: 'Artwork', shown: true, items: items.artwork },
      { name: 'sight', label: 'Sight', shown: true, items: items.sight },
      { name: 'hinges', label: 'Hinges', shown: true, items: items.hinges },
      { name: 'words', label: 'Sizes', shown: true, items: items.words },
    ],
  };
  const sheet: FullScale = {
    drawing,
    board,
    avoid,
    facts: [...facts, diagonalOf(board, 'backing, corner to corner', job)],
    legend: [
      { pen: 'artwork', text: 'edge of the artwork' },
      { pen: 'sight', text: 'what is seen through the mat' },
      { pen: 'hinge', text: 'hinge on the backing' },
      { pen: 'behind', text: 'hinge behind the artwork' },
    ],
    instructions: instructions(placed.map(({ artwork }) => artwork)),
    warnings: [],
  };
  const record = placed.map(({ opening, artwork, index }) => recordOf(opening, artwork, index, mat));
  return succeed({ sheet, record });
}

/** The outline of the innermost of all edges; of paths of one size the lowest. */
function sightPath({ layers, sight }: MatOpening): Path {
  const edges = layers.flatMap(({ face, back, faceBox, backBox }) => [
    { path: face, width: faceBox.width },
    { path: back, width: backBox.width },
  ]);
  const off = (each: { readonly width: number }): number => Math.abs(each.width - sight.width);
  return edges.reduce((best, each) => (off(each) <= off(best) + 1e-9 ? each : best)).path;
}

function recordOf({ name }: MatOpening, { box: art, floated }: Artwork, index: number, mat: Mat): PlacedArtwork {
  return {
    opening: index + 1,
    name,
    fromLeft: art.x,
    fromTop: art.y,
    fromRight: mat.backing.width - right(art),
    fromBottom: mat.backing.height - bottom(art),
    hinges: floated ? 'V' : 'T',
  };
}

function wordsOf(opening: MatOpening, artwork: Artwork, mat: Mat, job: Job, several: boolean): readonly string[] {
  const { fromLeft, fromTop } = recordOf(opening, artwork, 0, mat);
  const show = (mm: number): string => fraction(showNear(mm, job.units));
  const { overlap, floated } = artwork;
  const shows = { top: -overlap.top, right: -overlap.right, bottom: -overlap.bottom, left: -overlap.left };
  return [
    ...(several ? [opening.name] : []),
    `${show(fromLeft)} from the left edge`,
    `${show(fromTop)} from the top edge`,
    `artwork ${size(artwork.size, job.units)}`,
    floated ? `floated: ${sides(shows, job.units)} of backing shows` : `covered ${sides(overlap, job.units)}`,
    floated ? 'V-hinges behind its upper edge' : 'T-hinges at its upper edge, hidden by the mat',
  ];
}

/** Near the artwork's upper left corner, below the hinges, smaller where the artwork is small. */
function wordItems(lines: readonly string[], art: Box, fonts: Fonts) {
  const left = art.x + 12;
  const room = Math.max(8, art.width - 24);
  const high = Math.max(6, art.height - 34);
  const share = Math.min(1, high / ((lines.length + 1) * LEADING * LARGE.size));
  let y = art.y + Math.min(26, art.height / 3);
  return lines.map((text, i) => {
    const style = fitted(text, scaled(i < 2 ? LARGE : PLAIN, share), room, 0.1, fonts);
    y += i === 0 ? capHeight(style, fonts) : LEADING * style.size;
    return set(text, left, y, style);
  });
}

/** At both upper corners, where a sheet of a corner shows it too. */
function topWords(board: Box, above: number, fonts: Fonts): readonly TextItem[] {
  const style = scaled(BOLD, Math.min(2.2, Math.max(0.6, (above - 14) / 14)));
  // Below the words along a hinge at the top.
  const y = board.y + 10 + capHeight(style, fonts);
  const full = 'TOP, seen from the FACE';
  const room = board.width - 30;
  if (widthOf(full, style, fonts) + widthOf('TOP', style, fonts) + 10 > room) {
    return [set('TOP', board.x + board.width / 2, y, fitted('TOP', style, room, 0.1, fonts), 'middle')];
  }
  return [set(full, board.x + 15, y, style), set('TOP', right(board) - 15, y, style, 'end')];
}

/** Along the tape, read from the inside of the backing. */
function windowWords(mat: Mat, job: Job, board: Box, fonts: Fonts): readonly TextItem[] {
  const side = hingeSide(job, mat);
  const text = 'window and backing hinge along this edge';
  const long = side === 'left' || side === 'right' ? board.height : board.width;
  const style = fitted(text, TEXT, 0.6 * long, 0.3, fonts);
  const off = 4.2 + capHeight(style, fonts);
  const middle = point(board.x + board.width / 2, board.y + 0.6 * board.height);
  switch (side) {
    case 'left':
      return [{ ...set(text, board.x + off, middle.y, style, 'middle'), turn: 270 }];
    case 'right':
      return [{ ...set(text, right(board) - off, middle.y, style, 'middle'), turn: 90 }];
    case 'top':
      return [set(text, board.x + 0.4 * board.width, board.y + off - 0.4, style, 'middle')];
    case 'bottom':
      return [set(text, middle.x, bottom(board) - 4.2, style, 'middle')];
    default: {
      const never: never = side;
      return never;
    }
  }
}

/** The tape that joins window and backing, along the edge where they open like a book. */
function windowHinge(mat: Mat, job: Job, board: Box): readonly Item[] {
  const inset = 2.5;
  const along = (from: number, to: number): readonly [Point, Point] => {
    switch (hingeSide(job, mat)) {
      case 'left':
        return [
          point(board.x + inset, board.y + from * board.height),
          point(board.x + inset, board.y + to * board.height),
        ];
      case 'right':
        return [
          point(right(board) - inset, board.y + from * board.height),
          point(right(board) - inset, board.y + to * board.height),
        ];
      case 'top':
        return [
          point(board.x + from * board.width, board.y + inset),
          point(board.x + to * board.width, board.y + inset),
        ];
      case 'bottom':
        return [
          point(board.x + from * board.width, bottom(board) - inset),
          point(board.x + to * board.width, bottom(board) - inset),
        ];
    }
  };
  const [from, to] = along(0.06, 0.94);
  return [{ kind: 'line', pen: 'behind', from, to, id: 'window-hinge' }];
}

/** What must be seen of an artwork where only corners are printed. */
const cornersOf = (art: Box): readonly Box[] => {
  const [w, h] = [Math.min(CORNER, art.width / 2), Math.min(CORNER, art.height / 2)];
  return [
    box(art.x, art.y, w, h),
    box(right(art) - w, art.y, w, h),
    box(right(art) - w, bottom(art) - h, w, h),
    box(art.x, bottom(art) - h, w, h),
  ];
};

function diagonalOf(area: Box, label: string, job: Job): Fact {
  const [from, to] = [point(area.x, area.y), point(right(area), bottom(area))];
  const length = distance(from, to);
  return { label, from, to, length, shown: showNear(length, job.units) };
}

function instructions(art: readonly Artwork[]): readonly string[] {
  const [floats, covered] = [art.some(({ floated }) => floated), art.some(({ floated }) => !floated)];
  return [
    'Lay the sheet on the backing, face up, TOP at the top, its thin line on the backing’s edges.',
    'Prick lightly through the four corners of the artwork, and lift the sheet away. No mark where it will be seen.',
    'Lay the artwork to the pricks, clean hands or clean paper between; weight it.',
    ...(covered ? ['Two or more T-hinges at the upper edge, where they are drawn: the mat hides them.'] : []),
    ...(floats ? ['A float: V-hinges, folded, all behind the artwork.'] : []),
    'Close the window over it and look at all four sides before anything dries. Valuable or old works: ask a conservator first.',
  ];
}
