import type { Drawing, Item } from '../../drawing/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom } from '../../geometry/box.ts';
import type { Margined } from '../../settle/settled.ts';
import { boardTitle } from '../../shop/board.ts';
import type { JobToCut } from '../../stock/blanks.ts';
import type { BoardLayouts, LaidPiece, Layout } from '../../stock/layouts.ts';
import { type Block, moved, stacked } from '../../text/block.ts';
import { type Entry, piecesOf } from '../../text/entries.ts';
import { columnsOf, type Density, flow } from '../../text/flow.ts';
import { headline, level, line, paragraph, type TextBlock } from '../../text/paragraph.ts';
import { colourChip, discBlock, tickBlock } from '../../text/signs.ts';
import { BOLD, CLEAR, FINE, inBold, NAME, type Style } from '../../text/styles.ts';
import { benchArea, benchSheet, GUTTER } from '../bench-page.ts';
import { BLADE_CAUTION } from '../ticket/materials.ts';
import { fine } from '../words/fine.ts';
import { scaleFor, stockDiagram } from './diagram.ts';
import {
  blankName,
  type CutRow,
  originWords,
  type StopGroup,
  sheetsName,
  stopGroups,
  type Tape,
  tapeSize,
} from './words.ts';

/** Above the diagram a sheet gets at most that much of the page's height. */
const MOST_HEIGHT = 0.52;
/** The diagram goes across the page where that makes it so much larger. */
const WORTH = 1.25;

export interface StockSheetOptions {
  readonly paper: Margined;
  readonly tape: Tape;
  readonly fonts: Fonts;
  /** Of the plan. */
  readonly number?: string;
}

/** One layout: the sheet to scale, what is on it, and the cuts in their order, on as few pages as it takes. */
export function layoutPages(
  { board }: Pick<BoardLayouts, 'board'>,
  layout: Layout,
  jobs: readonly JobToCut[],
  { paper, tape, fonts, number }: StockSheetOptions,
): readonly Drawing[] {
  const area = benchArea(paper);
  const foot = paragraph(`${number === undefined ? '' : `Plan ${number}. `}${BLADE_CAUTION}`, area.width, FINE, fonts);
  const [column] = columnsOf(area, 2, GUTTER);
  const intro = `${boardTitle(board.material)}, ${fine(board.material.thickness)}: ${originWords(layout, jobs, tape)}`;
  const head = stacked(
    [
      headline(sheetsName(layout), area.width, NAME, fonts),
      withColour(board.material.colour, intro, area.width, fonts),
    ],
    2,
  );
  const title = `${sheetsName(layout)}, ${board.material.name}`;
  const next = paragraph(`${title}, continued`, area.width, BOLD, fonts);
  const top = area.y + head.height + 4;
  const end = bottom(area) - foot.height - 3;
  const across = scaleFor(layout, { width: area.width, height: (end - top) * MOST_HEIGHT });
  const beside = scaleFor(layout, { width: column!.width, height: (end - top) * 0.7 });
  const wide = across * WORTH <= beside;
  const by = wide ? across : beside;
  const diagram = stockDiagram(layout, jobs, tape, by, fonts);
  const caption = paragraph(
    `Drawn 1 : ${Number(by.toFixed(2))}, sides named as drawn. Wide hatching is kept, close hatching is waste. Pencil its letter on each board that is cut again.`,
    column!.width,
    FINE,
    fonts,
  );
  const under = top + diagram.height + 0.6 + caption.height + 4;
  const columns = (page: number): readonly Box[] => {
    const again = area.y + next.height + 3;
    const from = page === 0 ? [under, wide ? under : top] : [again, again];
    return columnsOf(area, 2, GUTTER).map((each, i) => ({ ...each, y: from[i]!, height: end - from[i]! }));
  };
  // The cuts in a column of their own where that takes no more paper.
  const on = onIt(layout, jobs, tape, fonts);
  const pieces = piecesOf([...on, ...cutsOf(layout, jobs, tape, fonts)], fonts);
  const apart = pieces.map((piece, i) => (i === on.length ? { ...piece, fresh: true } : piece));
  const [own, shared] = [flow(apart, { columns }), flow(pieces, { columns })];
  const { pages } = own.pages.length <= shared.pages.length ? own : shared;
  return pages.map(({ items }, index) => {
    const first: readonly Item[] = [
      ...moved(head.items, area.x, area.y),
      ...moved(diagram.items, area.x + (wide ? (area.width - diagram.width) / 2 : 0), top),
      ...moved(caption.items, area.x, top + diagram.height + 0.6),
    ];
    const above = index === 0 ? first : moved(next.items, area.x, area.y);
    return benchSheet(title, 'stock', { jobs, paper, fonts }, [
      ...above,
      ...items,
      ...moved(foot.items, area.x, end + 3),
    ]);
  });
}

/** What the board is, its colour before it. */
function withColour(colour: string | undefined, words: string, width: number, fonts: Fonts): TextBlock {
  if (colour === undefined) return paragraph(words, width, CLEAR, fonts);
  const chip = colourChip(colour, CLEAR, fonts);
  return level([
    [0, chip],
    [0, paragraph(words, width, CLEAR, fonts, chip.width + 1.6)],
  ]);
}

/** What is on the sheet, a row for each kind of blank. */
function onIt(layout: Layout, jobs: readonly JobToCut[], tape: Tape, fonts: Fonts): readonly Entry[] {
  const kinds = [...new Map(layout.pieces.map((piece) => [piece.key, piece])).values()];
  return [
    { kind: 'section', text: 'On it' },
    ...kinds.map(
      (piece): Entry => ({
        kind: 'figure',
        make: (width, { text }) => legendRow(piece, layout, jobs, tape, width, text, fonts),
      }),
    ),
  ];
}

/** How it is cut, setting by setting. */
function cutsOf(layout: Layout, jobs: readonly JobToCut[], tape: Tape, fonts: Fonts): readonly Entry[] {
  return [
    { kind: 'section', text: 'Cut' },
    ...(layout.sequence.cuts === 0 ? [{ kind: 'text', text: 'Nothing is cut: it is used whole.' } as const] : []),
    ...stopGroups(layout, jobs, tape).map(
      (group): Entry => ({ kind: 'figure', make: (width, density) => groupBlock(group, width, density, fonts) }),
    ),
  ];
}

function legendRow(
  piece: LaidPiece,
  { pieces }: Layout,
  jobs: readonly JobToCut[],
  tape: Tape,
  width: number,
  text: Style,
  fonts: Fonts,
): TextBlock {
  const count = pieces.filter(({ key }) => key === piece.key).length;
  const bold = inBold(text);
  const size = line(fraction(`${count === 1 ? '' : `${count} of `}${tapeSize(piece.blank, tape)}`), bold, fonts);
  return level([
    [0, paragraph(piece.key, width, bold, fonts)],
    [0, paragraph(blankName(piece, jobs), width - size.width - 3, text, fonts, 6)],
    [width - size.width, size],
  ]);
}

/** A setting to be read at arm's length, and below it the cuts that are made at it. */
function groupBlock({ reading, rows, byRule }: StopGroup, width: number, { text, air }: Density, fonts: Fonts): Block {
  const what = line(byRule ? 'Mark' : 'Stop', text, fonts);
  const amount = line(reading.text, NAME, fonts);
  const said = [
    reading.unit,
    reading.sense === 'exact' ? '' : `${reading.sense}, ${reading.decimal} ${reading.unit}`,
    byRule ? 'by rule, cut to the mark' : '',
  ];
  const words = said.filter((part) => part !== '').join(' ');
  const head = level([
    [0, what],
    [what.width + 2, amount],
    [0, paragraph(words, width, text, fonts, what.width + amount.width + 3.8)],
  ]);
  return stacked([head, ...rows.map((row) => cutRow(row, width, text, fonts))], 1.5 * air);
}

function cutRow({ cut, lay, gives }: CutRow, width: number, text: Style, fonts: Fonts): Block {
  const square = tickBlock(text, fonts);
  const number = discBlock(`${cut}`, text, fonts);
  const indent = square.width + number.width + 2;
  const first = level([
    [0, square],
    [square.width + 0.6, number],
    [0, paragraph(lay, width, text, fonts, indent)],
  ]);
  return stacked([first, paragraph(`→ ${gives}`, width, inBold(text), fonts, indent)], 0.7);
}
