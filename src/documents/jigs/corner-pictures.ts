import type { Drawing, Item, Pen } from '../../drawing/model.ts';
import { box } from '../../geometry/box.ts';
import { type Path, polygon, type Segment } from '../../geometry/path.ts';
import { type Point, point } from '../../geometry/point.ts';
import { boxItem } from '../../text/figures.ts';

/** What one sees on a cut piece, what it comes from and what to change, with a picture of it. */
export interface CornerPicture {
  readonly id: string;
  readonly sees: string;
  readonly does: string;
  readonly drawing: Drawing;
}

/** Of every picture, mm. */
export const PICTURE = { width: 44, height: 32 } as const;

/** Black and greys that an office printer keeps apart: board white, what is seen through the opening, the slope between. */
const PENS: Readonly<Record<string, Pen>> = {
  cut: { width: 0.35, colour: 0, dash: [], cap: 'butt' },
  wrong: { width: 0.7, colour: 0, dash: [], cap: 'butt' },
  hidden: { width: 0.25, colour: 0, dash: [0.9, 0.7], cap: 'butt' },
  edge: { width: 0.15, colour: 0.4, dash: [], cap: 'butt' },
};
const THROUGH = 0.72;
const SLOPE = 0.93;

/** The face corner of the opening, its opening below and at the right. */
const CORNER = point(15, 12);
const BEVEL = 3;
const [END_X, END_Y] = [PICTURE.width - 0.3, PICTURE.height - 0.3];

const line = (pen: string, from: Point, to: Point): Item => ({ kind: 'line', pen, from, to });
const filled = (fill: number, points: readonly Point[]): Item => ({ kind: 'path', fill, paths: [polygon(points)] });
const open = (pen: string, start: Point, segments: readonly Segment[]): Item => ({
  kind: 'path',
  pen,
  paths: [{ start, segments, closed: false } satisfies Path],
});
const to = (x: number, y: number): Segment => ({ kind: 'line', to: point(x, y) });

/** An opening with a clean corner, seen from the face. */
function opening(x = CORNER.x, y = CORNER.y): readonly Item[] {
  return [
    filled(SLOPE, [point(x, y), point(END_X, y), point(END_X, END_Y), point(x, END_Y)]),
    filled(THROUGH, [
      point(x + BEVEL, y + BEVEL),
      point(END_X, y + BEVEL),
      point(END_X, END_Y),
      point(x + BEVEL, END_Y),
    ]),
    line('edge', point(x, y), point(x + BEVEL, y + BEVEL)),
  ];
}

const level = (from: number, pen = 'cut'): Item => line(pen, point(from, CORNER.y), point(END_X, CORNER.y));
const upright = (from: number, pen = 'cut'): Item => line(pen, point(CORNER.x, from), point(CORNER.x, END_Y));

/** Where the cuts stop short the fallout hangs: its corner is still board, torn where the two cuts end. */
function hanging(short: number): readonly Item[] {
  const inner = point(CORNER.x + BEVEL + 1.5, CORNER.y + BEVEL + 1.5);
  const [after, below] = [point(CORNER.x + short, CORNER.y), point(CORNER.x, CORNER.y + short)];
  return [
    filled(1, [CORNER, after, inner, below]),
    open('wrong', after, [to(inner.x + 0.8, inner.y - 0.6), to(inner.x, inner.y), to(below.x, below.y)]),
  ];
}

/** A board from its edge with the blade in it, and the slip sheet below. */
function section(depth: number): readonly Item[] {
  const [top, low, slip] = [9, 19, 23];
  const tip = point(22 + depth, low + depth - 0.2);
  return [
    boxItem(box(2, top, END_X - 4, low - top), 1, 'cut'),
    boxItem(box(2, low, END_X - 4, slip - low), SLOPE, 'cut'),
    // The blade leans as the bevel does.
    filled(0.45, [point(12, 2), point(16, 2), tip]),
    line('wrong', point(16, 2), tip),
  ];
}

const ragged: readonly Segment[] = Array.from({ length: 14 }, (_, i) =>
  to(CORNER.x + (i + 1) * 2, CORNER.y + (i % 2 === 0 ? -0.9 : 0.5)),
);

const DRAWN: readonly (Omit<CornerPicture, 'drawing'> & { readonly items: readonly Item[] })[] = [
  {
    id: 'clean',
    sees: 'Both cuts meet in the corner, nothing hangs',
    does: 'Leave everything as it is.',
    items: [...opening(), level(CORNER.x), upright(CORNER.y)],
  },
  {
    id: 'over',
    sees: 'A cut runs on past the corner',
    does: 'Move that mark back by as much: start later, or stop sooner.',
    items: [...opening(), level(CORNER.x - 8, 'wrong'), upright(CORNER.y)],
  },
  {
    id: 'short',
    sees: 'The corner hangs: a cut ends too soon',
    does: 'Never tear it out: free it from the back with a loose blade in the cut, leaning with the bevel. Then move that mark out by as much.',
    items: [...opening(), ...hanging(7), level(CORNER.x + 7), upright(CORNER.y + 7)],
  },
  {
    id: 'hook',
    sees: 'The cut begins with a hook',
    does: 'The head moved while the blade went in. Hold it down, pin in the mark where it has one; push the blade in slowly, then pull.',
    items: [
      ...opening(),
      upright(CORNER.y),
      level(CORNER.x + 9),
      open('wrong', point(CORNER.x - 1, CORNER.y - 3.4), [
        {
          kind: 'cubic',
          c1: point(CORNER.x + 2, CORNER.y - 2.8),
          c2: point(CORNER.x + 4, CORNER.y),
          to: point(CORNER.x + 9, CORNER.y),
        },
      ]),
    ],
  },
  {
    id: 'bow',
    sees: 'The edge is bowed',
    does: 'Press down, not sideways, and pull from the shoulder in one movement. The board lies flat and firm against the guide.',
    items: [
      ...opening(),
      upright(CORNER.y),
      open('wrong', CORNER, [
        {
          kind: 'cubic',
          c1: point(CORNER.x + 9, CORNER.y - 4),
          c2: point(END_X - 9, CORNER.y - 4),
          to: point(END_X, CORNER.y),
        },
      ]),
    ],
  },
  {
    id: 'ragged',
    sees: 'The slope is ragged or torn',
    does: 'A new blade. If it stays, the slip sheet is soft or used: a fresh piece of board under every cut.',
    items: [...opening(), upright(CORNER.y), open('wrong', CORNER, ragged)],
  },
  {
    id: 'shallow',
    sees: 'The blade ends in the board: the fallout hangs along the side',
    does: 'Set the blade a little deeper, a quarter of a turn at most, and cut a test line.',
    items: section(-4),
  },
  {
    id: 'deep',
    sees: 'The slip sheet is cut deep, corners are gouged',
    does: 'Set the blade less deep, until it only scratches the slip sheet: a deep blade bends.',
    items: section(3.6),
  },
  {
    id: 'crooked',
    sees: 'The border is wider at one end',
    does: 'The board did not lie against the guide: sweep off chips, trim the edge straight, then look at the guide itself.',
    items: [
      ...opening(),
      upright(CORNER.y),
      line('wrong', point(CORNER.x, CORNER.y), point(END_X, CORNER.y - 4)),
      line('hidden', CORNER, point(END_X, CORNER.y)),
      line('cut', point(0.4, 1), point(END_X, 1)),
    ],
  },
  {
    id: 'reversed',
    sees: 'The slope is gone: it leans the other way',
    does: 'The opening lay on the wrong hand. Turn the board so that the border lies under the bar or at the guide, and cut as the arrow points.',
    items: [
      filled(THROUGH, [CORNER, point(END_X, CORNER.y), point(END_X, END_Y), point(CORNER.x, END_Y)]),
      level(CORNER.x, 'wrong'),
      upright(CORNER.y),
      line('hidden', point(CORNER.x - BEVEL, CORNER.y - BEVEL), point(END_X, CORNER.y - BEVEL)),
    ],
  },
];

/** What one sees and what to do, the usual first: common practice, no source. */
export const CORNER_PICTURES: readonly CornerPicture[] = DRAWN.map(({ id, sees, does, items }) => ({
  id,
  sees,
  does,
  drawing: {
    title: sees,
    ...PICTURE,
    view: 'face',
    pens: PENS,
    groups: [
      {
        name: 'picture',
        label: sees,
        shown: true,
        items: [boxItem(box(0.08, 0.08, PICTURE.width - 0.16, PICTURE.height - 0.16), 1, 'edge'), ...items],
      },
    ],
  },
}));
