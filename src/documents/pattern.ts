import type { Stroke } from '../bench/model.ts';
import type { AvoidBox, Drawing, Group, Item } from '../drawing/model.ts';
import type { Quarter } from '../drawing/turned.ts';
import type { RareFonts } from '../fonts/model.ts';
import { type Box, bottom, box, grown, union } from '../geometry/box.ts';
import type { Line } from '../geometry/clip.ts';
import { between, distance, type Point, plus, point, times } from '../geometry/point.ts';
import type { Job } from '../job/model.ts';
import type { Mat } from '../mat/model.ts';
import { type Problem, warning } from '../problems/problem.ts';
import { placed, textBlock } from './blocks.ts';
import { drawBoard, drawHinge, facts, hingeSide } from './pattern-board.ts';
import { curves } from './pattern-curves.ts';
import { decorLines, decorWords } from './pattern-decor.ts';
import {
  alongHinge,
  around,
  bands,
  besideSide,
  nearTop,
  SCALES,
  SMALL_SIZES,
  scan,
  smallBlock,
  strokeBlock,
  uprightFor,
} from './pattern-labels.ts';
import { letteredBack } from './pattern-lettering.ts';
import { LEGEND, line, lineBox, outward, PENS, TRIM_INSET } from './pattern-lines.ts';
import { noteBlocks } from './pattern-notes.ts';
import { across, chained, closeTo, GAP, letterPlaces, linesOf, nearestOf, once } from './pattern-places.ts';
import { drawStrokes } from './pattern-strokes.ts';
import { instructions } from './pattern-words.ts';
import { type Candidate, firstFree } from './placing.ts';
import { Taken } from './taken.ts';

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
/** Labels inside an opening stay this near to its lines, so that the middle is blank. */
const REACH_INSIDE = 52;

/** With more openings than this only short labels have room. */
const CROWDED = 24;
/** Words farther from their place than this are led to it. */
const STANDS_OFF = 30;

const GROUPS: readonly (readonly [string, string])[] = [
  ['board', "Board's edge, tabs and trim line"],
  ['cut', 'Lines to cut'],
  ['curves', 'Axes, centres and pins of curves'],
  ['decor', 'Grooves and ink lines of the face'],
  ['face', 'Face edges'],
  ['leaders', 'Leaders from words to lines'],
  ['marks', 'Start and stop marks'],
  ['strokes', 'Stroke arrows and numbers'],
  ['readings', 'Guide readings'],
  ['straightedge', 'Straightedge and bar lines'],
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
  const curved = curves(mat, job, layer, AROUND);
  const cutBoxes = openingBoxes(own, curved);
  const cutBox = union([...cutBoxes.values()]);

  drawBoard(mat, layer, board, inset, add);
  drawHinge(job, mat, board, inset, add);
  for (const each of curved) {
    each.parts.forEach((path, i) => {
      const id = `cut-${each.opening}-curve-${i + 1}`;
      add('cut', { kind: 'path', pen: 'cut', paths: [path], id });
    });
    add('curves', ...each.items);
  }
  const lettered = layer === 0 ? letteredBack(mat, job, AROUND) : [];
  for (const { items } of lettered) add('cut', ...items);
  if (layer === 0) add('decor', ...decorLines(mat, job, AROUND));
  const ticks = drawStrokes(own, job, paper, cutBoxes, curved, add, avoid);

  const taken = new Taken();
  for (const each of [...groups.values()].flat().flatMap(linesOf)) taken.addLine(each);
  const unplaced: string[] = [];
  const crowded = mat.openings.length > CROWDED;
  const keep = (found: { readonly candidate: Candidate; readonly box: Box }, why: AvoidBox['why']): void => {
    for (const { group, item } of placed(found.candidate.block, found.candidate.quarter, found.candidate.at))
      add(group, item);
    taken.addBox(found.box);
    avoid.push({ why, box: found.box });
  };
  /** A leader from words to where they belong, unless other words stand in its way. */
  const lead = (area: Box, target: Point): boolean => {
    const near = nearestOf(area, target);
    const gap = 0.6 / Math.max(1.2, distance(target, near));
    const leader = { from: between(near, target, gap), to: between(target, near, gap) };
    if (taken.crossesWords(leader)) return false;
    add('leaders', line('leader', leader.from, leader.to));
    taken.addLine({ ...leader, half: PENS.leader!.width / 2 });
    return true;
  };
  /** Beside its place, or farther off with a leader to it; `target` is that place, for words that may stand off. */
  const set = (
    what: string,
    candidates: Iterable<Candidate>,
    why: AvoidBox['why'],
    target?: Point,
    farther: Iterable<Candidate> = [],
  ): void => {
    const found = firstFree(candidates, paper, taken, GAP);
    if (found !== undefined) {
      if (target !== undefined && distance(nearestOf(found.box, target), target) > STANDS_OFF) lead(found.box, target);
      keep(found, why);
      return;
    }
    for (const candidate of farther) {
      const free = firstFree([candidate], paper, taken, GAP);
      if (free === undefined || !lead(free.box, target!)) continue;
      keep(free, why);
      return;
    }
    unplaced.push(what);
  };

  for (const each of curved)
    for (const { lines, at } of each.words) {
      const sizes = [4.5, 3.6, 3, 2.5].map((size) =>
        once(() => textBlock(lines.map((text) => ({ group: 'curves', text, size, weight: 'regular' as const })))),
      );
      const inside = grown(each.box, -2);
      const places = sizes.flatMap((block) => [() => closeTo(block(), at, inside), () => scan(block(), 0, inside)]);
      const far = sizes.slice(2).map((block) => () => around(block(), 0, at, 120));
      set(`hand work of opening ${each.opening}`, chained(places), 'text', at, chained(far));
    }
  const sizes = crowded ? [3.6, 2.6, 2] : [7, 5, 3.6, 2.6];
  for (const t of ticks) {
    const name = `${t.letter} of stroke ${t.stroke.order}`;
    set(name, letterPlaces(t.item.from, t.out, t, sizes), 'tick');
    if (distance(t.item.to, t.letter === 'S' ? t.stroke.start : t.stroke.stop) > 12)
      set(name, letterPlaces(t.item.to, times(t.out, -1), t, sizes), 'tick');
  }
  for (const s of own) {
    const out = outward(s, job.bench.head.opening);
    const upright = uprightFor(s.direction);
    const along = ((upright + 3) % 4) as Quarter;
    const middle = between(s.line.from, s.line.to, 0.5);
    const clear = Math.min(across(board, out), taken.clearance(plus(middle, times(out, 0.2)), out, 400));
    const reach = mat.openings.length === 1 ? across(board, out) : clear;
    const depth = Math.min(REACH_INSIDE, across(cutBoxes.get(s.opening)!, out));
    const places = (crowded ? [] : SCALES).flatMap((scale) => {
      const standing = once(() => strokeBlock(s, scale, true));
      const lying = once(() => strokeBlock(s, scale, false));
      return [
        () => besideSide(standing(), s.line, out, upright, 4, reach),
        () => besideSide(lying(), s.line, out, along, 4, reach),
        () => besideSide(standing(), s.line, times(out, -1), upright, 4, depth),
        () => besideSide(lying(), s.line, times(out, -1), along, 4, depth),
      ];
    });
    const small = SMALL_SIZES.map((size) => once(() => smallBlock(s, size)));
    places.push(
      ...small.flatMap((block) => [
        () => besideSide(block(), s.line, times(out, -1), upright, 2, depth),
        () => besideSide(block(), s.line, times(out, -1), along, 2, depth),
        () => besideSide(block(), s.line, out, upright, 2, Math.min(reach, 60)),
        () => besideSide(block(), s.line, out, along, 2, Math.min(reach, 60)),
      ]),
    );
    const far = small.slice(1).map((block) => () => around(block(), upright, middle, 140));
    set(`number and reading of stroke ${s.order}`, chained(places), 'reading', middle, chained(far));
  }
  for (const { what, lines, box: around_ } of lettered) {
    const blocks = [4.5, 3.6, 3].map((size) =>
      once(() => textBlock(lines.map((text) => ({ group: 'curves', text, size, weight: 'regular' as const })))),
    );
    const at = point(around_.x + around_.width / 2, bottom(around_));
    const near = blocks.map((block) => () => closeTo(block(), at, paper, 60));
    set(what, chained(near), 'text', at, chained(blocks.map((block) => () => around(block(), 0, at, 200))));
  }
  if (layer === 0) {
    for (const { what, lines, at } of decorWords(mat, job, AROUND)) {
      const blocks = [4.5, 3.6, 3].map((size) =>
        once(() => textBlock(lines.map((text) => ({ group: 'decor', text, size, weight: 'regular' as const })))),
      );
      const far = blocks.map((block) => () => around(block(), 0, at, 200));
      set(what, chained(blocks.map((block) => () => closeTo(block(), at, paper, 60))), 'text', at, chained(far));
    }
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
  const warnings = noRoom(unplaced, mat.layers[layer]!.name);
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
    ...(s.bar === undefined ? {} : { bar: move(s.bar) }),
  };
}

function noRoom(unplaced: readonly string[], name: string): readonly Problem[] {
  const hint = 'it stands on sheet 1 and in the check command instead';
  const told =
    unplaced.length > 6 ? [`${unplaced.length} words, among them ${unplaced.slice(0, 3).join(', ')}`] : unplaced;
  return told.map((what) =>
    warning('label-without-room', ['mat'], `no room on the ${name}'s pattern for: ${what}`, hint),
  );
}

/** The box of each opening's line to follow. */
function openingBoxes(own: readonly Stroke[], curved: ReturnType<typeof curves>): ReadonlyMap<number, Box> {
  const boxes = new Map<number, Box>();
  const add = (opening: number, part: Box): void => {
    const known = boxes.get(opening);
    boxes.set(opening, known === undefined ? part : union([known, part]));
  };
  for (const s of own) add(s.opening, lineBox(s.line));
  for (const each of curved) add(each.opening, each.box);
  return boxes;
}

function usesPen(groups: ReadonlyMap<string, readonly Item[]>, pen: string): boolean {
  return [...groups.values()].some((items) =>
    items.some((item) => (item.kind === 'line' || item.kind === 'path') && item.pen === pen),
  );
}
