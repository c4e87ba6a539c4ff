import type { Item } from '../../drawing/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, centre, contains, grown, overlaps, right } from '../../geometry/box.ts';
import { clipLine } from '../../geometry/clip.ts';
import { distance, type Point, point, type Size } from '../../geometry/point.ts';
import { type JobToCut, jobName } from '../../stock/blanks.ts';
import { type LaidPiece, type Layout, leavesOf } from '../../stock/layouts.ts';
import type { Cut } from '../../stock/planner/sequence.ts';
import { type Block, type Line, labelBlock, moved, turnedBlock } from '../../text/block.ts';
import { boxItem } from '../../text/figures.ts';
import { fitted, widthOf } from '../../text/line.ts';
import { disc, discRadius } from '../../text/signs.ts';
import { BOLD, FINE, FINE_BOLD, HEAD, type Style, TEXT } from '../../text/styles.ts';
import { type Tape, tapeAmounts, tapeSize } from './words.ts';

/** What a sheet is drawn smaller by: round numbers. */
const SCALES = [1, 2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 25, 30, 40, 50, 75, 100];
/** Of the cuts' numbers. */
const CUT = FINE_BOLD;
const RADIUS = discRadius('00', CUT);
/** Discs may stand that far outside of the sheet. */
const RIM = 2 * RADIUS + 0.6;
/** Between the lines that hatch what is kept, and what is waste. */
const HATCH = { keep: 2.6, waste: 1.1 } as const;

/** The largest scale at which the sheet with its rim fits into the room; 8 stands for 1 : 8. */
export function scaleFor({ width, height }: Size, room: Size): number {
  const fits = SCALES.find((by) => width / by + 2 * RIM <= room.width && height / by + 2 * RIM <= room.height);
  return fits ?? Math.max(width / (room.width - 2 * RIM), height / (room.height - 2 * RIM));
}

/** A sheet with its cuts in their order, what comes out of it and what is left, drawn 1 : `by`. */
export function stockDiagram(layout: Layout, jobs: readonly JobToCut[], tape: Tape, by: number, fonts: Fonts): Block {
  const place = ({ x, y, width, height }: Box): Box => box(RIM + x / by, RIM + y / by, width / by, height / by);
  const at = ({ x, y }: Point): Point => point(RIM + x / by, RIM + y / by);
  const sheet = place({ x: 0, y: 0, width: layout.width, height: layout.height });
  const cuts = layout.sequence.instructions.filter((step): step is Cut => step.kind === 'cut');
  const discs = numbers(
    cuts.map(({ cut, line }) => ({ cut, from: at(line.from), to: at(line.to) })),
    sheet,
    fonts,
  );
  const items: Item[] = [];
  for (const leaf of leavesOf(layout.tree)) {
    if (leaf.kind === 'piece') continue;
    items.push(...hatch(place(leaf), leaf.kind === 'offcut' && leaf.keep ? HATCH.keep : HATCH.waste));
  }
  items.push(boxItem(sheet, undefined, 'edge'));
  for (const { line } of cuts) items.push({ kind: 'line', pen: 'cut', from: at(line.from), to: at(line.to) });
  const taken = discs.map((each) => each.taken);
  for (const piece of layout.pieces) items.push(...pieceWords(piece, place(piece), jobs, tape, taken, fonts));
  for (const offcut of layout.offcuts) {
    items.push(...onWhite([offcut.marks.join(', '), fraction(tapeSize(offcut, tape))], place(offcut), taken, fonts));
  }
  items.push(...discs.flatMap(({ drawn }) => drawn));
  return { items, width: sheet.width + 2 * RIM, height: sheet.height + 2 * RIM };
}

/** Lines up to the right at 45°, at equal distances over the whole sheet. */
function hatch(within: Box, pitch: number): readonly Item[] {
  const step = pitch * Math.SQRT2;
  const items: Item[] = [];
  const [low, high] = [within.x + within.y, right(within) + bottom(within)];
  for (let sum = Math.ceil(low / step) * step; sum < high; sum += step) {
    const line = clipLine(
      { from: point(sum - bottom(within), bottom(within)), to: point(sum - within.y, within.y) },
      within,
    );
    if (line !== undefined && line.from.x !== line.to.x) items.push({ kind: 'line', pen: 'rule', ...line });
  }
  return items;
}

/** From the most that is said of a piece to the least: its key always. */
function pieceWords(
  piece: LaidPiece,
  within: Box,
  jobs: readonly JobToCut[],
  tape: Tape,
  taken: readonly Box[],
  fonts: Fonts,
): readonly Item[] {
  const { key, blank } = piece;
  const title = jobName(jobs, blank.job);
  const size = tapeSize(piece, tape);
  const ways: readonly (readonly (readonly [text: string, style: Style])[])[] = [
    [
      [key, HEAD],
      [title, BOLD],
      [blank.name, TEXT],
      [size, TEXT],
    ],
    [
      [key, HEAD],
      [title, FINE_BOLD],
      [blank.name, FINE],
      [size, FINE],
    ],
    [
      [key, HEAD],
      [size, TEXT],
    ],
    [
      [key, BOLD],
      [size, FINE],
    ],
    [
      [key, BOLD],
      [tapeAmounts(piece, tape), FINE],
    ],
  ];
  const width = within.width - 3;
  for (const way of ways) {
    const lines = way.map(([text, style]) => ({ text: fraction(text), style, width }));
    const isWhole = ({ text, style }: Line): boolean => widthOf(text, style, fonts) <= width;
    // A size is never parted, nor is a word.
    if (!isWhole(lines.at(-1)!)) continue;
    if (lines.some((line) => line.text.split(' ').some((text) => !isWhole({ ...line, text })))) continue;
    const block = labelBlock(lines, fonts, 'middle');
    const spot = free(block, grown(within, -1.2), taken);
    if (spot !== undefined) return moved(block.items, spot.x, spot.y);
  }
  const block = labelBlock([{ text: key, style: fitted(key, BOLD, 0.8 * within.width, fonts) }], fonts);
  const { x, y } = centre(within);
  const spot = free(block, within, taken) ?? point(x - block.width / 2, y - block.height / 2);
  return moved(block.items, spot.x, spot.y);
}

/** In the middle, or moved up and down, then aside, until nothing is in the way. */
function free(size: Size, within: Box, taken: readonly Box[]): Box | undefined {
  const { x, y } = centre(within);
  const play = { x: (within.width - size.width) / 2, y: (within.height - size.height) / 2 };
  if (play.x < -1e-9 || play.y < -1e-9) return undefined;
  for (const aside of [0, -0.5, 0.5, -1, 1]) {
    for (const along of [0, -0.5, 0.5, -1, 1]) {
      const own = box(
        x - size.width / 2 + aside * play.x,
        y - size.height / 2 + along * play.y,
        size.width,
        size.height,
      );
      if (!taken.some((other) => overlaps(own, other, 0.3))) return own;
    }
  }
  return undefined;
}

/** Words that stand on hatching, on a white ground; along the offcut where it is narrow. */
function onWhite(lines: readonly string[], within: Box, taken: readonly Box[], fonts: Fonts): readonly Item[] {
  for (const [words, style] of [
    [lines, BOLD],
    [[lines.join('  ')], BOLD],
    [[lines.join('  ')], FINE],
    [lines.slice(0, 1), FINE],
  ] as const) {
    const level = labelBlock(
      words.map((text) => ({ text, style })),
      fonts,
      'middle',
    );
    for (const block of [level, turnedBlock(level, 270)]) {
      const size = { width: block.width + 2 * AROUND, height: block.height + 2 * AROUND };
      const spot = free(size, grown(within, -0.3), taken);
      if (spot !== undefined) return [boxItem(spot, 1), ...moved(block.items, spot.x + AROUND, spot.y + AROUND)];
    }
  }
  return [];
}

/** White around words on hatching. */
const AROUND = 0.7;

interface NumberedLine {
  readonly cut: number;
  readonly from: Point;
  readonly to: Point;
}

/** A disc for each cut: outside of the sheet where the cut begins or ends at its edge, else on the line; none upon another. */
function numbers(
  lines: readonly NumberedLine[],
  sheet: Box,
  fonts: Fonts,
): readonly { readonly taken: Box; readonly drawn: readonly Item[] }[] {
  const made: { taken: Box; drawn: readonly Item[] }[] = [];
  for (const { cut, from, to } of lines) {
    const across = from.x === to.x;
    const spots = [
      ...outside(from, to, across, sheet),
      ...[0.5, 0.35, 0.65, 0.22, 0.78, 0.12, 0.88].map((share) => mix(from, to, share)),
    ];
    const around = ({ x, y }: Point): Box => box(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS);
    const clear = (spot: Point): boolean => made.every(({ taken }) => distance(spot, centre(taken)) > 2 * RADIUS + 0.2);
    const spot = spots.find(clear) ?? mix(from, to, 0.5);
    made.push({ taken: around(spot), drawn: disc(`${cut}`, spot, CUT, fonts) });
  }
  return made;
}

const mix = (from: Point, to: Point, share: number): Point =>
  point(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);

/** Beyond the ends that lie at the sheet's edge, or as near to it as a trim is wide. */
function outside(from: Point, to: Point, across: boolean, sheet: Box): readonly Point[] {
  const inner = grown(sheet, -3);
  const gap = RADIUS + 0.6;
  const spots: Point[] = [];
  if (across) {
    if (from.y < inner.y) spots.push(point(from.x, sheet.y - gap));
    if (to.y > bottom(inner)) spots.push(point(from.x, bottom(sheet) + gap));
  } else {
    if (from.x < inner.x) spots.push(point(sheet.x - gap, from.y));
    if (to.x > right(inner)) spots.push(point(right(sheet) + gap, from.y));
  }
  return spots.filter((spot) => contains(grown(sheet, RIM), box(spot.x, spot.y, 0, 0)));
}
