import type { Stroke } from '../bench/model.ts';
import type { AvoidBox, Drawing, Group, Item, LineItem } from '../drawing/model.ts';
import type { Quarter } from '../drawing/turned.ts';
import type { RareFonts } from '../fonts/model.ts';
import { type Box, bottom, box, centre, grown, union } from '../geometry/box.ts';
import type { Line } from '../geometry/clip.ts';
import { straightSides } from '../geometry/path.ts';
import { distance, type Point, plus, point, times } from '../geometry/point.ts';
import type { Job } from '../job/model.ts';
import type { Mat } from '../mat/model.ts';
import { type Problem, warning } from '../problems/problem.ts';
import { beside, placed, textBlock } from './blocks.ts';
import { drawBoard, drawHinge, facts, hingeSide } from './pattern-board.ts';
import { alongHinge, bands, besideSide, nearTop, SCALES, scan, strokeBlock, uprightFor } from './pattern-labels.ts';
import {
  extended,
  faceLine,
  LEGEND,
  line,
  lineBox,
  openingBox,
  outward,
  PENS,
  TRIM_INSET,
  tick,
} from './pattern-lines.ts';
import { noteBlocks } from './pattern-notes.ts';
import { instructions } from './pattern-words.ts';
import { type Candidate, firstFree, type InkedLine } from './placing.ts';

export interface Pattern {
  readonly drawing: Drawing;
  /** Steps for sheet 1. */
  readonly instructions: readonly string[];
  readonly warnings: readonly Problem[];
}

export interface PatternOptions {
  readonly rare?: RareFonts;
  /** Whether the sheets are joined, or each laid on by a corner: the steps differ. */
  readonly extent?: 'whole' | 'corners';
}

/** Paper beyond the board's edge, so that its line is drawn whole. */
const AROUND = 1;
/** Between words and whatever they must not touch. */
const GAP = 1.2;
/** Labels inside an opening stay this near to its lines, so that the middle is blank. */
const REACH_INSIDE = 52;

const GROUPS: readonly (readonly [string, string])[] = [
  ['board', "Board's edge, tabs and trim line"],
  ['cut', 'Lines to cut'],
  ['face', 'Face edges'],
  ['marks', 'Start and stop marks'],
  ['strokes', 'Stroke arrows and numbers'],
  ['readings', 'Guide readings'],
  ['straightedge', 'Straightedge lines'],
  ['centre', 'Centres of the edges'],
  ['hinge', 'Hinge edge'],
  ['notes', 'BACK, TOP, job, head'],
];

/**
 * The full-scale pattern of one layer (from 0) in the back view. `strokes` are those of the whole mat.
 * Words that find no room are named in a warning and not drawn.
 */
export function pattern(
  mat: Mat,
  strokes: readonly Stroke[],
  job: Job,
  layer: number,
  how: PatternOptions = {},
): Pattern {
  const { rare, extent = 'whole' } = how;
  const board = box(AROUND, AROUND, mat.outer.width, mat.outer.height);
  const own = strokes.filter((s) => s.layer === layer + 1).map((s) => shifted(s, point(AROUND, AROUND)));
  const inset = TRIM_INSET + (job.bench.stack === 'together' ? mat.layers[layer]!.trimBack : 0);
  const paper = grown(board, -inset);
  const groups = new Map<string, Item[]>(GROUPS.map(([name]) => [name, []]));
  const add = (group: string, ...items: readonly Item[]): void => {
    groups.get(group)!.push(...items);
  };
  const avoid: AvoidBox[] = [];
  const cuts = own.map((s) => s.line);
  const cutBox = union(cuts.map(({ from, to }) => union([box(from.x, from.y, 0, 0), box(to.x, to.y, 0, 0)])));

  drawBoard(mat, layer, board, inset, add);
  drawHinge(job, mat, board, inset, add);
  const ticks: { readonly item: LineItem; readonly letter: 'S' | 'E'; readonly stroke: Stroke; readonly out: Point }[] =
    [];
  for (const s of own) {
    const tag = `${s.opening}-${s.side}`;
    const inside = centre(openingBox(own, s.opening));
    const out = outward(s, inside);
    add('cut', line('cut', s.line.from, s.line.to, `cut-${tag}`));
    const face = faceLine(s, `face-${tag}`);
    if (face !== undefined) add('face', face);
    const depth = across(openingBox(own, s.opening), out);
    for (const [letter, mark] of [['S', s.start] as const, ['E', s.stop] as const]) {
      const item = tick(mark, out, paper, depth, cuts, `${letter === 'S' ? 'start' : 'stop'}-${tag}`);
      add('marks', item);
      ticks.push({ item, letter, stroke: s, out });
      avoid.push({ why: 'tick', box: grown(lineBox(item), 1) });
    }
    for (const end of [s.line.from, s.line.to]) avoid.push({ why: 'corner', box: grown(box(end.x, end.y, 0, 0), 8) });
    if (s.straightedge !== undefined) {
      const rest = extended(s.straightedge, paper);
      add('straightedge', line('straightedge', rest.from, rest.to, `straightedge-${tag}`));
    }
  }

  const taken: { lines: InkedLine[]; boxes: Box[] } = {
    lines: [...groups.values()].flat().flatMap(linesOf),
    boxes: [],
  };
  const unplaced: string[] = [];
  const set = (what: string, candidates: Iterable<Candidate>, why: AvoidBox['why']): void => {
    const found = firstFree(candidates, paper, taken, GAP);
    if (found === undefined) {
      unplaced.push(what);
      return;
    }
    for (const { group, item } of placed(found.candidate.block, found.candidate.quarter, found.candidate.at))
      add(group, item);
    taken.boxes.push(found.box);
    avoid.push({ why, box: found.box });
  };

  for (const t of ticks) {
    const name = `${t.letter} of stroke ${t.stroke.order}`;
    set(name, letterPlaces(t.item.from, t.out, t.letter, t.stroke), 'tick');
    if (distance(t.item.to, t.letter === 'S' ? t.stroke.start : t.stroke.stop) > 12)
      set(name, letterPlaces(t.item.to, times(t.out, -1), t.letter, t.stroke), 'tick');
  }
  for (const s of own) {
    const out = outward(s, centre(openingBox(own, s.opening)));
    const upright = uprightFor(s.direction);
    const along = ((upright + 3) % 4) as Quarter;
    const places = SCALES.flatMap((scale) => {
      const standing = once(() => strokeBlock(s, scale, true));
      const lying = once(() => strokeBlock(s, scale, false));
      return [
        () => besideSide(standing(), s.line, out, upright, 4, across(board, out)),
        () => besideSide(lying(), s.line, out, along, 4, across(board, out)),
        () => besideSide(standing(), s.line, times(out, -1), upright, 4, REACH_INSIDE),
        () => besideSide(lying(), s.line, times(out, -1), along, 4, REACH_INSIDE),
      ];
    });
    set(`number and reading of stroke ${s.order}`, chained(places), 'reading');
  }
  const words = noteBlocks(mat, job, layer, paper, rare);
  const band = bands(paper, cutBox);
  const inner = grown(cutBox, -3);
  const innerUpper = box(inner.x, inner.y, inner.width, Math.min(inner.height, REACH_INSIDE));
  const innerLower = box(
    inner.x,
    bottom(inner) - Math.min(inner.height, REACH_INSIDE),
    inner.width,
    Math.min(inner.height, REACH_INSIDE),
  );
  for (const note of words) {
    const places = note.sizes.flatMap((made) => {
      const block = once(made);
      return [
        ...(note.name === 'hinge edge' ? [() => alongHinge(block(), hingeSide(job, mat), band)] : []),
        ...(note.name === 'TOP' ? [() => nearTop(block(), band.upper), () => nearTop(block(), innerUpper)] : []),
        () => scan(block(), 0, band.upper),
        () => scan(block(), 0, band.lower),
        () => scan(block(), 1, band.right),
        () => scan(block(), 3, band.left),
        () => scan(block(), 0, innerUpper),
        () => scan(block(), 0, innerLower),
        ...(Math.min(inner.width, inner.height) < 4 * REACH_INSIDE ? [() => scan(block(), 0, inner)] : []),
      ];
    });
    set(note.name, chained(places), 'text');
  }

  const drawing: Drawing = {
    title: `${job.title}: ${mat.layers[layer]!.name}`,
    width: mat.outer.width + 2 * AROUND,
    height: mat.outer.height + 2 * AROUND,
    view: 'back',
    pens: PENS,
    groups: GROUPS.flatMap(([name, label]): Group[] => {
      const items = groups.get(name)!;
      return items.length === 0 ? [] : [{ name, label, shown: true, items }];
    }),
    avoid,
    facts: facts(board, own, job),
    board,
    legend: LEGEND.filter(({ pen }) => usesPen(groups, pen)),
  };
  const warnings = unplaced.map((what) =>
    warning(
      'label-without-room',
      ['mat'],
      `no room on the ${mat.layers[layer]!.name}'s pattern for: ${what}`,
      'it stands on sheet 1 and in the check command instead',
    ),
  );
  return { drawing, instructions: instructions(mat, own, job, layer, extent), warnings };
}

function shifted(s: Stroke, by: Point): Stroke {
  const move = (part: Line): Line => ({ from: plus(part.from, by), to: plus(part.to, by) });
  return {
    ...s,
    line: move(s.line),
    face: move(s.face),
    start: plus(s.start, by),
    stop: plus(s.stop, by),
    ...(s.straightedge === undefined ? {} : { straightedge: move(s.straightedge) }),
  };
}

/** The extent of a box along a direction. */
const across = (b: Box, way: Point): number => Math.abs(way.x) * b.width + Math.abs(way.y) * b.height;

function* letterPlaces(end: Point, way: Point, letter: 'S' | 'E', s: Stroke): Generator<Candidate> {
  const quarter = uprightFor(s.direction);
  const along = s.direction;
  for (const size of [7, 5, 3.6]) {
    const block = beside(
      textBlock([{ group: 'marks', text: letter, size, weight: 'bold' }]),
      textBlock([{ group: 'marks', text: String(s.order), size: 0.65 * size, weight: 'regular' }]),
      0.08 * size,
    );
    const [w, h] = quarter % 2 === 0 ? [block.width, block.height] : [block.height, block.width];
    const [over, aside] = [across(box(0, 0, w, h), way) / 2, across(box(0, 0, w, h), along) / 2];
    const outwards = letter === 'S' ? -1 : 1;
    const centres = [
      plus(end, times(way, over + GAP + 0.4)),
      ...[0, 4, 8, 12, 18, 24].flatMap((back) =>
        [outwards, -outwards].map((hand) =>
          plus(plus(end, times(way, -over - back)), times(along, hand * (aside + GAP + 0.4))),
        ),
      ),
    ];
    for (const c of centres) yield { block, quarter, at: point(c.x - w / 2, c.y - h / 2) };
  }
}

/** Made when it is first asked for, and kept. */
function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

function* chained(places: readonly (() => Iterable<Candidate>)[]): Generator<Candidate> {
  for (const place of places) yield* place();
}

/** The straight lines of an item that words must keep clear of. */
function linesOf(item: Item): readonly InkedLine[] {
  const half = (item.kind === 'line' || item.kind === 'path') && item.pen !== undefined ? PENS[item.pen]!.width / 2 : 0;
  if (item.kind === 'line') return [{ from: item.from, to: item.to, half }];
  return item.kind === 'path' ? item.paths.flatMap(straightSides).map((side) => ({ ...side, half })) : [];
}

function usesPen(groups: ReadonlyMap<string, readonly Item[]>, pen: string): boolean {
  return [...groups.values()].some((items) =>
    items.some((item) => (item.kind === 'line' || item.kind === 'path') && item.pen === pen),
  );
}
