import type { Drawing, Item } from '../../drawing/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, box } from '../../geometry/box.ts';
import { point, type Size } from '../../geometry/point.ts';
import type { JobToCut } from '../../stock/blanks.ts';
import type { BoardLayouts, LaidPiece, Layout } from '../../stock/layouts.ts';
import { inside } from '../../text/bench-flow.ts';
import {
  BLANK,
  BOLD,
  disc,
  FINE,
  HEAD,
  INTRO_IN_BLACK,
  level,
  moved,
  NAME,
  type Part,
  scaled,
  stacked,
  TEXT,
  textPart,
  tickSquare,
} from '../../text/bench-type.ts';
import { capHeight, set, widthOf } from '../../text/type-scale.ts';
import { BLADE_CAUTION } from '../ticket/materials.ts';
import { benchSheet, TICKET_MARGIN } from '../ticket/page.ts';
import { fine } from '../ticket/steps.ts';
import { scaleFor, stockDiagram } from './diagram.ts';
import {
  blankName,
  type CutRow,
  type StopGroup,
  sheetsName,
  sourceWords,
  stopGroups,
  type Tape,
  tapeSize,
} from './words.ts';

const GUTTER = 8;
/** Above the diagram a sheet gets at most that much of the page's height. */
const MOST_HEIGHT = 0.52;
/** The diagram goes across the page where that makes it so much larger. */
const WORTH = 1.25;
const SCALES = [1.1, 1, 0.92];
/** Between rows, and between settings. */
const BETWEEN = 2.8;

export interface StockSheetOptions {
  readonly paper: Size;
  readonly tape: Tape;
  readonly fonts: Fonts;
}

/** One layout: the sheet to scale, what is on it, and the cuts in their order, on as few pages as it takes. */
export function layoutPages(
  { board }: Pick<BoardLayouts, 'board'>,
  layout: Layout,
  jobs: readonly JobToCut[],
  { paper, tape, fonts }: StockSheetOptions,
): readonly Drawing[] {
  const page = inside(paper, TICKET_MARGIN);
  const foot = textPart(BLADE_CAUTION, page.width, FINE, fonts);
  const column = (page.width - GUTTER) / 2;
  const lead = `${board.material.name}, ${fine(board.material.thickness)}: ${sourceWords(layout, jobs, tape)}`;
  const head = stacked(
    [textPart(sheetsName(layout), page.width, NAME, fonts), textPart(lead, page.width, INTRO_IN_BLACK, fonts)],
    2,
  );
  const title = `${sheetsName(layout)}, ${board.material.name}`;
  const next = textPart(`${title}, continued`, page.width, BOLD, fonts);
  const top = page.y + head.height + 4;
  const end = page.y + page.height - foot.height - 3;
  const across = scaleFor(layout, { width: page.width, height: (end - top) * MOST_HEIGHT });
  const beside = scaleFor(layout, { width: column, height: (end - top) * 0.7 });
  const wide = across * WORTH <= beside;
  const by = wide ? across : beside;
  const diagram = stockDiagram(layout, jobs, tape, by, fonts);
  const caption = textPart(
    `Drawn 1 : ${Number(by.toFixed(2))}, sides named as drawn. Wide hatching is kept, close hatching is waste. Pencil its letter on each board that is cut again.`,
    column,
    FINE,
    fonts,
  );
  const below = top + diagram.height + 0.6 + caption.height + 4;
  const columns = (index: number): readonly Box[] => {
    const again = page.y + next.height + 3;
    const from = index === 0 ? [below, wide ? below : top] : [again, again];
    return from.map((y, c) => box(page.x + c * (column + GUTTER), y, column, end - y));
  };
  // The cuts in a column of their own where that takes no more paper.
  const made = SCALES.flatMap((scale) => {
    const { on, cuts } = partsOf(layout, jobs, tape, column, scale, fonts);
    return [flow([on, cuts], columns), flow([[...on, ...cuts]], columns)];
  });
  const best = made.reduce((fewest, each) => (each.length < fewest.length ? each : fewest));
  return best.map((items, index) => {
    const first: readonly Item[] = [
      ...moved(head.items, page.x, page.y),
      ...moved(diagram.items, page.x + (wide ? (page.width - diagram.width) / 2 : 0), top),
      ...moved(caption.items, page.x, top + diagram.height + 0.6),
    ];
    const all = [
      ...(index === 0 ? first : moved(next.items, page.x, page.y)),
      ...items,
      ...moved(foot.items, page.x, end + 3),
    ];
    return benchSheet(title, 'stock', paper, all);
  });
}

/** Parts one below the other, column by column, each list from the top of a column on; each page's items. */
function flow(
  lists: readonly (readonly Part[])[],
  columns: (page: number) => readonly Box[],
): readonly (readonly Item[])[] {
  const pages: Item[][] = [[]];
  let [page, column, y] = [0, 0, 0];
  const next = (): void => {
    [column, y] = [column + 1, 0];
    if (column < columns(page).length) return;
    [page, column] = [page + 1, 0];
    pages.push([]);
  };
  lists.forEach((parts, list) => {
    if (list > 0) next();
    for (const part of parts) {
      if (y > 0 && y + part.height > columns(page)[column]!.height) next();
      const area = columns(page)[column]!;
      pages[page]!.push(...moved(part.items, area.x, area.y + y));
      y += part.height + BETWEEN;
    }
  });
  return pages;
}

/** What is on the sheet, and how it is cut. */
function partsOf(
  layout: Layout,
  jobs: readonly JobToCut[],
  tape: Tape,
  width: number,
  scale: number,
  fonts: Fonts,
): { readonly on: readonly Part[]; readonly cuts: readonly Part[] } {
  const [first, ...rest] = [...new Map(layout.pieces.map((piece) => [piece.key, piece])).values()].map((piece) =>
    legendRow(piece, layout, jobs, tape, width, scale, fonts),
  );
  const groups = stopGroups(layout, jobs, tape).map((group) => groupPart(group, width, scale, fonts));
  const whole =
    layout.sequence.cuts === 0 ? [textPart('Nothing is cut: it is used whole.', width, TEXT, fonts)] : groups;
  const [cut, ...more] = whole;
  return {
    on: first === undefined ? [] : [stacked([heading('On it', width, scale, fonts), first], 2.2), ...rest],
    cuts: cut === undefined ? [] : [stacked([heading('Cut', width, scale, fonts), cut], 2.2), ...more],
  };
}

function heading(text: string, width: number, scale: number, fonts: Fonts): Part {
  const part = textPart(text, width, scaled(HEAD, scale), fonts);
  const line: Item = { kind: 'line', pen: 'head', from: point(0, 0), to: point(width, 0) };
  return { items: [line, ...moved(part.items, 0, 1.5)], height: part.height + 1.5 };
}

function legendRow(
  piece: LaidPiece,
  { pieces }: Layout,
  jobs: readonly JobToCut[],
  tape: Tape,
  width: number,
  scale: number,
  fonts: Fonts,
): Part {
  const count = pieces.filter(({ key }) => key === piece.key).length;
  const [text, bold] = [scaled(TEXT, scale), scaled(BOLD, scale)];
  const tail = fraction(`${count === 1 ? '' : `${count} of `}${tapeSize(piece.blank, tape)}`);
  const right = textPart(tail, width, bold, fonts);
  const room = widthOf(tail, bold, fonts) + 3;
  const indent = 6 * scale;
  return level([
    [0, textPart(piece.key, width, bold, fonts)],
    [0, textPart(blankName(piece, jobs), width - room, text, fonts, indent)],
    [width - room + 3, right],
  ]);
}

/** A setting to be read at arm's length, and below it the cuts that are made at it. */
function groupPart({ reading, rows, byRule }: StopGroup, width: number, scale: number, fonts: Fonts): Part {
  const base = capHeight(BLANK, fonts);
  const stop = scaled(TEXT, scale);
  const what = byRule ? 'Mark' : 'Stop';
  const before = widthOf(what, stop, fonts) + 2;
  const after = before + widthOf(reading.text, BLANK, fonts) + 1.8;
  const said = [
    reading.unit,
    reading.sense === 'exact' ? '' : `${reading.sense}, ${reading.decimal} ${reading.unit}`,
    byRule ? 'by rule, cut to the mark' : '',
  ];
  const head: Part = {
    items: [
      set(what, 0, base, stop),
      set(reading.text, before, base, BLANK),
      set(said.filter((text) => text !== '').join(' '), after, base, stop),
    ],
    height: base + 0.6,
  };
  return stacked([head, ...rows.map((row) => rowPart(row, width, scale, fonts))], 1.7 * scale);
}

function rowPart({ cut, lay, gives }: CutRow, width: number, scale: number, fonts: Fonts): Part {
  const [text, bold] = [scaled(TEXT, scale), scaled(BOLD, scale)];
  const { side } = tickSquare(0, 0, text, fonts);
  const radius = 2.1;
  const indent = side + 2 * radius + 2.6;
  const words = stacked(
    [textPart(lay, width, text, fonts, indent), textPart(`→ ${gives}`, width, bold, fonts, indent)],
    0.9,
  );
  const base = textPart(lay, width, text, fonts, indent).base;
  const above = Math.max(0, radius - (base - capHeight(text, fonts) / 2));
  const middle = base + above - capHeight(text, fonts) / 2;
  return {
    items: [
      tickSquare(0.12, base + above, text, fonts).item,
      ...disc(`${cut}`, point(side + 0.9 + radius, middle), radius, fonts),
      ...moved(words.items, 0, above),
    ],
    height: above + words.height,
  };
}
