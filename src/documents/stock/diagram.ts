import type { Item, TextItem } from '../../drawing/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, centre, contains, grown, overlaps, right } from '../../geometry/box.ts';
import { clipLine } from '../../geometry/clip.ts';
import { distance, type Point, point, type Size } from '../../geometry/point.ts';
import { type JobToCut, jobName } from '../../stock/blanks.ts';
import { type LaidPiece, type Layout, leavesOf } from '../../stock/layouts.ts';
import type { Cut } from '../../stock/planner/sequence.ts';
import { BOLD, disc, FINE, moved, type Part, scaled, stacked, TEXT, textPart } from '../../text/bench-type.ts';
import { boxItem, capHeight, type Style, set, widthOf } from '../../text/type-scale.ts';
import { type Tape, tapeAmounts, tapeSize } from './words.ts';

/** What a sheet is drawn smaller by: round numbers. */
const SCALES = [1, 2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 25, 30, 40, 50, 75, 100];
const RADIUS = 2;
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
export function stockDiagram(
  layout: Layout,
  jobs: readonly JobToCut[],
  tape: Tape,
  by: number,
  fonts: Fonts,
): Part & Size {
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
  const big = scaled(BOLD, 1.25);
  const ways: readonly (readonly (readonly [text: string, style: Style])[])[] = [
    [
      [key, big],
      [title, BOLD],
      [blank.name, TEXT],
      [size, TEXT],
    ],
    [
      [key, big],
      [title, scaled(BOLD, 0.85)],
      [blank.name, FINE],
      [size, FINE],
    ],
    [
      [key, big],
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
  for (const lines of ways) {
    const width = within.width - 3;
    const [last, lastStyle] = lines.at(-1)!;
    // A size is never parted, nor is a word.
    if (widthOf(fraction(last), lastStyle, fonts) > width) continue;
    if (lines.some(([text, style]) => text.split(' ').some((word) => widthOf(word, style, fonts) > width))) continue;
    const made = lines.map(([text, style]) => centred(text, width, style, fonts));
    const block = stacked(made, 0.9);
    const wide = Math.max(...made.map((line) => line.width));
    const spot = free({ width: wide, height: block.height }, grown(within, -1.2), taken);
    if (spot !== undefined) return moved(block.items, spot.x + wide / 2, spot.y);
  }
  const style = scaled(
    BOLD,
    Math.min(1, within.height / (2 * BOLD.size), within.width / (1.2 * widthOf(key, BOLD, fonts))),
  );
  const spot = free({ width: widthOf(key, style, fonts), height: capHeight(style, fonts) }, within, taken) ?? {
    x: centre(within).x - widthOf(key, style, fonts) / 2,
    y: centre(within).y - capHeight(style, fonts) / 2,
  };
  return [set(key, spot.x, spot.y + capHeight(style, fonts), style)];
}

/** Lines about an axis at 0. */
function centred(text: string, width: number, style: Style, fonts: Fonts): Part & Size {
  const part = textPart(text, width, style, fonts);
  const lines = part.items.filter((item): item is TextItem => item.kind === 'text');
  return {
    items: lines.map((item): TextItem => ({ ...item, at: point(0, item.at.y), anchor: 'middle' })),
    width: Math.max(...lines.map((item) => widthOf(item.text, style, fonts))),
    height: part.height,
  };
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
    for (const turned of [false, true]) {
      const wide = Math.max(...words.map((text) => widthOf(text, style, fonts))) + 1.6;
      const high = words.length * 1.3 * style.size + 0.8;
      const size = turned ? { width: high, height: wide } : { width: wide, height: high };
      const spot = free(size, grown(within, -0.3), taken);
      if (spot === undefined) continue;
      const { x, y } = centre(spot);
      const texts = words.map((text, i): Item => {
        const down = (i - (words.length - 1) / 2) * 1.3 * style.size + capHeight(style, fonts) / 2;
        const made = set(text, turned ? x + down : x, turned ? y : y + down, style, 'middle');
        return turned ? { ...made, turn: -90 } : made;
      });
      return [boxItem(spot, 1), ...texts];
    }
  }
  return [];
}

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
    made.push({ taken: around(spot), drawn: disc(`${cut}`, spot, RADIUS, fonts) });
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
