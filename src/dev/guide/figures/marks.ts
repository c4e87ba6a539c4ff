import { beyondCorners } from '../../../bench/offsets.ts';
import { point } from '../../../geometry/point.ts';
import { area, arrow, CORE, label, measure, sketch, stroke } from '../sketch.ts';

/** Ten times its size at the ends; the side between them is cut short. */
const SCALE = 10;
const [FIRST, LAST, LINE] = [34, 128, 30];

/** One side along its stroke, from above the back: where the scribe starts and stops, and where the blade then cuts. */
export function marks() {
  const head = { start: 1.2, stop: -0.4 };
  const overrun = 0.25;
  const { before, after } = beyondCorners(head, overrun);
  const [start, stop] = [FIRST - before * SCALE, LAST + after * SCALE];
  const tick = (x: number, text: string) => [
    stroke('bold', point(x, LINE - 9), point(x, LINE + 9)),
    label(text, x, LINE - 11, { anchor: 'middle' }),
  ];
  return sketch('Start and stop marks', 166, 66, [
    area(CORE, [point(FIRST, LINE), point(LAST, LINE), point(LAST, LINE + 30), point(FIRST, LINE + 30)]),
    label('opening', (FIRST + LAST) / 2, LINE + 18, { anchor: 'middle' }),
    stroke('axis', point(8, LINE), point(158, LINE)),
    stroke('wrong', point(start + head.start * SCALE, LINE), point(stop + head.stop * SCALE, LINE)),
    ...tick(start, 'S'),
    ...tick(stop, 'E'),
    stroke('hidden', point(FIRST, LINE - 16), point(FIRST, LINE + 10)),
    stroke('hidden', point(LAST, LINE - 16), point(LAST, LINE + 10)),
    label('u = 0', FIRST, LINE - 18, { anchor: 'middle' }),
    label('u = L', LAST, LINE - 18, { anchor: 'middle' }),
    ...arrow(point(64, LINE - 6), point(98, LINE - 6)),
    label('travel of the head', 81, LINE - 8, { anchor: 'middle' }),
    ...measure(point(start, LINE + 13), point(start + head.start * SCALE, LINE + 13), 'e start', point(0, 5)),
    ...measure(point(stop + head.stop * SCALE, LINE + 13), point(stop, LINE + 13), 'e stop', point(0, 5)),
    label('red: what the blade cuts on the face', 81, LINE + 28, { anchor: 'middle' }),
  ]);
}
