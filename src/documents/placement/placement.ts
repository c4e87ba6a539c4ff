import { hingeBoxes, hingeSide } from '../../bench/hinges.ts';
import type { AvoidBox, Fact, FullScale } from '../../drawing/full-scale.ts';
import type { Item, Pen } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, grown, right, union } from '../../geometry/box.ts';
import { type Path, placedPath } from '../../geometry/path.ts';
import { type Point, plus, point } from '../../geometry/point.ts';
import { mirroredSide } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import type { Artwork, Mat, MatOpening } from '../../mat/model.ts';
import { error, fail, type Result, succeed } from '../../problems/problem.ts';
import { boxItem } from '../../text/figures.ts';
import type { GroupList } from '../full-scale/groups.ts';
import { type Around, hingeLabel, topLabel } from '../full-scale/note-labels.ts';
import { FullScaleSheet } from '../full-scale/sheet.ts';
import { diagonals } from '../full-scale/tape-checks.ts';
import { PENS as PATTERN_PENS, TRIM_INSET, tabbedTrim } from '../pattern/lines.ts';
import { artworkLabel, artworkWords, hingeNote, missing, topNote } from './words.ts';

/** Paper beyond the backing's edge, so that its line is drawn whole. */
const AROUND = 1;
/** What is drawn of a corner of the artwork where sheets are laid on by the backing's corners. */
const CORNER = 28;

const PENS: Readonly<Record<string, Pen>> = {
  backing: { width: 0.35, colour: 0, dash: [], cap: 'butt' },
  trim: PATTERN_PENS.trim!,
  artwork: { width: 0.6, colour: 0, dash: [], cap: 'butt' },
  sight: { width: 0.3, colour: 0, dash: [5, 1.5, 1, 1.5], cap: 'butt' },
  hinge: { width: 0.3, colour: 0, dash: [], cap: 'butt' },
  behind: { width: 0.3, colour: 0, dash: [1, 1], cap: 'butt' },
  // As on the pattern.
  window: PATTERN_PENS.hinge!,
};

const GROUPS: GroupList = [
  ['backing', 'Backing’s edge'],
  ['artwork', 'Artwork'],
  ['sight', 'Sight'],
  ['hinges', 'Hinges'],
  ['words', 'Sizes'],
];

/** Words keep off the backing's edge and the tape along it. */
const INSET = TRIM_INSET + 1;
/** How deep TOP may go below the artworks' upper edges. */
const DEPTH = 52;

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
  const sheet = new FullScaleSheet(grown(board, -INSET), GROUPS);
  sheet.add('backing', boxItem(board, undefined, 'backing'));
  // The paper hides what it is laid to: trimmed, with tabs whose ends lie flush with the backing's edge.
  const { trim, pointers } = tabbedTrim(board, TRIM_INSET);
  sheet.add('backing', ...trim, ...pointers);
  const facts: Fact[] = [];
  const said = placed.map(({ opening, artwork, index }) => {
    const art = { ...artwork.box, ...plus(artwork.box, by) };
    sheet.add('artwork', { ...boxItem(art, undefined, 'artwork'), id: `artwork-${index + 1}` });
    sheet.add('sight', {
      kind: 'path',
      pen: 'sight',
      paths: [placedPath(sightPath(opening), (p) => plus(p, by))],
      id: `sight-${index + 1}`,
    });
    const { behind, above } = hingeBoxes(art, artwork.floated);
    sheet.add('hinges', ...behind.map((each) => boxItem(each, undefined, 'behind')));
    sheet.add('hinges', ...above.map((each) => boxItem(each, undefined, 'hinge')));
    sheet.avoid.push(...cornersOf(art).map((corner): AvoidBox => ({ why: 'corner', box: grown(corner, 2) })));
    sheet.avoid.push(...above.map((each): AvoidBox => ({ why: 'tick', box: each })));
    facts.push(
      diagonals(`diagonals of ${placed.length === 1 ? 'the artwork' : opening.name}`, art, job.units, 'artwork'),
    );
    return {
      art,
      whole: union([art, ...behind, ...above]),
      words: artworkWords(recordOf(opening, artwork, index, mat), artwork, job, placed.length > 1),
    };
  });
  sheet.add('hinges', ...windowHinge(mat, job, board));
  const head = {
    title: `${job.title}, placement`,
    width: board.width + 2 * AROUND,
    height: board.height + 2 * AROUND,
    view: 'face',
    pens: PENS,
  } as const;
  const { paper } = sheet;
  const around: Around = { paper, cutBox: union(said.map(({ art }) => art)), depth: DEPTH };
  // On the face the hinge's side lies where its name says.
  const hinge = mirroredSide(hingeSide(job, mat));
  const { drawing, words, warnings } = sheet.withWords(head, missing, (view) => [
    ...said.map(({ words: of, art }) => {
      const others = said.flatMap((each) => (each.art === art ? [] : [each.art]));
      return artworkLabel(of, art, others, paper, view, fonts);
    }),
    topLabel(topNote(fonts), around, view),
    hingeLabel(hingeNote(fonts), hinge, around, view),
  ]);
  const work: FullScale = {
    drawing,
    words,
    board,
    avoid: sheet.avoid,
    parts: said.map(({ whole }) => whole),
    facts: [...facts, diagonals('diagonals of the backing', board, job.units, 'backing')],
    legend: [
      { pen: 'backing', text: 'edge of the backing' },
      { pen: 'trim', text: 'trim the paper here, but not at the tabs' },
      { pen: 'artwork', text: 'edge of the artwork' },
      { pen: 'sight', text: 'what is seen through the mat' },
      { pen: 'hinge', text: 'hinge on the backing' },
      { pen: 'behind', text: 'hinge behind the artwork' },
      { pen: 'window', text: 'window and backing hinge along this edge' },
    ],
    instructions: instructions(placed.map(({ artwork }) => artwork)),
    warnings: [],
  };
  const record = placed.map(({ opening, artwork, index }) => recordOf(opening, artwork, index, mat));
  return succeed({ sheet: work, record }, warnings);
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

/** The tape that joins window and backing, along the edge where they open like a book. */
function windowHinge(mat: Mat, job: Job, board: Box): readonly Item[] {
  const inset = TRIM_INSET + 2.5;
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
  return [{ kind: 'line', pen: 'window', from, to, id: 'window-hinge' }];
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

function instructions(art: readonly Artwork[]): readonly string[] {
  const [floats, covered] = [art.some(({ floated }) => floated), art.some(({ floated }) => !floated)];
  return [
    'Trim the paper along the short grey dashes, inside the backing’s edge, but leave the tabs. Lay it on the backing, face up, TOP at the top: the ends of the tabs flush with its edges, pointers on the edges.',
    'Prick lightly through the four corners of the artwork, and lift the sheet away. No mark where it will be seen.',
    'Lay the artwork to the pricks, clean hands or clean paper between; weight it.',
    ...(covered ? ['Two or more T-hinges at the upper edge, where they are drawn: the mat hides them.'] : []),
    ...(floats ? ['A float: V-hinges, folded, all behind the artwork.'] : []),
    'Close the window over it and look at all four sides before anything dries. Valuable or old works: ask a conservator first.',
  ];
}
