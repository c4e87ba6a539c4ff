import { hingeSide } from '../../bench/hinges.ts';
import type { Stroke } from '../../bench/model.ts';
import type { FullScale } from '../../drawing/full-scale.ts';
import type { Drawing } from '../../drawing/model.ts';
import { once } from '../../drawing/once.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, box, grown, union } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { theLayer } from '../../mat/layers.ts';
import type { Mat } from '../../mat/model.ts';
import { labelBlock } from '../../text/block.ts';
import { LEAD_IN, stepsDown } from '../../text/styles.ts';
import { drawBoard, drawHinge, facts } from './board.ts';
import { curves } from './curves.ts';
import { decorLines, decorWords } from './decor.ts';
import { alongHinge, around, bands, nearTop, scan } from './labels.ts';
import { letteredBack } from './lettering.ts';
import { CROWDED_PENS, LEGEND, lineBox, PENS, TRIM_INSET } from './lines.ts';
import { noteBlocks } from './notes.ts';
import { chained, closeTo } from './places.ts';
import { foot, innerStrips, PatternSheet } from './sheet.ts';
import { shifted } from './shifted.ts';
import { REACH_INSIDE, strokeWords, tickLetters } from './stroke-words.ts';
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
 * The full-scale pattern of one layer (from 0) in the back view. `strokes` are those of the whole mat.
 * Words that find no room are named in a warning and not drawn.
 */
export function pattern(mat: Mat, strokes: readonly Stroke[], job: Job, layer: number, how: PatternOptions): FullScale {
  const { fonts, extent = 'whole' } = how;
  const board = box(AROUND, AROUND, mat.outer.width, mat.outer.height);
  const own = strokes.filter((s) => s.layer === layer + 1).map((s) => shifted(s, point(AROUND, AROUND)));
  const inset = TRIM_INSET + (job.bench.stack === 'together' ? mat.layers[layer]!.trimBack : 0);
  const paper = grown(board, -inset);
  const sheet = new PatternSheet(paper, fonts);
  const { add } = sheet;
  const crowded = mat.openings.length > CROWDED;
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
  const ticks = drawStrokes(own, job, paper, cutBoxes, curved, add, sheet.avoid, crowded);

  sheet.endOfLines();
  for (const each of curved)
    for (const { lines, at } of each.words) {
      const sizes = stepsDown(LEAD_IN).map((style) =>
        once(() =>
          labelBlock(
            lines.map((text) => ({ group: 'curves', text, style })),
            fonts,
          ),
        ),
      );
      const inside = grown(each.box, -2);
      const places = sizes.flatMap((block) => [() => closeTo(block(), at, inside), () => scan(block(), 0, inside)]);
      const far = sizes.slice(2).map((block) => () => around(block(), 0, at, 120));
      sheet.set(`hand work of opening ${each.opening}`, chained(places), 'text', at, chained(far));
    }
  tickLetters(sheet, ticks, crowded);
  strokeWords(sheet, own, job, board, cutBoxes, { crowded, alone: mat.openings.length === 1, view: 'back' });
  for (const { what, lines, box: area } of lettered) sheet.setWords(what, 'curves', lines, foot(area));
  if (layer === 0)
    for (const { what, lines, at } of decorWords(mat, job, AROUND)) sheet.setWords(what, 'decor', lines, at);
  const words = noteBlocks(mat, job, layer, paper, fonts);
  const band = bands(paper, cutBox);
  const inner = grown(cutBox, -3);
  const [innerUpper, innerLower] = innerStrips(inner, REACH_INSIDE);
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
    sheet.set(note.name, chained(places), 'text');
  }

  const drawing: Drawing = {
    title: `${job.title}: ${mat.layers[layer]!.name}`,
    width: mat.outer.width + 2 * AROUND,
    height: mat.outer.height + 2 * AROUND,
    view: 'back',
    pens: crowded ? CROWDED_PENS : PENS,
    groups: sheet.groups(),
  };
  return {
    drawing,
    board,
    avoid: sheet.avoid,
    facts: facts(board, own, job),
    legend: LEGEND.filter(({ pen }) => sheet.usesPen(pen)),
    instructions: instructions(mat, own, job, layer, extent),
    warnings: sheet.noRoom(`${theLayer(layer)}'s pattern`),
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
