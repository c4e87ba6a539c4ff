import type { FullScale, SheetArea } from '../drawing/full-scale.ts';
import type { Drawing } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, box } from '../geometry/box.ts';
import { defined } from '../problems/defined.ts';
import type { Problem } from '../problems/problem.ts';
import { Room } from '../text/room.ts';
import type { MapSheet } from './furniture/assembly-map.ts';
import { crossesOf } from './furniture/crosses.ts';
import { crossBox, type Edge, type Join } from './furniture/seam-marks.ts';
import type { LayoutOptions } from './options.ts';
import { type Orientation, turnBox, turnedBack } from './orientation.ts';
import { type Cell, cellAt, lapX, lapY, nameOf, type Plan, windowOf } from './plan.ts';
import { seamsOf } from './seams.ts';
import { coveringOf } from './search/covering.ts';
import { keptArea, type MadeSheet, sheetPage } from './sheet-page.ts';

/** Everything of a drawing, the parts that are left out unless asked for too, as boxes in turned space. */
export function inTheWay(
  drawing: Drawing,
  orientation: Orientation,
  fonts: Fonts,
): { readonly words: readonly Box[]; readonly lines: readonly Box[] } {
  const { words, lines } = coveringOf(drawing, fonts);
  return { words: words.map((b) => turnBox(b, orientation)), lines: lines.map((b) => turnBox(b, orientation)) };
}

/** How the sheets of one plan are called and counted among all. */
export interface Naming {
  /** Before the name of every sheet: `C1-`; a plan of one sheet is called `alone`, where that is given. */
  readonly prefix?: string;
  readonly alone?: string;
  /** Where on the board the plan lies, in words. */
  readonly place?: string;
  /** They lie on a corner of the board by themselves. */
  readonly corner?: boolean;
  /** The number of its first sheet among all the sheets. */
  readonly sheet: number;
  readonly of: number;
}

export interface MadeSheets {
  readonly sheets: readonly MadeSheet[];
  /** Words of the drawing that found no room on them. */
  readonly warnings: readonly Problem[];
}

/** The sheets of a plan as pages, row by row. */
export function planPages(
  { drawing, words: apart }: FullScale,
  plan: Plan,
  options: LayoutOptions,
  naming: Naming,
): MadeSheets {
  const { orientation } = plan;
  const joins = joinsOf(drawing, plan, naming, options.fonts);
  const areas = plan.cells.map((cell) => sheetArea(plan, cell, joins.get(cell)!, options.fonts));
  const set = naming.corner === true ? apart?.onCorner(areas) : apart?.joined(areas);
  const shown = apart?.lines ?? drawing;
  const { words, lines } = inTheWay(shown, orientation, options.fonts);
  const sheets = plan.cells.map((cell, i) => {
    const ownWords = set?.sheets[i];
    return sheetPage({
      drawing: shown,
      ...defined({ ownWords }),
      sheet: plan.sheet,
      orientation,
      window: windowOf(plan, cell),
      joins: joins.get(cell)!,
      label: {
        name: callsign(cell, plan, naming),
        number: naming.sheet + i,
        of: naming.of,
        title: drawing.title,
        view: drawing.view,
        ...defined({ place: naming.place }),
        stamp: options.stamp,
        ...defined({ head: options.head, printer: options.printer }),
        fonts: options.fonts,
      },
      words,
      lines,
    });
  });
  return { sheets, warnings: set?.warnings ?? [] };
}

/** The seams of every sheet, with crosses that both of two neighbours draw; turned space. */
function joinsOf(drawing: Drawing, plan: Plan, naming: Naming, fonts: Fonts): ReadonlyMap<Cell, readonly Join[]> {
  const { words, lines } = inTheWay(drawing, plan.orientation, fonts);
  const room = new Room(words, lines);
  const whole = turnBox(box(0, 0, drawing.width, drawing.height), plan.orientation);
  const joins = new Map<Cell, Join[]>(plan.cells.map((cell) => [cell, []]));
  const called = (cell: Cell): string => callsign(cell, plan, naming);
  const join = (cell: Cell, edge: Edge, at: number, neighbour: Cell, crosses: Join['crosses']) =>
    joins.get(cell)!.push({ edge, at, neighbour: called(neighbour), crosses });
  for (const seam of seamsOf(plan)) {
    const crosses = crossesOf(seam, `${called(seam.first)}|${called(seam.second)}`, plan, whole, room, fonts);
    const [before, behind] = seam.kind === 'beside' ? (['right', 'left'] as const) : (['bottom', 'top'] as const);
    join(seam.first, before, seam.at, seam.second, crosses);
    join(seam.second, behind, seam.at, seam.first, crosses);
  }
  return joins;
}

/** What of the drawing words may stand on, on one sheet. */
function sheetArea(plan: Plan, cell: Cell, joins: readonly Join[], fonts: Fonts): SheetArea {
  const back = turnedBack(plan.orientation);
  return {
    kept: turnBox(keptArea(windowOf(plan, cell), joins), back),
    taken: joins.flatMap(({ edge, crosses }) =>
      crosses.map(({ name, at }) => turnBox(crossBox(name, at, edge, fonts), back)),
    ),
  };
}

function callsign(cell: Cell, plan: Plan, { prefix = '', alone }: Pick<Naming, 'prefix' | 'alone'>): string {
  return alone !== undefined && plan.cells.length === 1 ? alone : `${prefix}${nameOf(cell)}`;
}

/** Every sheet of the grid as far as its join lines, and to its own edges where it has no neighbour. */
export function mapSheets(plan: Plan, naming: Pick<Naming, 'prefix' | 'alone'> = {}): readonly MapSheet[] {
  const sheets: MapSheet[] = [];
  for (let row = 0; row < plan.rows; row++) {
    for (let column = 0; column < plan.columns; column++) {
      const cell = { row, column };
      const window = windowOf(plan, cell);
      const [halfX, halfY] = [lapX(plan) / 2, lapY(plan) / 2];
      const [left, top] = [column === 0 ? 0 : halfX, row === 0 ? 0 : halfY];
      const width = window.width - left - (column === plan.columns - 1 ? 0 : halfX);
      const height = window.height - top - (row === plan.rows - 1 ? 0 : halfY);
      const skipped = cellAt(plan, row, column) === undefined;
      sheets.push({
        name: callsign(cell, plan, naming),
        box: box(window.x + left, window.y + top, width, height),
        skipped,
      });
    }
  }
  return sheets;
}
