import { point } from '../../../geometry/point.ts';
import { setback } from '../../../mat/bevel.ts';
import { area, BOARD, box4, label, measure, sketch, stroke, UNDER } from '../sketch.ts';

const BEVEL = { angle: 45, reverse: false };
const [SET_AT, THICKER] = [12, 20];
const [GUIDE, ENTRY, BACK] = [24, 110, 22];

/** Two boards under the bar, back up, in section: the blade enters at one place, and comes out nearer to the guide on the thicker one. */
export function guide() {
  const face = (thickness: number) => ENTRY - setback(thickness, BEVEL);
  const board = (thickness: number) => [
    point(GUIDE, BACK),
    point(ENTRY, BACK),
    point(face(thickness), BACK + thickness),
    point(GUIDE, BACK + thickness),
  ];
  const [low, high] = [face(THICKER), face(SET_AT)];
  return sketch('Guide and thickness', 168, 72, [
    area(UNDER, board(THICKER), 'fine'),
    area(BOARD, board(SET_AT), 'line'),
    area(0.3, box4(GUIDE - 6, BACK - 4, 6, 30)),
    label('guide', GUIDE - 3, BACK - 6, { anchor: 'middle' }),
    area(0.9, box4(62, BACK - 9, 40, 9), 'line'),
    label('bar', 82, BACK - 3, { anchor: 'middle' }),
    stroke('wrong', point(ENTRY + 10, BACK - 10), point(low, BACK + THICKER)),
    label('blade', ENTRY + 12, BACK - 8),
    label('back', 30, BACK + 4),
    stroke('fine', point(ENTRY + 8, BACK + SET_AT), point(high + 1, BACK + SET_AT)),
    label('face, thickness t ref', ENTRY + 9, BACK + SET_AT + 1),
    stroke('fine', point(ENTRY + 8, BACK + THICKER), point(low + 1, BACK + THICKER)),
    label('face, thickness t', ENTRY + 9, BACK + THICKER + 1),
    stroke('hidden', point(high, BACK + SET_AT), point(high, BACK + 42)),
    stroke('hidden', point(low, BACK + THICKER), point(low, BACK + 36)),
    stroke('hidden', point(GUIDE, BACK + 26), point(GUIDE, BACK + 42)),
    ...measure(point(GUIDE, BACK + 33), point(low, BACK + 33), 'distance', point(0, -1.2)),
    ...measure(
      point(GUIDE, BACK + 40),
      point(high, BACK + 40),
      'true setting = distance + (t − t ref) · cot θ',
      point(16, 5),
    ),
  ]);
}
