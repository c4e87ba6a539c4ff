import type { Item } from '../../drawing/model.ts';
import { box } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import { setback } from '../../mat/bevel.ts';
import { capHeight } from '../../text/line.ts';
import { HEAD, LARGE, LARGE_BOLD, TEXT } from '../../text/styles.ts';
import { showAmount, showLength } from '../../units/print.ts';
import { mmPer } from '../../units/units.ts';
import { type Gauge, gaugeJig, hole, MAKING } from './gauge.ts';
import { contentArea, type JigContext, type JigEntry, line, rectangle, tooSmall } from './jig.ts';
import { steps, words } from './words.ts';

const HOLE = 0.6;
const ROOM = 16;

/** Borders that the gauge marks: every quarter inch, or every five millimetres. */
function borders(context: JigContext, most: number): readonly number[] {
  const step = context.units === 'in' ? mmPer('in') / 4 : 5;
  const list: number[] = [];
  for (let n = 4; n * step <= most; n++) list.push(n * step);
  return list;
}

/** A square card that is pushed into the board's corner: a hole where the corner of each border lies, ticks on its edges. */
function cornerGauge(context: JigContext, list: readonly number[]): Gauge {
  const side = list.at(-1)! + ROOM;
  const step = list[1]! - list[0]!;
  // Neighbours leave room for each other’s numbers.
  const arm = Math.min(3.5, 0.36 * step);
  const bare = (mm: number) => showAmount(mm, context.units);
  const marks: Item[] = [];
  const cut: Item[] = [rectangle('cut', box(0, 0, side, side), 'outline')];
  list.forEach((border, i) => {
    const whole = Math.abs(border / (2 * step) - Math.round(border / (2 * step))) < 1e-6;
    const length = whole ? 9 : 5.5;
    marks.push(
      line('line', point(border, 0), point(border, length), `across-${i}`),
      line('line', point(0, border), point(length, border), `down-${i}`),
      line('fine', point(border - arm, border), point(border + arm, border)),
      line('fine', point(border, border - arm), point(border, border + arm)),
    );
    cut.push(hole('cut', point(border, border), HOLE, `hole-${i}`));
    marks.push(
      words(bare(border), point(border + arm + 0.9, border + capHeight(LARGE_BOLD, context.fonts) / 2), LARGE_BOLD),
    );
    if (whole) {
      marks.push(words(bare(border), point(border, length + 1 + capHeight(TEXT, context.fonts)), TEXT, 'middle'));
      marks.push(words(bare(border), point(length + 1, border + capHeight(TEXT, context.fonts) / 2), TEXT));
    }
  });
  const at = point(side - 3, 22);
  marks.push(words('border gauge', at, HEAD, 'end'));
  marks.push(words(`${context.units}; upper left corner flush`, point(at.x, at.y + 5.6), LARGE, 'end'));
  return { width: side, height: side, cut, marks };
}

export const CORNER_GAUGE: JigEntry = {
  kind: 'corner-gauge',
  summary: 'a card for the corner of a board, with a hole for the corner of each border',
  needs: 'nothing',
  make(context) {
    const area = contentArea(context);
    const list = borders(context, Math.min(area.width - ROOM, 110));
    if (list.length < 4) return tooSmall(context, 'corner-gauge', { width: 80, height: 80 });
    const bevel = { angle: context.head.bevel, reverse: false };
    const example = setback(1.4, bevel);
    return gaugeJig(context, {
      kind: 'corner-gauge',
      title: 'Border gauge',
      gauge: cornerGauge(context, list),
      entries: [
        { kind: 'title', text: 'Border gauge' },
        { kind: 'text', text: 'Marks the corners of an opening on the back of a board without a rule.' },
        ...steps([
          `${MAKING} The holes are for a needle; a pencil point needs them wider.`,
          'Lay it on the back of the board, its corner flush with the board’s corner on both edges.',
          'Prick through the hole of the border that you want; do the same at the other three corners.',
          `The holes are the corners of the line on the back. With a bevel the face opening is wider all round: for a border of the face take the border and the setback, at ${context.head.bevel}° on 1.4 mm board ${showLength(example, 'mm')}.`,
          'Different borders at the sides and the top: mark each along its own edge with the ticks, and rule the lines lightly.',
        ]),
      ],
    });
  },
};
