import type { Stroke } from '../../bench/model.ts';
import { beyondCorners, offsetsOn } from '../../bench/offsets.ts';
import { runOn } from '../../bench/strokes.ts';
import type { Lot } from '../../bench/work/model.ts';
import type { Job } from '../../job/job.ts';
import type { Mat, MatLayer } from '../../mat/model.ts';
import { sentenceCase } from '../../problems/sentence-case.ts';
import { boardTitle } from '../../shop/board.ts';
import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { bevelWords } from '../pattern/words.ts';
import { fine } from '../words/fine.ts';
import { strokeSentence } from '../words/stroke-movements.ts';

export const layerTitle = ({ name }: MatLayer): string => sentenceCase(name);

/** Thicknesses of the mat's boards, each once, thinnest first. */
function thicknesses(mat: Mat): readonly number[] {
  return [...new Set(mat.layers.map(({ board }) => board.thickness))].sort((a, b) => a - b);
}

/** What is set or known before the first cut: the head with its marks, the movements of a stroke, a test. */
export function setUpSteps(mat: Mat, job: Job, strokes: readonly Stroke[]): readonly string[] {
  const { bench, units } = job;
  const { head } = bench;
  const all = thicknesses(mat);
  const marks = all.map((t) => {
    const { before, after } = beyondCorners(offsetsOn(head, t), head.overrun);
    const which = all.length === 1 ? '' : `${fine(t, units)} board: `;
    return `${which}start ${beyond(before, 'before', 'after', units)}, stop ${beyond(after, 'past', 'before', units)}`;
  });
  const state = head.calibrated
    ? `Head ${head.id}${known(head.blade, ', blade ')}${known(head.depth, ', depth ')}${known(head.date, ', calibrated ')}`
    : `Head ${head.id}, NOT CALIBRATED`;
  return [
    `${state}. Face corners: ${marks.join('; ')}; overrun of ${fine(head.overrun, units)} in it.${runOnWords(strokes, units)}`,
    strokeSentence(head),
    `Test corner on an offcut: no hook, no long overcut.`,
  ];
}

/** Where the ticks lie farther out than head and overrun ask for. */
function runOnWords(strokes: readonly Stroke[], units: Units): string {
  const most = Math.max(0, ...strokes.map(runOn).flatMap(({ before, after }) => [before, after]));
  if (most < 0.005) return '';
  return ` Where the mat points into the opening, up to ${fine(most, units)} more, into the fallout.`;
}

const known = (text: string | undefined, before: string): string => (text === undefined ? '' : `${before}${text}`);

const beyond = (mm: number, outside: string, within: string, units: Units): string =>
  Math.abs(mm) < 0.005 ? 'at the corner' : `${fine(Math.abs(mm), units)} ${mm > 0 ? outside : within} it`;

/** What a layer is made of. */
export function layerLine(mat: Mat, index: number, units: Units): string {
  const { board } = mat.layers[index]!;
  return `${boardTitle(board)}, ${fine(board.thickness, units)}, ${bevelWords(mat, index)}`;
}

/** What is unusual about cutting a lot. */
export function cutNotes(
  lot: Lot,
  { mat, job }: { readonly mat: Mat; readonly job: Job },
  strokes: readonly Stroke[],
): readonly string[] {
  if (lot.work === 'groove') return [];
  const { bevel, setback } = mat.layers[lot.layer - 1]!;
  const notes: string[] = [];
  if (bevel.reverse) {
    const guided = strokes.some(({ beyondGuide }) => !beyondGuide)
      ? 'lay the FAR edge on the guide, the opening under the bar'
      : 'the opening lies on the other hand of the head';
    notes.push(
      `Reverse bevel: ${guided}; line ${fine(setback, job.units)} outside the face line, strokes the other way round.`,
    );
  }
  if (bevel.angle === 90) notes.push('Square cut: blade upright; the line on the back is the face line.');
  else if (bevel.angle !== job.bench.head.bevel) {
    const { id, bevel: own } = job.bench.head;
    notes.push(`This bevel is ${printDecimal(bevel.angle, 'mm', 1).text}°: head ${id} is for ${own}°.`);
  }
  const [first, second] = lot.depths;
  if (second !== undefined) {
    notes.push(
      `Thick board, two passes at each setting: all its sides at a depth of ${fine(first!, job.units)} (left box), then all again at ${fine(second, job.units)} (right box).`,
    );
  }
  return notes;
}
