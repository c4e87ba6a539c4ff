import type { Drawing, Item } from '../../drawing/model.ts';
import { type Box, bottom, box } from '../../geometry/box.ts';
import { type Point, point, type Size } from '../../geometry/point.ts';
import { type Result, succeed } from '../../problems/problem.ts';
import { moved } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import { columns, contentArea, JIG_PENS, type Jig, type JigContext, jigSheets, sheet, tooSmall } from './jig.ts';

/** Something to print on card and cut out, or to cut with a machine. Its top left is at 0 0. */
export interface Gauge extends Size {
  /** Outlines. */
  readonly cut: readonly Item[];
  /** Lines and numbers. */
  readonly marks: readonly Item[];
}

/** Between words and gauge. */
const GAP = 7;
/** Words in less height than this are too few to bother. */
const LEAST_WORDS = 75;
/** Stock around what a machine cuts. */
const MARGIN = 5;

/**
 * A gauge with its words: above it, beside it, or on a sheet before it, whichever the paper has room for. Without words of
 * its own it is not made.
 */
export function gaugeJig(
  context: JigContext,
  plan: { readonly kind: string; readonly title: string; readonly gauge: Gauge; readonly entries: readonly Entry[] },
): Result<Jig> {
  const { kind, title, gauge, entries } = plan;
  const area = contentArea(context);
  if (gauge.width > area.width || gauge.height > area.height) return tooSmall(context, kind, gauge);
  const above = area.height - gauge.height - GAP;
  const items = (at: { x: number; y: number }): readonly Item[] => moved([...gauge.marks, ...gauge.cut], at.x, at.y);
  const low = { x: area.x + (area.width - gauge.width) / 2, y: bottom(area) - gauge.height };
  const text: Box = box(area.x, area.y, area.width, above);
  const together = above >= LEAST_WORDS;
  const sheets = jigSheets(context, {
    kind,
    title,
    entries,
    figure: () => ({ items: together ? items(low) : [], boxes: textBoxes(together ? text : area) }),
  });
  const alone = together ? [] : [sheet(context, kind, title, context.paper, items({ x: low.x, y: area.y }))];
  return succeed({ title, sheets: [...sheets, ...alone], cut: cutDrawing(title, gauge) });
}

const textBoxes = (text: Box): readonly Box[] => (text.height < 110 && text.width > 150 ? columns(text, 2) : [text]);

/** Outlines and marks in groups of their own, nothing else. */
function cutDrawing(title: string, gauge: Gauge): Drawing {
  const within = (items: readonly Item[]) => moved(items, MARGIN, MARGIN);
  return {
    title,
    width: gauge.width + 2 * MARGIN,
    height: gauge.height + 2 * MARGIN,
    view: 'sheet',
    pens: JIG_PENS,
    groups: [
      { name: 'engrave', label: 'To draw', shown: true, items: within(gauge.marks) },
      { name: 'cut', label: 'To cut', shown: true, items: within(gauge.cut) },
    ],
  };
}

/** A round hole. */
export function hole(pen: string, centre: Point, radius: number, id: string): Item {
  const [top, low] = [point(centre.x, centre.y - radius), point(centre.x, centre.y + radius)];
  const half = (to: Point) => ({ kind: 'arc', centre, to, clockwise: true }) as const;
  return { kind: 'path', pen, paths: [{ start: top, segments: [half(low), half(top)], closed: true }], id };
}

/** How any gauge is made; the last steps of its sheet. */
export const MAKING =
  'Print on card and cut along the solid outlines, or cut it with a machine: --cut svg,dxf writes the outlines alone. Knives: sharp blade, hands out of its path. Lasers: never unattended; the machine’s own manual comes first.';
