import { mirror } from '../../bench/outline.ts';
import type { Item } from '../../drawing/model.ts';
import { type Box, bottom, box, centre, contains, grown, right } from '../../geometry/box.ts';
import { piecesOf, pointAt } from '../../geometry/curves.ts';
import { parallelOf } from '../../geometry/parallel.ts';
import { curvedParts, type Path, placedPath } from '../../geometry/path.ts';
import { distance, type Point, point } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { setback } from '../../mat/bevel.ts';
import type { Mat, MatOpening } from '../../mat/model.ts';
import { offEllipse, pinsAndLoop } from '../../shapes/by-hand.ts';
import { printDecimal, showNear } from '../../units/print.ts';
import { line } from './lines.ts';

/** The line to follow along the curves of one opening, and what a hand needs to draw it. */
export interface Curved {
  readonly opening: number;
  readonly parts: readonly Path[];
  readonly box: Box;
  /** Crosses and axes. */
  readonly items: readonly Item[];
  /** What is said beside it, and about which point. */
  readonly words: readonly { readonly lines: readonly string[]; readonly at: Point }[];
}

/** The whole line to follow on the back in one layer, in the back view, moved by `by`; paper that stays on lifts it. */
function backLine(mat: Mat, job: Job, opening: MatOpening, layer: number, by: number): Path {
  const { face, back } = opening.layers[layer]!;
  const { board, bevel } = mat.layers[layer]!;
  const lift = job.print.transfer === 'cut-through' ? job.print.paperThickness : 0;
  const aside = setback(board.thickness + lift, bevel);
  const lifted = lift === 0 ? back : parallelOf(face, bevel.reverse ? aside : -aside);
  const path = lifted === 'nothing' || lifted === 'parts' ? back : lifted;
  return placedPath(mirror(path, mat.outer.width), (p) => ({ x: p.x + by, y: p.y + by }));
}

/** Every opening that has a curve, in one layer. */
export function curves(mat: Mat, job: Job, layer: number, by: number): readonly Curved[] {
  return mat.openings.flatMap((opening, index): Curved[] => {
    if (opening.layers[layer]!.face.segments.every((segment) => segment.kind === 'line')) return [];
    const path = backLine(mat, job, opening, layer, by);
    const parts = curvedParts(path).filter((part) => part.segments.some((segment) => segment.kind !== 'line'));
    const { backBox } = opening.layers[layer]!;
    const around = box(mat.outer.width - right(backBox) + by, backBox.y + by, backBox.width, backBox.height);
    if (parts.length === 0) return [];
    const tag = String(index + 1);
    const made =
      opening.shape === 'oval'
        ? ovalByHand(path, around, job, tag)
        : arcsByHand(path, box(by, by, mat.outer.width, mat.outer.height), job, tag);
    const head = mat.openings.length === 1 ? '' : `${opening.name}: `;
    const words = made.words.length === 0 ? [{ lines: [], at: centre(around) }] : made.words;
    return [
      {
        opening: index + 1,
        parts,
        box: around,
        items: made.items,
        words: words.map((each, i) => ({
          ...each,
          lines: i === 0 ? [`${head}curves by template or machine`, ...each.lines] : each.lines,
        })),
      },
    ];
  });
}

type ByHand = Pick<Curved, 'items' | 'words'>;

const CROSS = 4;
const AXIS_TICK = 12;

const cross = (p: Point, id: string): readonly Item[] => [
  line('centre', point(p.x - CROSS, p.y), point(p.x + CROSS, p.y), `${id}-level`),
  line('centre', point(p.x, p.y - CROSS), point(p.x, p.y + CROSS), `${id}-upright`),
];

/** Axes, centre and pins of the line that is drawn, with the loop that goes round them. */
function ovalByHand(path: Path, around: Box, job: Job, tag: string): ByHand {
  const middle = centre(around);
  const { pin, loop, along } = pinsAndLoop(around.width, around.height);
  const show = (mm: number): string => showNear(mm, job.units);
  const inwards = Math.min(AXIS_TICK, around.width / 6, around.height / 6);
  const ends: readonly (readonly [Point, Point])[] = [
    [point(middle.x, around.y), point(0, 1)],
    [point(right(around), middle.y), point(-1, 0)],
    [point(middle.x, bottom(around)), point(0, -1)],
    [point(around.x, middle.y), point(1, 0)],
  ];
  const axes = ends.map(([end, way], i) =>
    line(
      'centre',
      point(end.x + way.x, end.y + way.y),
      point(end.x + way.x * inwards, end.y + way.y * inwards),
      `axis-${tag}-${i + 1}`,
    ),
  );
  const pins = [-1, 1].map((sign) =>
    along === 'x' ? point(middle.x + sign * pin, middle.y) : point(middle.x, middle.y + sign * pin),
  );
  const off = offEllipse(path, around);
  // Rounded up: what is said is never less than it is.
  const near =
    off < 0.005 ? 'on the line' : `within ${printDecimal(Math.ceil(100 * off) / 100, 'mm', 2).text} mm of the line`;
  return {
    items: [
      ...axes,
      ...cross(middle, `centre-${tag}`),
      ...(pin > 1 ? pins.flatMap((each, i) => cross(each, `pin-${tag}-${i + 1}`)) : []),
    ],
    words: [
      {
        at: middle,
        lines: [
          `axes ${show(around.width)} × ${show(around.height)}`,
          `pins ${show(pin)} either side of the centre`,
          `loop ${show(loop)}: ${near}`,
        ],
      },
    ],
  };
}

/** A centre nearer to the board's edge than this, or beyond it, is not drawn. */
const CENTRE_FROM_EDGE = 10;

/** Centre and radius of every arc; arcs alike in radius are told of once. */
function arcsByHand(path: Path, board: Box, job: Job, tag: string): ByHand {
  const arcs = piecesOf(path).flatMap((piece) => {
    const { from, segment } = piece;
    if (segment.kind !== 'arc') return [];
    return [{ centre: segment.centre, radius: distance(from, segment.centre), middle: pointAt(piece, 0.5) }];
  });
  const centres = arcs.filter((arc, i) => arcs.findIndex((other) => distance(arc.centre, other.centre) < 1e-6) === i);
  const told = centres.filter(
    (arc, i) => centres.findIndex((other) => Math.abs(arc.radius - other.radius) < 1e-6) === i,
  );
  const drawn = (p: Point): boolean => contains(grown(board, -CENTRE_FROM_EDGE), box(p.x, p.y, 0, 0));
  const radius = (mm: number): string => `radius ${showNear(mm, job.units)}`;
  return {
    items: centres.flatMap((arc, i) => (drawn(arc.centre) ? cross(arc.centre, `centre-${tag}-${i + 1}`) : [])),
    words: told.map((arc) =>
      drawn(arc.centre)
        ? { at: arc.centre, lines: [radius(arc.radius)] }
        : { at: arc.middle, lines: [radius(arc.radius), `its centre: ${fromCorner(arc.centre, board, job)}`] },
    ),
  };
}

/** Where a point off the drawing lies, from the board's upper left corner as it is drawn. */
function fromCorner(p: Point, board: Box, job: Job): string {
  const show = (mm: number): string => showNear(Math.abs(mm), job.units);
  const [across, down] = [p.x - board.x, p.y - board.y];
  const level = `${show(across)} ${across < 0 ? 'left' : 'right'}`;
  return `${level} and ${show(down)} ${down < 0 ? 'above' : 'below'} the upper left corner`;
}
