import { type GrooveStroke, grooveStrokes } from '../../bench/grooves.ts';
import type { Stroke } from '../../bench/model.ts';
import { beyondCorners, offsetsOn } from '../../bench/offsets.ts';
import { runOn } from '../../bench/strokes.ts';
import { mostUncut } from '../../bench/uncut.ts';
import { THICK } from '../../bench/work/lots.ts';
import type { Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { grooveDepth } from '../../mat/decor.ts';
import { theNamed } from '../../mat/layers.ts';
import type { Mat, MatLayer } from '../../mat/model.ts';
import { sentenceCase } from '../../problems/sentence-case.ts';
import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { letteringWords } from '../pattern/lettering.ts';
import { settingWords } from '../pattern/reading-words.ts';
import { bevelWords } from '../pattern/words.ts';
import { length, sides, size } from '../proof/words.ts';
import { reverseCornerWords } from '../words/reverse-corners.ts';

/** Millimetres to the hundredth: what a caliper reads and a head is set by, whatever the job's unit. */
export const fine = (mm: number): string => `${printDecimal(mm, 'mm', 2).text} mm`;

export const layerTitle = ({ name }: MatLayer): string => sentenceCase(name);

/** Thicknesses of the mat's boards, each once, thinnest first. */
function thicknesses(mat: Mat): readonly number[] {
  return [...new Set(mat.layers.map(({ board }) => board.thickness))].sort((a, b) => a - b);
}

/** Where the scribe starts and stops, as lengths beyond the corners of the face opening: positive is outside it. */
function corrections({ bench: { head } }: Job, thickness: number) {
  const { before, after } = beyondCorners(offsetsOn(head, thickness), head.overrun);
  return { thickness, before, past: after, overrun: head.overrun };
}

/** What is set before the first cut. */
export function setUpSteps(mat: Mat, job: Job, strokes: readonly Stroke[]): readonly string[] {
  const { head } = job.bench;
  const all = thicknesses(mat);
  const depths = all.map((t) => {
    const layer = mat.layers.find(({ board }) => board.thickness === t)!;
    const along = layer.bevel.angle === 90 ? '' : ` (${fine(layer.bevelFace)} along the blade)`;
    return `${fine(t)}${along}`;
  });
  const marks = all.map((t) => {
    const { before, past } = corrections(job, t);
    const which = all.length === 1 ? '' : `${fine(t)} board: `;
    return `${which}start ${beyond(before, 'before', 'after')}, stop ${beyond(past, 'past', 'before')}`;
  });
  const state = head.calibrated
    ? `Head ${head.id}${known(head.blade, ', blade ')}${known(head.depth, ', depth ')}${known(head.date, ', calibrated ')}`
    : `Head ${head.id}, NOT CALIBRATED`;
  return [
    `Blade depth ${depths.join('; ')}: through one board, just scratching the slip sheet of waste board under it.`,
    `${state}. Face corners: ${marks.join('; ')}; overrun of ${fine(head.overrun)} in it.${runOnWords(strokes)}`,
    `Test corner on an offcut of ${mat.layers[0]!.board.name}: no hook, no long overcut.`,
  ];
}

/** Where the ticks lie farther out than head and overrun ask for. */
function runOnWords(strokes: readonly Stroke[]): string {
  const most = Math.max(0, ...strokes.map(runOn).flatMap(({ before, after }) => [before, after]));
  if (most < 0.005) return '';
  return ` Where the mat points into the opening, up to ${fine(most)} more, into the fallout.`;
}

const known = (text: string | undefined, before: string): string => (text === undefined ? '' : `${before}${text}`);
const angle = ({ bevel }: MatLayer): string => `${printDecimal(bevel.angle, 'mm', 1).text}°`;

const beyond = (mm: number, outside: string, within: string): string =>
  Math.abs(mm) < 0.005 ? 'at the corner' : `${fine(Math.abs(mm))} ${mm > 0 ? outside : within} it`;

/** What a layer is made of. */
export function layerLine(mat: Mat, index: number): string {
  const { board } = mat.layers[index]!;
  return `${board.name}, ${fine(board.thickness)}, ${bevelWords(mat, index)}`;
}

/** What a layer needs beside its settings; nothing for the usual one. */
export function layerSteps(mat: Mat, job: Job, index: number, strokes: readonly Stroke[]): readonly string[] {
  const layer = mat.layers[index]!;
  const { board, bevel, setback, name } = layer;
  const steps: string[] = [];
  if (index === 0) steps.push(...grooveSteps(mat, job));
  if (bevel.reverse) {
    steps.push(
      `Reverse bevel: lay the FAR edge on the guide, so that the opening lies under the bar. The line on the back lies ${fine(setback)} outside the face line, and the strokes run the other way round.`,
    );
    const freed = reverseCornerWords(mostUncut(strokes, index + 1));
    if (freed.length > 0) steps.push(freed.join(' '));
  }
  if (bevel.angle === 90) steps.push('Square cut: blade upright; the line on the back is the face line.');
  else if (bevel.angle !== job.bench.head.bevel) {
    steps.push(`This bevel is ${angle(layer)}: head ${job.bench.head.id} is for ${job.bench.head.bevel}°.`);
  }
  if (board.thickness >= THICK) {
    steps.push(
      `Thick board, two passes: depth ${fine(board.thickness / 2)} for all strokes of this layer, then ${fine(board.thickness)} with the same settings and marks.`,
    );
  }
  const curved = mat.openings.filter(
    ({ layers }) =>
      layers[index]!.hidden !== true && layers[index]!.face.segments.some((segment) => segment.kind !== 'line'),
  );
  for (const opening of curved) {
    const { faceBox, backBox } = opening.layers[index]!;
    steps.push(
      `${sentenceCase(opening.name)} (${opening.shape}): the curves are cut by the pattern; ${size(faceBox, job.units)} on the face, line on the back ${size(backBox, job.units)}.`,
    );
  }
  if (index === 0) {
    for (const lettering of mat.lettering ?? []) {
      const [how, ...held] = letteringWords(lettering, job);
      steps.push(`Lettering ${[how, ...held, `${size(lettering.box, job.units)} over all`].join('; ')}.`);
    }
  }
  const above = mat.layers[index - 1];
  if (above !== undefined && job.bench.stack === 'together' && above.board.thickness !== board.thickness) {
    steps.push(
      `Set the depth again: ${fine(board.thickness)} after ${fine(above.board.thickness)}, for ${theNamed(name)} alone.`,
    );
  }
  return steps;
}

/** Lines on the face of the top mat, before its openings are cut. */
function grooveSteps(mat: Mat, job: Job): readonly string[] {
  const strokes = grooveStrokes(mat, job);
  return mat.openings.flatMap((opening, i) =>
    (job.openings[i]?.decor ?? []).flatMap((line, k): string[] => {
      const { border } = opening.layers[0]!;
      const from = (side: Side): number => border[side] - line.distance;
      const along = line.sides === undefined ? 'all round' : `along ${line.sides.join(', ')}`;
      const edges =
        line.sides === undefined
          ? sides({ top: from('top'), right: from('right'), bottom: from('bottom'), left: from('left') }, job.units)
          : line.sides.map((side) => `${side} ${length(from(side), job.units)}`).join(', ');
      const where = `${along}, ${length(line.distance, job.units)} outside the face of ${opening.name}; edge to its middle ${edges}, on the FACE`;
      if (line.kind === 'ink') return [`Ink line of ${fine(line.width)} ${where}. Rule it before the opening is cut.`];
      const own = strokes.filter((s) => s.opening === i + 1 && s.number === k + 1);
      const passes = ([1, 2] as const).flatMap((pass) => passStep(own, pass));
      return [
        `V-groove ${where}, before the opening is cut: two passes face up at ${line.angle}°, ${fine(line.width / 2)} to either side of the middle and ${fine(grooveDepth(line))} deep where they meet${own.length === 0 ? ', by template or machine' : ''}. Try it on an offcut.`,
        ...passes,
      ];
    }),
  );
}

/** Readings of one pass, sides named from the face, which is up. */
function passStep(own: readonly GrooveStroke[], pass: 1 | 2): readonly string[] {
  const strokes = own.filter((s) => s.pass === pass);
  if (strokes.length === 0) return [];
  const edge = pass === 1 ? 'near edge' : 'far edge';
  const readings = strokes.map(
    (s) =>
      `${s.order} ${s.side} ${settingWords(s)}${s.setting.sense === 'exact' || s.beyondGuide ? '' : ` ${s.setting.sense}`}`,
  );
  return [
    `Groove, pass ${pass}, the ${edge} on the guide, FACE up, sides as seen from it: ${readings.join('; ')}. Marks by the pattern of the face.`,
  ];
}

/** How the under mat `index` comes behind the mat above it, before it is cut (together). */
export function assemblySteps(mat: Mat, job: Job, index: number): readonly string[] {
  const { units } = job;
  const [above, under] = [mat.layers[index - 1]!, mat.layers[index]!];
  const where = `${length(under.trimBack, units)} short of every edge`;
  const fix = `face to the back of ${theNamed(above.name)}${spacerOf(job, index)}, ${where}`;
  const set = `From the TOP MAT’s outer edges set border + reveals (${revealOf(mat, index, units)}), as below.`;
  if (index > 1) {
    return [
      `${sentenceCase(above.name)} face down, its fallout back in place as before. Fix ${theNamed(under.name)} (${size(under.blank, units)}) ${fix}, one piece of tape on the fallout.`,
      `${set} Cut, and lift all fallouts out.`,
    ];
  }
  return [
    `${sentenceCase(above.name)} face down, its fallout back in place: the slip sheet.`,
    `Fix ${theNamed(under.name)} (${size(under.blank, units)}) ${fix}. A few short pieces of double-sided tape clear of the cut, one of them on the fallout.`,
    `${set} Cut, then lift both fallouts out together.`,
  ];
}

/** The boards cut one by one, then joined. */
export function joiningSteps(mat: Mat, job: Job): readonly string[] {
  return mat.layers.slice(1).map((under, i) => {
    const above = mat.layers[i]!;
    const short = under.trimBack > 0 ? `${length(under.trimBack, job.units)} short of every edge` : 'all edges flush';
    return `Lay ${theNamed(under.name)} face to the back of ${theNamed(above.name)}${spacerOf(job, i + 1)}, ${short}; look at the reveals from the face (${revealOf(mat, i + 1, job.units)}), then fix with double-sided tape clear of the opening.`;
  });
}

function spacerOf(job: Job, index: number): string {
  const { spacer } = job.mat.layers[index] ?? {};
  return spacer === undefined ? '' : `, a spacer of ${fine(spacer)} between them`;
}

/** The reveal of a layer where all openings agree on it, else that they differ. */
function revealOf(mat: Mat, index: number, units: Units): string {
  const said = [...new Set(mat.openings.map(({ layers }) => sides(layers[index]!.reveal, units)))];
  return said.length === 1 ? `reveal ${said[0]}` : 'reveals differ by opening, see the checks';
}
