import { point } from '../../../geometry/point.ts';
import { backInset, setback } from '../../../mat/bevel.ts';
import { area, BOARD, CORE, heading, label, measure, sketch, stroke } from '../sketch.ts';

const THICKNESS = 14;

/** One board in section, face up, its opening to the right. */
function section(left: number, angle: number, reverse: boolean, title: string) {
  const bevel = { angle, reverse };
  const [face, back] = [left + 40, left + 40 + backInset(THICKNESS, bevel)];
  const [top, bottom] = [22, 22 + THICKNESS];
  const width = setback(THICKNESS, bevel);
  const [a, b] = [Math.min(face, back), Math.max(face, back)];
  return [
    heading(title, left, 8),
    area(BOARD, [point(left, top), point(face, top), point(back, bottom), point(left, bottom)], 'line'),
    area(CORE, [point(face, top), point(back, bottom), point(back - 1, bottom), point(face - 1, top)], 'fine'),
    label('face', left + 2, top - 1.5),
    label('back', left + 2, bottom + 4.2),
    label('t', left + 6, (top + bottom) / 2 + 1, {}),
    stroke('fine', point(left + 4, top), point(left + 4, bottom)),
    stroke('hidden', point(face, top), point(face, bottom + 9)),
    stroke('hidden', point(back, bottom), point(back, bottom + 9)),
    ...measure(point(a, bottom + 8), point(b, bottom + 8), `s = ${width.toFixed(1)}`, point(0, 5)),
    label(`${angle}°`, reverse ? face - 4 : back - 9, reverse ? top + 5 : bottom - 1.2, {
      anchor: reverse ? 'end' : 'middle',
    }),
  ];
}

/** Three bevels on a board that is drawn 14 mm thick. */
export const setbacks = () =>
  sketch('Setback of a bevel', 182, 56, [
    section(4, 45, false, '45°'),
    section(66, 60, false, '60°'),
    section(128, 45, true, '45°, reverse'),
  ]);
