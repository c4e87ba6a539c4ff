import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import { capHeight } from '../../text/line.ts';
import { LARGE, LARGE_BOLD } from '../../text/styles.ts';
import { type Gauge, gaugeJig, MAKING } from './gauge.ts';
import { contentArea, type JigEntry, line, orderEntries, outline, rectangle, tooSmall } from './jig.ts';
import { steps, words } from './words.ts';

/** Length of the slot for each millimetre of its width. */
const WEDGE = 24;
const [NARROWEST, WIDEST] = [0.5, 6.5];
const END = 9;
const EDGE = 20;
const DEPTH = 38;

/**
 * A card with a tapering slot: where both edges of the slot meet both edges of a bevel, the number says how wide the bevel
 * is. `x` runs along the slot from its narrow end.
 */
function wedge(fonts: Fonts, most = WIDEST): Gauge {
  const x = (width: number) => END + (width - NARROWEST) * WEDGE;
  const marks: Item[] = [];
  for (let tenth = NARROWEST * 10; tenth <= most * 10 + 1e-9; tenth++) {
    const width = tenth / 10;
    const length = tenth % 10 === 0 ? 7 : tenth % 5 === 0 ? 5 : 3;
    marks.push(line('fine', point(x(width), EDGE - 0.5), point(x(width), EDGE - 0.5 - length), `wedge-${tenth}`));
    if (tenth % 5 === 0) {
      const text = `${width}`;
      marks.push(words(text, point(x(width), EDGE - 9), tenth % 10 === 0 ? LARGE_BOLD : LARGE, 'middle'));
    }
  }
  marks.push(words('bevel, mm', point(END, EDGE - 9 - 2 * capHeight(LARGE, fonts)), LARGE));
  const slot = [
    point(x(NARROWEST), EDGE),
    point(x(most), EDGE),
    point(x(most), EDGE + most),
    point(x(NARROWEST), EDGE + NARROWEST),
  ];
  const width = x(most) + END;
  return {
    width,
    height: DEPTH,
    cut: [outline('cut', slot, 'slot'), rectangle('cut', box(0, 0, width, DEPTH), 'outline')],
    marks,
  };
}

export const BEVEL_JIG: JigEntry = {
  kind: 'bevel',
  summary: 'a wedge gauge that measures the width of a bevel, which gives its true angle',
  needs: 'nothing',
  make(context) {
    const { width } = contentArea(context);
    const most = Math.min(WIDEST, Math.floor((width - 2 * END) / WEDGE + NARROWEST));
    if (most < 3) return tooSmall(context, 'bevel', wedge(context.fonts, 3));
    return gaugeJig(context, {
      kind: 'bevel',
      title: 'Bevel jig',
      gauge: wedge(context.fonts, most),
      entries: [
        { kind: 'title', text: 'Bevel jig' },
        {
          kind: 'text',
          text: 'What angle the head really cuts. A millimetre’s tenth on a 4-ply board is two degrees: take the thickest board that the head goes through, 6 mm or more.',
        },
        ...orderEntries(context),
        ...steps([
          MAKING,
          'Measure the thickness of a thick board with a caliper. Cut a strip off it with the bevel head, right through.',
          'Lay the strip with its bevel up: from straight above it is a band between two edges.',
          'Lay the slot over the band and slide it along until both edges of the slot meet both edges of the bevel. Look from straight above, with one eye. Read the number there, tenths by the short lines.',
          'Measure at three places of the strip, and two strips or more.',
          'Write a file like the one below and type: matwright calibrate bevel readings.yaml',
        ]),
        { kind: 'heading', text: 'Write down' },
        {
          kind: 'table',
          head: ['strip', 'thickness', 'bevel, mm'],
          rows: ['1', '2', '3'].map((n) => [n, '', '']),
          widths: [1, 1.6, 1.6],
        },
        { kind: 'heading', text: 'readings.yaml' },
        {
          kind: 'file',
          lines: [
            `head: ${context.head.id}`,
            'strips:',
            '  - {thickness: 6.1, setback: 6.0}',
            '  - {thickness: 6.1, setback: 6.2}',
          ],
        },
        { kind: 'text', text: 'Millimetres. The numbers here are examples.' },
      ],
    });
  },
};
