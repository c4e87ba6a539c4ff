import type { Stroke } from '../../bench/model.ts';
import { strokes as makeStrokes } from '../../bench/strokes.ts';
import type { Item } from '../../drawing/model.ts';
import { type Box, bottom, box, right } from '../../geometry/box.ts';
import { clipLine, type Line } from '../../geometry/clip.ts';
import { polygon } from '../../geometry/path.ts';
import { minus, type Point, plus, point, times, unit } from '../../geometry/point.ts';
import { readJob } from '../../job/read.ts';
import { solve } from '../../mat/solve.ts';
import { fail, type Result, succeed } from '../../problems/problem.ts';
import { BOARD_THICKNESS } from '../../shop/board.ts';
import type { Entry } from '../../text/entries.ts';
import { BOLD, SIGN, TEXT } from '../../text/styles.ts';
import { showLength, showSize } from '../../units/print.ts';
import { type LengthUnit, mmFromInches } from '../../units/units.ts';
import { BLADE_CAUTION } from '../ticket/materials.ts';
import {
  columns,
  contentArea,
  type Jig,
  type JigContext,
  type JigEntry,
  jigSheets,
  line,
  sheet,
  tooSmall,
} from './jig.ts';
import { pictureSheets } from './practice-pictures.ts';
import { steps, words } from './words.ts';

const KIND = 'practice';
const TITLE = 'Practice sheet';

/** From the innermost opening outwards: rings of at least an inch, and two around the last, which is left as a border. */
interface Rings {
  readonly borders: readonly number[];
  readonly offcut: { readonly width: number; readonly height: number };
  readonly ring: number;
}

function ringsIn(units: LengthUnit): Rings {
  if (units === 'in') {
    const inch = mmFromInches(1);
    return {
      borders: [5, 4, 3, 2].map((of) => of * inch),
      offcut: { width: 12 * inch, height: 16 * inch },
      ring: inch,
    };
  }
  return { borders: [145, 115, 85, 55], offcut: { width: 350, height: 400 }, ring: 30 };
}

/** Beyond the board's edge on the sheet, and inside of the innermost corner. */
const BEYOND = 6;
const INSIDE = 26;
/** Ticks stop so far short of the next ring's line. */
const SHORT = 4;

export const PRACTICE: JigEntry = {
  kind: KIND,
  summary: 'four openings one around the other on an offcut, for a first day: marks, and what to look for',
  needs: 'nothing',
  make(context) {
    const rings = ringsIn(context.units);
    const area = contentArea(context);
    const deep = BEYOND + rings.borders[0]! + INSIDE;
    if (area.width < deep || area.height < deep + CAPTION)
      return tooSmall(context, KIND, { width: deep, height: deep + CAPTION });
    const cut = rings.borders.map((border) => strokesOf(context, rings, border));
    const problems = cut.flatMap((each) => (each.ok ? [] : each.problems));
    if (problems.length > 0) return fail(problems);
    const made = cut.flatMap((each) => (each.ok ? [each.value] : []));
    return succeed({
      title: TITLE,
      sheets: [
        ...firstSheets(context, rings, made),
        cornerSheet(context, rings, made),
        ...pictureSheets(context, KIND, TITLE),
      ],
    } satisfies Jig);
  },
};

/** The strokes of one opening by the same arithmetic as of any mat, in the back view of the offcut. */
function strokesOf({ units, head, guide }: JigContext, { offcut }: Rings, border: number): Result<readonly Stroke[]> {
  const mm = (length: number): string => `${length} mm`;
  const text = JSON.stringify({
    units,
    mat: {
      outer: `${mm(offcut.width)} x ${mm(offcut.height)}`,
      border: mm(border),
      layers: [{ board: { thickness: mm(BOARD_THICKNESS), name: 'offcut' }, bevel: head.bevel }],
    },
    openings: [{}],
  });
  const read = readJob({ text, file: 'practice.json' });
  if (!read.ok) return read;
  const bench = { ...read.value.job.bench, head, guide, graduation: guide.graduation, snap: false };
  const job = { ...read.value.job, bench };
  const solved = solve(job);
  return solved.ok ? succeed(makeStrokes(solved.value, job).strokes) : solved;
}

const settingOf = (strokes: readonly Stroke[]): string => {
  const { rest, setting } = strokes[0]!;
  return rest === undefined ? setting.text : `guide off, ${rest.setting.text} to the ${rest.to}`;
};

function firstSheets(
  context: JigContext,
  rings: Rings,
  cut: readonly (readonly Stroke[])[],
): readonly ReturnType<typeof sheet>[] {
  const { units, head } = context;
  const size = showSize(rings.offcut, units);
  const ring = showLength(rings.ring, units);
  const entries: readonly Entry[] = [
    { kind: 'title', text: TITLE },
    {
      kind: 'text',
      text: `Four openings one around the other on one offcut, from the inside out: sixteen strokes to learn by. Each ring of ${ring} drops out as the next is cut; the last border, of ${showLength(rings.borders.at(-1)!, units)}, stays.`,
    },
    { kind: 'heading', text: 'Before you begin' },
    ...steps([
      `An offcut of ${size} or larger, its edges straight and square. As many slip sheets of board as there are openings: a fresh one each time.`,
      `A new blade, set to go through one board and just scratch the slip sheet. Head ${head.id}${head.calibrated ? '' : ', not yet calibrated: that is as it should be'}.`,
      'Lay the next sheet on the BACK of the offcut, its corner on the corner of the board and its two dashed lines on the edges. Prick through the corners of the solid lines and through the ticks where they cross them; pencil in S, E and the number. Do it at all four corners, a quarter turn further each time.',
    ]),
    { kind: 'heading', text: 'One stroke' },
    ...steps([
      'The board against guide and squaring edge, tucked into their corner, so that it cannot shift.',
      'Scribe on S. The holding pin down, where the head has one. Blade in, without moving the head.',
      'Pull in one movement until the scribe is on E. Blade out, pin up, turn the board.',
      'All four sides of one number. Lift the ring or the piece out without force; look at it from the FACE, corner by corner, with the last sheet beside you.',
    ]),
    { kind: 'heading', text: 'The four openings: change one thing at a time' },
    {
      kind: 'table',
      head: ['', 'guide', 'what is new', 'look for'],
      widths: [0.5, 1.5, 4, 4],
      rowHeight: 0,
      rows: PURPOSES.map(({ change, look }, i) => [`${i + 1}`, settingOf(cut[i]!), change, look]),
    },
    { kind: 'heading', text: 'Write down: + past the corner, − short of it' },
    {
      kind: 'table',
      head: ['', 'side 1, S', 'E', 'side 2, S', 'E', 'side 3, S', 'E', 'side 4, S', 'E'],
      widths: [0.7, 1.3, 1, 1.3, 1, 1.3, 1, 1.3, 1],
      rows: PURPOSES.map((_, i) => [`${i + 1}`, '', '', '', '', '', '', '', '']),
    },
    {
      kind: 'text',
      text: 'What comes out alike at all four starts, or at all four ends, is the head’s own and is measured by the head jig. What differs from side to side is the hand’s: cut another offcut.',
    },
    { kind: 'text', text: BLADE_CAUTION, bold: true },
  ];
  return jigSheets(context, {
    kind: KIND,
    title: TITLE,
    entries,
    figure: (area) => ({ items: [], boxes: columns(area, area.width > 330 ? 2 : 1) }),
  });
}

/** One change at a time, so that each difference has one reason: common practice, no source. */
const PURPOSES: readonly { readonly change: string; readonly look: string }[] = [
  {
    change: 'Nothing: blade, depth and marks as they are.',
    look: 'Does the piece drop out by itself? Is the slip sheet scratched, not cut?',
  },
  {
    change: 'The depth alone, where the first asked for it; else nothing.',
    look: 'Clean slopes along all four sides, no hook where the blade went in.',
  },
  {
    change: 'The marks alone: starts and ends moved by what the table says.',
    look: 'All eight ends: past the corner, short of it, or in it.',
  },
  {
    change: 'Nothing: the same again, to see that it stays.',
    look: 'The same four corners as before, and borders alike all round.',
  },
];

const CAPTION = 16;

/** One corner at full scale: with borders alike all round it fits all four, turned. */
function cornerSheet(context: JigContext, rings: Rings, cut: readonly (readonly Stroke[])[]): ReturnType<typeof sheet> {
  const area = contentArea(context);
  const corner = point(area.x + BEYOND, area.y + BEYOND + CAPTION);
  const deep = Math.min(rings.borders[0]! + INSIDE, right(area) - corner.x, bottom(area) - corner.y);
  const shown = box(corner.x, corner.y, deep, deep);
  const items: Item[] = [
    words('BACK, this side up', point(area.x, area.y + 5), SIGN),
    words(
      'This corner on the corner of the board, the dashed lines on its edges; a quarter turn for each corner. Cut from S to E, as the arrows point.',
      point(area.x, area.y + 11),
      TEXT,
    ),
    line('hidden', corner, point(right(shown), corner.y), 'edge-upper'),
    line('hidden', corner, point(corner.x, bottom(shown)), 'edge-left'),
  ];
  cut.forEach((strokes, i) => {
    items.push(...ringItems(strokes, i, corner, shown, rings));
  });
  return sheet(context, KIND, TITLE, context.paper, items);
}

/** The lines to cut of one opening in the corner, with its two ticks and its number. */
function ringItems(
  strokes: readonly Stroke[],
  index: number,
  corner: Point,
  shown: Box,
  { ring }: Rings,
): readonly Item[] {
  const at = (p: Point): Point => plus(corner, p);
  const inView = (p: Point): boolean => p.x < right(shown) && p.y < bottom(shown);
  const reach = ring / 2 - SHORT / 2;
  const items: Item[] = [];
  for (const { line: cutLine, start, stop, direction, order } of strokes) {
    const clipped = clipLine({ from: at(cutLine.from), to: at(cutLine.to) }, shown);
    if (clipped === undefined) continue;
    items.push(line('line', clipped.from, clipped.to, `cut-${index + 1}-${order}`));
    items.push(arrow(clipped, direction));
    const across = { x: -direction.y, y: direction.x };
    for (const [letter, mark] of [
      ['S', at(start)],
      ['E', at(stop)],
    ] as const) {
      if (!inView(mark)) continue;
      const [from, to] = [plus(mark, times(across, -reach)), plus(mark, times(across, reach))];
      items.push(line('snip', from, to, `${letter === 'S' ? 'start' : 'stop'}-${index + 1}`));
      // On the border side of the line, beyond the end of its tick.
      const out = from.x + from.y < to.x + to.y ? from : to;
      const way = direction.x === 0 ? point(-1, 0) : point(0, -1);
      const foot = plus(out, times(way, way.x === 0 ? 0.8 : 1.4));
      items.push(
        words(
          `${letter}${index + 1}`,
          point(foot.x, foot.y + (way.x === 0 ? 0 : 1)),
          BOLD,
          way.x === 0 ? 'middle' : 'end',
        ),
      );
    }
  }
  return items;
}

/** On the line, a little off the corner: the way of the travel. */
function arrow({ from, to }: Line, direction: Point): Item {
  // Of the two ends the one in the corner is nearer to the board's own.
  const near = from.x + from.y < to.x + to.y ? from : to;
  const away = near === from ? minus(to, from) : minus(from, to);
  const middle = plus(near, times(unit(away), ARROW.off));
  const tip = plus(middle, times(direction, ARROW.long / 2));
  const foot = plus(middle, times(direction, -ARROW.long / 2));
  const side = times({ x: -direction.y, y: direction.x }, ARROW.half);
  return { kind: 'path', fill: 0, paths: [polygon([tip, plus(foot, side), minus(foot, side)])] };
}

const ARROW = { off: 21, long: 4.5, half: 1.3 };
