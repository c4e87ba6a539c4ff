import type { Stroke } from '../../bench/model.ts';
import { mostUncut } from '../../bench/uncut.ts';
import { dropsThrough } from '../../bench/work/lot-steps.ts';
import type { Job } from '../../job/job.ts';
import { theNamed } from '../../mat/layers.ts';
import type { Mat } from '../../mat/model.ts';
import { printDecimal, showLength, showSize } from '../../units/print.ts';
import { reverseCornerWords } from '../words/reverse-corners.ts';

const offset = (at: readonly { offset: number }[]): string =>
  at.map((one) => `${printDecimal(one.offset, 'mm', 2).text}`).join(' / ');

/** `Head pull-45: start 1.2 mm, stop -0.4 mm, overrun 0.25 mm`, or that it was never calibrated. */
export function headWords(job: Job): string {
  const { head } = job.bench;
  const overrun = `overrun ${printDecimal(head.overrun, 'mm', 2).text} mm`;
  if (!head.calibrated) return `Head ${head.id}: UNCALIBRATED, ${overrun}`;
  return `Head ${head.id}: start ${offset(head.start)} mm, stop ${offset(head.stop)} mm, ${overrun}`;
}

export function bevelWords(mat: Mat, layer: number): string {
  const { bevel } = mat.layers[layer]!;
  if (bevel.angle === 90) return 'square cut';
  return `${bevel.reverse ? 'REVERSE bevel' : 'bevel'} ${printDecimal(bevel.angle, 'mm', 1).text}°`;
}

/** `top mat: Bone, 1.4 mm, bevel 45°`. */
export function layerWords(mat: Mat, layer: number): string {
  const { name, board } = mat.layers[layer]!;
  return `${name}: ${board.name}, ${printDecimal(board.thickness, 'mm', 2).text} mm, ${bevelWords(mat, layer)}`;
}

export function transferWords(job: Job): string {
  return job.print.transfer === 'prick'
    ? 'Prick through, take the paper off'
    : `Cut through: paper of ${printDecimal(job.print.paperThickness, 'mm', 2).text} mm stays on`;
}

/** What sheet 1 says of laying the pattern on and cutting by it. */
export function instructions(
  mat: Mat,
  strokes: readonly Stroke[],
  job: Job,
  layer: number,
  extent: 'whole' | 'corners',
): readonly string[] {
  const { name, blank, trimBack } = mat.layers[layer]!;
  const { units } = job;
  const together = job.bench.stack === 'together' && layer > 0;
  const steps = [
    together
      ? `Cut ${theNamed(name)}'s blank to ${showSize(blank, units)} and fix it face down to the back of the mat above, ${showLength(trimBack, units)} short of every edge; this pattern is laid to the TOP MAT's edges.`
      : `Cut ${theNamed(name)}'s blank to ${showSize(blank, units)} exactly and square; the pattern is only as true as the blank.`,
    extent === 'whole'
      ? "Join the sheets, if several; trim the paper along the short grey dashes, inside the board's edge. Leave the tabs: their ends lie flush with the edge, pointer on the edge."
      : "Trim each sheet along the short grey dashes, inside the board's edge. Leave the tabs: their ends lie flush with the two edges of its corner, pointers on the edges.",
    'Lay it on the BACK, this side up, TOP where the top of the picture will be. Low-tack tape only: none over an edge, and no lap of paper where the head or its guide runs.',
    job.print.transfer === 'prick'
      ? 'Prick with a needle through both ends of every solid line and where each S and E tick meets it. Take the paper off, rule the lines lightly, mark S and E.'
      : 'Stick the paper down all over: a loose edge lifts the head. The solid lines allow for the thickness of the paper.',
    `Cut in the order of the numbers, each from S to E: scribe on S, blade in, along the line until the scribe is on E. ${headWords(job)}.`,
  ];
  const changed = mat.changed ?? [];
  if (changed.length > 0)
    steps.push(
      `Changed by what was cut: ${changed.map((each) => `${each.what} ${showLength(each.to, units)} (planned ${showLength(each.from, units)})`).join('; ')}.`,
    );
  const { spacer } = job.mat.layers[layer]!;
  if (spacer !== undefined)
    steps.push(
      `Fix it on spacers of ${showLength(spacer, units)} behind the mat above, clear of every opening: seen from straight ahead nothing changes.`,
    );
  const hidden = mat.openings.filter((opening) => opening.layers[layer]!.hidden === true).map(({ name: of }) => of);
  if (hidden.length > 0)
    steps.push(`Nothing of ${name} is seen in ${hidden.join(', ')}: it is cut back behind the mat above there.`);
  if (layer === 0 && job.openings.some((opening) => (opening.decor ?? []).length > 0))
    steps.push(
      'Grooves and ink lines are made on the FACE, before the openings are cut, by the pattern of the face: do not prick them through from here.',
    );
  if (together) {
    const above = mat.layers[layer - 1]!;
    const slip = dropsThrough(above)
      ? 'Put the fallout of the mat above back in its place first: it is the slip sheet.'
      : `Lay waste board of ${showLength(above.board.thickness, 'mm')} loose in the opening above first, as the slip sheet: a reverse bevel’s own fallout could not drop out again.`;
    steps.push(`${slip} Set the depth for this board alone.`);
  }
  const freed = reverseCornerWords(mostUncut(strokes, layer + 1));
  if (freed.length > 0) steps.push(freed.join(' '));
  steps.push(
    "Sharp blade on a firm surface; hands never in its path; spent blades into a puncture-proof box. The cutter's own manual comes first.",
  );
  return steps;
}
