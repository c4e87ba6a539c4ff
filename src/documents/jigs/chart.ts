import type { Stroke } from '../../bench/model.ts';
import { strokes as makeStrokes } from '../../bench/strokes.ts';
import type { Size } from '../../geometry/point.ts';
import type { Side } from '../../geometry/sides.ts';
import { usualClearance } from '../../job/frame.ts';
import type { Job } from '../../job/job.ts';
import { readJob } from '../../job/read.ts';
import type { Mat } from '../../mat/model.ts';
import { solve } from '../../mat/solve.ts';
import { error, fail, succeed } from '../../problems/problem.ts';
import type { Board } from '../../shop/board.ts';
import { BOARD } from '../../shop/board.ts';
import type { Entry } from '../../text/entries.ts';
import { showLength, showNear, showSize } from '../../units/print.ts';
import { mmPer } from '../../units/units.ts';
import { type JigContext, type JigEntry, jigSheets } from './jig.ts';

interface Row {
  readonly art: Size;
  readonly frame: string;
  readonly mat: Mat;
  readonly strokes: readonly Stroke[];
}

/** Borders that a standard piece has, mm; what would be narrower or wider is no standard. Common practice, no source. */
const [NARROW, WIDE] = [35, 110];

export const WALL_CHART: JigEntry = {
  kind: 'chart',
  summary: 'the shop’s standard sizes with their borders and guide readings, to hang beside the cutter',
  needs: 'nothing',
  sideways: true,
  make(context) {
    const outers = outersOf(context);
    if (outers.length === 0) {
      const hint = 'list the outer sizes that the shop likes (sizes: [11 x 14, 16 x 20]) or its ready-made frames';
      return fail([error('jig-chart-empty', ['sizes'], "the shop's file names no sizes and no frames", hint)]);
    }
    const board = [...context.shop.boards.values()][0] ?? BOARD;
    const rows = outers.flatMap((outer) => rowsFor(context, board, outer));
    if (rows.length === 0) {
      const hint = 'add smaller sizes for the artworks that go into the larger ones';
      return fail([
        error('jig-chart-empty', ['sizes'], 'no size of the shop goes into another with a usual border', hint),
      ]);
    }
    const title = 'Standard sizes';
    const sheets = jigSheets(context, {
      kind: 'chart',
      title,
      entries: entries(context, board, rows),
      figure: (area) => ({ items: [], boxes: [area] }),
    });
    return succeed({ title, sheets });
  },
};

interface Outer extends Size {
  readonly frame: string;
}

/** Sizes of the shop and of its frames, from small to large; a frame's mat is smaller than it by the clearance. */
function outersOf({ shop, units }: JigContext): readonly Outer[] {
  const ofFrames = [...shop.frames.values()].flatMap((frame): Outer[] => {
    if (frame.nominal !== undefined) return [{ ...frame.nominal, frame: frame.name }];
    if (frame.inside === undefined) return [];
    const clearance = frame.clearance ?? usualClearance(units);
    return [{ width: frame.inside.width - clearance, height: frame.inside.height - clearance, frame: frame.name }];
  });
  const alike = (a: Size, b: Size) => Math.abs(a.width - b.width) < 0.01 && Math.abs(a.height - b.height) < 0.01;
  const plain = shop.sizes.filter((size) => !ofFrames.some((outer) => alike(outer, size)));
  return [...ofFrames, ...plain.map((size) => ({ ...size, frame: '' }))].sort(
    (a, b) => a.width * a.height - b.width * b.height,
  );
}

/** The artworks of the shop's own sizes that go into an outer size with a usual border. */
function rowsFor(context: JigContext, board: Board, outer: Outer): readonly Row[] {
  const arts = [...context.shop.sizes, ...[...context.shop.frames.values()].flatMap(({ nominal }) => nominal ?? [])];
  const different = arts.filter(
    (art, i) => !arts.slice(0, i).some((other) => other.width === art.width && other.height === art.height),
  );
  return different
    .filter((art) => {
      const sides = [(outer.width - art.width) / 2, (outer.height - art.height) / 2];
      return sides.every((side) => side >= NARROW && side <= WIDE);
    })
    .flatMap((art): Row[] => {
      const job = jobFor(context, board, outer, art);
      const solved = job === undefined ? undefined : solve(job);
      if (job === undefined || solved?.ok !== true) return [];
      return [{ art, frame: outer.frame, mat: solved.value, strokes: makeStrokes(solved.value, job).strokes }];
    });
}

function jobFor({ units, head, guide }: JigContext, board: Board, outer: Size, art: Size): Job | undefined {
  const mm = (size: Size) => `${size.width} mm x ${size.height} mm`;
  const overlap = units === 'in' ? mmPer('in') / 4 : 5;
  const text = JSON.stringify({
    units,
    mat: { outer: mm(outer), layers: [{ board: { thickness: `${board.thickness} mm` }, bevel: head.bevel }] },
    openings: [{ artwork: mm(art), overlap: `${overlap} mm` }],
  });
  const read = readJob({ text, file: 'chart.json' });
  if (!read.ok) return undefined;
  const { job } = read.value;
  return { ...job, bench: { ...job.bench, head, guide, graduation: guide.graduation } };
}

function entries({ units, head, guide }: JigContext, board: Board, rows: readonly Row[]): readonly Entry[] {
  const reading = ({ strokes }: Row, side: Side): string => {
    const stroke = strokes.find((each) => each.side === side)!;
    const byHand = stroke.rest?.to === 'straightedge';
    if (stroke.beyondGuide && !byHand) return 'past guide';
    const { text, sense } = stroke.rest?.setting ?? stroke.setting;
    return `${byHand ? 'straightedge ' : ''}${text}${sense === 'exact' ? '' : ` ${sense}`}`;
  };
  const table = (part: readonly Row[]): Entry => ({
    kind: 'table',
    head: ['mat', 'frame', 'artwork', 'opening', 'sides', 'top, bottom', 'guide, sides', 'guide, top, bottom'],
    rows: part.map((row) => {
      const { border } = row.mat;
      const face = row.mat.openings[0]!.layers[0]!.faceBox;
      return [
        showSize(row.mat.outer, units),
        row.frame === '' ? '–' : row.frame,
        showSize(row.art, units),
        showSize(face, units),
        showNear(border.left, units),
        border.top === border.bottom
          ? showNear(border.top, units)
          : `${showNear(border.top, units)}, ${showNear(border.bottom, units)}`,
        reading(row, 'left'),
        reading(row, 'top') === reading(row, 'bottom')
          ? reading(row, 'top')
          : `${reading(row, 'top')}, ${reading(row, 'bottom')}`,
      ];
    }),
    rowHeight: 10,
  });
  const overlap = units === 'in' ? mmPer('in') / 4 : 5;
  return [
    { kind: 'title', text: 'Standard sizes' },
    {
      kind: 'text',
      text: `One mat of ${board.name}, ${showLength(board.thickness, 'mm')}, bevel ${head.bevel}°; the artwork covered by ${showLength(overlap, units)} all round; the opening measured at its face.`,
    },
    ...Array.from({ length: Math.ceil(rows.length / 12) }, (_, i) => table(rows.slice(12 * i, 12 * i + 12))),
    {
      kind: 'text',
      text: `Guide readings are for this guide (a ${showLength(guide.a, 'mm')}, b ${guide.b}) and this board: another thickness, a new blade or a moved guide is another chart.`,
    },
  ];
}
