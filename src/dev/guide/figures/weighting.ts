import { point } from '../../../geometry/point.ts';
import { solveJob } from '../../../outputs/solve-job.ts';
import { showProblem } from '../../../problems/show.ts';
import { mmFromInches } from '../../../units/units.ts';
import { area, BOARD, box4, CORE, heading, label, measure, sketch, stroke } from '../sketch.ts';

const SCALE = 0.16;

/** One mat of 11 × 14 in with a window of 7 1/2 × 9 1/2 in, weighted as it is asked for. */
function mat(left: number, weighting: string, title: string) {
  const solved = solveJob(`{mat: {outer: 11 x 14, weighting: ${weighting}}, openings: [{size: 7 1/2 x 9 1/2}]}`);
  if (!solved.ok) throw new Error(solved.problems.map(showProblem).join('\n'));
  const { outer, border } = solved.value.mat;
  const { faceBox } = solved.value.mat.openings[0]!.layers[0]!;
  const top = 12;
  const at = (mm: number) => mm * SCALE;
  const window = box4(left + at(faceBox.x), top + at(faceBox.y), at(faceBox.width), at(faceBox.height));
  const middle = left + at(outer.width / 2);
  const shown = (mm: number) => String(Number((mm / mmFromInches(1)).toFixed(3)));
  return [
    heading(title, left, 7),
    area(BOARD, box4(left, top, at(outer.width), at(outer.height)), 'line'),
    area(CORE, window, 'line'),
    stroke('fine', point(middle, top), point(middle, top + at(border.top))),
    label(shown(border.top), middle + 1, top + at(border.top) / 2 + 1.2),
    stroke('fine', point(middle, top + at(outer.height - border.bottom)), point(middle, top + at(outer.height))),
    label(shown(border.bottom), middle + 1, top + at(outer.height - border.bottom / 2) + 1.2),
    ...measure(point(left, top + 28), point(left + at(border.left), top + 28), '', point(0, 0)).slice(0, 3),
    label(shown(border.left), left + 0.6, top + 26.5),
  ];
}

export const weighting = () =>
  sketch('Weighting, 11 × 14 in', 172, 72, [
    mat(4, 'none', 'none'),
    mat(62, '{add: 1/2}', 'add 1/2 in'),
    mat(120, 'diagonal', 'diagonal'),
  ]);
