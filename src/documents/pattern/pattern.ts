import { hingeSide } from '../../bench/hinges.ts';
import type { Stroke } from '../../bench/model.ts';
import { type FullScale, usesPen } from '../../drawing/full-scale.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, grown, union } from '../../geometry/box.ts';
import { type Point, point } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { theLayer } from '../../mat/layers.ts';
import type { Mat } from '../../mat/model.ts';
import { defined } from '../../problems/defined.ts';
import type { Label } from '../full-scale/label.ts';
import { type Around, freePlaces, hingeLabel, noteLabel, topLabel } from '../full-scale/note-labels.ts';
import { FullScaleSheet } from '../full-scale/sheet.ts';
import { tapeChecks } from '../full-scale/tape-checks.ts';
import { cutDiagonals, drawBoard, drawHinge } from './board.ts';
import { curves } from './curves.ts';
import { decorLines, decorWords } from './decor.ts';
import { handWorkLabels, pointLabels } from './free-words.ts';
import { GROUPS, noRoom } from './groups.ts';
import { letteredBack } from './lettering.ts';
import { CROWDED_PENS, LEGEND, lineBox, PENS, TRIM_INSET } from './lines.ts';
import { backNote, hingeNote, sideNote, topNote } from './notes.ts';
import { readingTable } from './reading-table.ts';
import { restLabels } from './rest-labels.ts';
import { shifted } from './shifted.ts';
import { REACH_INSIDE, type StrokeSetting, strokeWords, tickLetters } from './stroke-words.ts';
import { drawStrokes } from './strokes.ts';
import { instructions } from './words.ts';

export interface PatternOptions {
  readonly fonts: Fonts;
  /** Whether the sheets are joined, or each laid on by a corner: the steps differ. */
  readonly extent?: 'whole' | 'corners';
}

/** Paper beyond the board's edge, so that its line is drawn whole. */
const AROUND = 1;
/** With more openings than this only short labels have room. */
const CROWDED = 24;
/**
 * The full-scale pattern of one layer (from 0) in the back view. `all` strokes are those of the whole mat.
 * Words that find no room are named in a warning and not drawn.
 */
export function pattern(mat: Mat, all: readonly Stroke[], job: Job, layer: number, how: PatternOptions): FullScale {
  const { fonts, extent = 'whole' } = how;
  const board = box(AROUND, AROUND, mat.outer.width, mat.outer.height);
  const own = all.filter((s) => s.layer === layer + 1).map((s) => shifted(s, point(AROUND, AROUND)));
  const inset = TRIM_INSET + (job.bench.stack === 'together' ? mat.layers[layer]!.trimBack : 0);
  const paper = grown(board, -inset);
  const sheet = new FullScaleSheet(paper, GROUPS);
  const { add } = sheet;
  const crowded = mat.openings.length > CROWDED;
  const pens = crowded ? CROWDED_PENS : PENS;
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
  const faceWords = layer === 0 ? decorWords(mat, job, AROUND) : [];
  const hinge = hingeSide(job, mat);
  const { ticks, rests } = drawStrokes(own, job, paper, cutBoxes, curved, add, sheet.avoid, crowded);

  // Sheets that are laid on by themselves are not joined: nothing is measured from one to another.
  const checks = extent === 'corners' ? undefined : tapeChecks(board, paper, job.units, sheet.clearOf(pens), 'check');
  add('check', ...(checks?.items ?? []));

  const name = `${theLayer(layer)}'s pattern`;
  const head = {
    title: `${job.title}: ${mat.layers[layer]!.name}`,
    width: mat.outer.width + 2 * AROUND,
    height: mat.outer.height + 2 * AROUND,
    view: 'back' as const,
    pens,
  };
  const alone = mat.openings.length === 1;
  const strokes: StrokeSetting = { job, board, paper, boxes: cutBoxes, crowded, alone, view: 'back', fonts };
  const notes = [sideNote('BACK', fonts), backNote(mat, job, layer, paper, fonts)];
  const surroundings: Around = { paper, cutBox, depth: REACH_INSIDE };
  const { drawing, words, warnings } = sheet.withWords(head, noRoom(name), function* (view, taken): Generator<Label> {
    const handWork = curved.flatMap((each) => handWorkLabels(each, view, fonts));
    const faceWork = [
      ...lettered.flatMap(({ what, lines, box: area }) =>
        pointLabels(what, 'curves', lines, foot(area), paper, view, fonts),
      ),
      ...faceWords.flatMap(({ what, lines, at }) => pointLabels(what, 'decor', lines, at, paper, view, fonts)),
    ];
    const noted = [
      topLabel(topNote(fonts), surroundings, view),
      ...notes.map((note, i) => noteLabel(note, freePlaces(surroundings), surroundings, view, i > 0 && !view.whole)),
      hingeLabel(hingeNote(fonts), hinge, surroundings, view),
    ];
    if (view.whole) yield* handWork;
    yield* tickLetters(ticks, view, crowded, fonts);
    yield* strokeWords(own, strokes, view, taken);
    yield* restLabels(rests, view, fonts);
    yield* view.whole ? [...faceWork, ...noted] : [...noted, ...handWork, ...faceWork];
  });
  return {
    drawing,
    words,
    board,
    avoid: sheet.avoid,
    facts: checks === undefined ? [] : [...checks.facts, ...cutDiagonals(own, job)],
    legend: LEGEND.filter(({ pen }) => usesPen(pen, drawing)),
    ...defined({ readings: own.length === 0 ? undefined : readingTable(own) }),
    instructions: instructions(mat, own, job, layer, extent),
    warnings: extent === 'corners' ? [] : warnings,
  };
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

/** A box's middle at its lower edge. */
const foot = (area: Box): Point => point(area.x + area.width / 2, bottom(area));
