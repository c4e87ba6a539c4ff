import type { Item } from '../../drawing/model.ts';
import { box } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import { HEAD, LARGE, LARGE_BOLD } from '../../text/styles.ts';
import { type Gauge, gaugeJig, MAKING } from './gauge.ts';
import { contentArea, type JigEntry, line, rectangle, tooSmall } from './jig.ts';
import { steps, words } from './words.ts';

const SIDE = 165;
const CORNER = 16;
/** Degrees to both sides of the right angle, and from line to line. */
const [SPREAD, STEP] = [4, 0.5];
const [INNER, OUTER] = [100, 140];

/** A square card: its own corners are right angles, and a fan of lines says by how much another corner is not. */
function protractor(): Gauge {
  const origin = point(CORNER, SIDE - CORNER);
  const at = (degrees: number, radius: number) => {
    const a = (degrees * Math.PI) / 180;
    return point(origin.x + radius * Math.cos(a), origin.y - radius * Math.sin(a));
  };
  const marks: Item[] = [
    line('line', origin, point(SIDE - 4, origin.y), 'base'),
    line('line', point(origin.x - 5, origin.y), origin),
    line('line', point(origin.x, origin.y + 5), origin),
    words('one edge of the corner along this line', point(origin.x + 14, origin.y + 5), LARGE),
  ];
  const count = Math.round((2 * SPREAD) / STEP);
  for (let i = 0; i <= count; i++) {
    const degrees = 90 - SPREAD + i * STEP;
    const whole = Number.isInteger(degrees);
    // Lines to the left of the right angle would run off the card below the arc.
    const from = degrees === 90 ? 0 : INNER;
    marks.push(
      line(
        degrees === 90 ? 'line' : 'fine',
        at(degrees, from),
        at(degrees, whole ? OUTER : OUTER - 8),
        `angle-${degrees * 10}`,
      ),
    );
    if (degrees % 2 === 0)
      marks.push(words(`${degrees}`, at(degrees, OUTER + 2), degrees === 90 ? LARGE_BOLD : LARGE, 'middle'));
  }
  marks.push(words('corner protractor', point(origin.x + 14, origin.y - 30), HEAD));
  marks.push(words('degrees; every half is a line', point(origin.x + 14, origin.y - 24), LARGE));
  return { width: SIDE, height: SIDE, cut: [rectangle('cut', box(0, 0, SIDE, SIDE), 'outline')], marks };
}

export const PROTRACTOR: JigEntry = {
  kind: 'protractor',
  summary: 'a card that says how far a corner is from 90°',
  needs: 'nothing',
  make(context) {
    const area = contentArea(context);
    if (Math.min(area.width, area.height) < SIDE) return tooSmall(context, 'protractor', { width: SIDE, height: SIDE });
    return gaugeJig(context, {
      kind: 'protractor',
      title: 'Corner protractor',
      gauge: protractor(),
      entries: [
        { kind: 'title', text: 'Corner protractor' },
        { kind: 'text', text: 'For blanks, openings and frames: is a corner square, and if not by how much.' },
        ...steps([
          `${MAKING} Check its corners against a steel square.`,
          'Inside a rebate or an opening: push a corner of the card in. Light on one side tells that the corner is not square.',
          'A board or a sheet: lay its corner on the crossing, one edge along the lower line, and read where the other edge runs. A quarter of a degree is 1 mm on 9 in (1.0 mm on 230 mm).',
        ]),
      ],
    });
  },
};
