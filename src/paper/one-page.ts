import type { FullScale } from '../drawing/full-scale.ts';
import type { Drawing } from '../drawing/model.ts';
import { type Box, box, grown } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import { type FitPaper, LARGEST_PAPER, type RollPaper } from '../papers/model.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Result, succeed } from '../problems/problem.ts';
import { placesFrom } from '../text/places.ts';
import { Room } from '../text/room.ts';
import { showLength } from '../units/print.ts';
import { type Sheet, sheetOf } from './area.ts';
import { type CheckStyle, checkContent, holdsCheck } from './first-sheet/content.ts';
import { legendPens } from './first-sheet/page.ts';
import type { CheckFacts } from './first-sheet/words.ts';
import { CHECK_PENS } from './furniture/pens.ts';
import type { LaidPage } from './model.ts';
import type { LayoutOptions } from './options.ts';
import { type Orientation, turnBox } from './orientation.ts';
import { inTheWay } from './plan-pages.ts';
import { sheetPage } from './sheet-page.ts';

export interface OnePage {
  readonly page: LaidPage;
  readonly crowded: readonly string[];
  readonly summary: string;
}

const STYLE: CheckStyle = {
  title: 'Measure this first',
  intro: 'Print at 100 %: no scaling, no “fit to page”. Cut nothing before the lines below measure right.',
  scalePen: 'check',
};

/** Scale lines and tables stand on the pattern itself here, so they are dashed; ends of lines are ticks all the same. */
const DASHED = { colour: 0, dash: [1.2, 0.4], cap: 'butt' } as const;
const PENS: Drawing['pens'] = {
  ...CHECK_PENS,
  check: { width: 0.18, ...DASHED },
  frame: { width: 0.15, ...DASHED },
};

/** A narrower page than this holds no words. */
const NARROWEST = 126;
/** Widths that the words are tried in where they stand on blank paper within the drawing. */
const WIDTHS = [320, 250, 200, 160, NARROWEST];
/** Between the words and the drawing. */
const CLEAR = 8;
const STEP = 10;

/**
 * The whole drawing on one page: as wide as the roll and no longer than it must be, or as large as the drawing. The
 * scale lines and the words stand where the drawing is blank, or below it. Errors: `roll-too-narrow`, `page-too-large`.
 */
export function onePage(work: FullScale, paper: RollPaper | FitPaper, options: LayoutOptions): Result<OnePage> {
  const { drawing } = work;
  const path = [...(options.path ?? []), 'paper'];
  const show = (mm: number) => showLength(mm, options.units);
  const upright = { rotation: 0, width: drawing.width, height: drawing.height } as const;
  const wide =
    paper.kind === 'roll' ? sheetOf({ width: paper.width, height: paper.width }, options, false).area.width : undefined;
  const turns: readonly Orientation[] = wide === undefined ? [upright] : [upright, { ...upright, rotation: 90 }];
  const fitting = turns.filter((orientation) => turnedSize(orientation).width <= (wide ?? Number.POSITIVE_INFINITY));
  if (fitting.length === 0) {
    const needed = Math.min(drawing.width, drawing.height) + ((paper as RollPaper).width - wide!);
    return fail([
      error(
        'roll-too-narrow',
        path,
        `the roll is ${show((paper as RollPaper).width)} wide, and the drawing with its margins takes ${show(Math.ceil(needed))}`,
        'take a wider roll, or sheets that are joined',
      ),
    ]);
  }
  const orientation = fitting.reduce((a, b) => (turnedSize(b).height < turnedSize(a).height ? b : a));
  const size = turnedSize(orientation);
  const areaWidth = wide ?? Math.max(size.width, NARROWEST);
  const { words, lines } = inTheWay(drawing, orientation, options.fonts);
  const indent = (areaWidth - size.width) / 2;

  const facts = (sheet: Sheet): CheckFacts => ({
    work,
    options,
    paperName: paper.kind === 'roll' ? paper.name : 'a page of its own size',
    sheet,
    rotation: orientation.rotation,
    sheets: 1,
    skipped: 0,
    joining: [],
    onPattern: true,
  });
  const place = (sheet: Sheet): { readonly box: Box; readonly below: number } => {
    const whole = turnBox(box(0, 0, drawing.width, drawing.height), orientation);
    const room = new Room(words, lines);
    for (const width of WIDTHS) {
      if (width + 2 * CLEAR > size.width) continue;
      const height = heightFor(facts(sheet), width);
      const around: Size = { width: width + 2 * CLEAR, height: height + 2 * CLEAR };
      const clear = room.best(around, placesFrom('top left', around, whole, STEP), 0);
      if (clear !== undefined) return { box: grown(clear, -CLEAR), below: 0 };
    }
    const height = heightFor(facts(sheet), areaWidth);
    return { box: box(-indent, size.height + CLEAR, areaWidth, height), below: CLEAR + height };
  };

  const draft = sheetFor(areaWidth, size.height, paper, options);
  const { box: spot, below } = place(draft);
  const sheet = sheetFor(areaWidth, size.height + below, paper, options);
  const largest = Math.max(sheet.paper.width, sheet.paper.height);
  if (largest > LARGEST_PAPER) {
    return fail([
      error(
        'page-too-large',
        path,
        `one page would be ${show(Math.ceil(largest))} long; a page can be ${show(LARGEST_PAPER)} at most`,
        'print it on sheets that are joined',
      ),
    ]);
  }
  const { area } = sheet;
  const onPage = box(area.x + indent + spot.x, area.y + spot.y, spot.width, spot.height);
  const [items] = checkContent(facts(sheet), undefined, onPage, STYLE);
  const { page, crowded } = sheetPage({
    drawing,
    sheet,
    orientation,
    window: box(-indent, 0, area.width, area.height),
    joins: [],
    label: {
      name: 'A1',
      number: 1,
      of: 1,
      title: drawing.title,
      view: drawing.view,
      stamp: options.stamp,
      ...defined({ head: options.head, printer: options.printer }),
      fonts: options.fonts,
    },
    words,
    lines,
    note: { box: onPage, items: items!, pens: { ...PENS, ...legendPens(drawing) } },
  });
  const quarter = orientation.rotation === 0 ? '' : ', the pattern turned by a quarter';
  const on =
    paper.kind === 'roll'
      ? `${show(sheet.paper.height)} of ${paper.name}`
      : `${show(sheet.paper.width)} × ${show(sheet.paper.height)}`;
  return succeed({ page, crowded, summary: `one page of ${on}${quarter}` });
}

function turnedSize({ rotation, width, height }: Orientation): Size {
  return rotation % 180 === 0 ? { width, height } : { width: height, height: width };
}

/** The page that leaves an area of a size within its margins, corrected for the printer. */
function sheetFor(width: number, height: number, paper: RollPaper | FitPaper, options: LayoutOptions): Sheet {
  const { margin, scale } = sheetOf({ width: 1, height: 1 }, options, false);
  const outer = (before: number, inside: number, behind: number, k: number) =>
    (before * Math.max(1, k) + inside) / Math.min(1, k) + behind;
  const size = {
    width: paper.kind === 'roll' ? paper.width : outer(margin.left, width, margin.right, scale.x),
    height: outer(margin.top, height, margin.bottom, scale.y),
  };
  return sheetOf(size, options, false);
}

/** Room for the heading and scale lines of full length. */
const SCALE_HEIGHT = 160;

/** The least height, to a few millimetres, that holds all the words in a width. */
function heightFor(facts: CheckFacts, width: number): number {
  const fits = (height: number) => holdsCheck(facts, box(0, 0, width, height), STYLE);
  let [low, high] = [SCALE_HEIGHT, SCALE_HEIGHT];
  while (!fits(high) && high < LARGEST_PAPER) [low, high] = [high, high * 1.6];
  while (high - low > 4) {
    const middle = (low + high) / 2;
    if (fits(middle)) high = middle;
    else low = middle;
  }
  return high;
}
