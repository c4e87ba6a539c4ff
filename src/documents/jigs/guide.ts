import { turnedItem } from '../../drawing/turned.ts';
import { bottom, box, right } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import { succeed } from '../../problems/problem.ts';
import { moved } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import { showLength } from '../../units/print.ts';
import { mmPer } from '../../units/units.ts';
import { contentArea, type JigContext, type JigEntry, jigSheets, orderEntries, tooSmall } from './jig.ts';
import { READING_RULE, rule, slip } from './vernier.ts';
import { steps } from './words.ts';

/** Shares of the longest setting that the strips are cut at: five settings show a bend in the scale, two do not. */
const SHARES = [0.1, 0.3, 0.5, 0.75, 1];
const SHORTEST_RULE = 120;

export const GUIDE_JIG: JigEntry = {
  kind: 'guide',
  summary: 'strips to cut at five settings of the guide, and a printed rule to measure them by',
  needs: 'nothing',
  make(context) {
    const area = contentArea(context);
    const [scale, vernier] = [rule(0, Math.floor((area.height - 12) / 10) * 10, 'rule', context.fonts), slip('slip')];
    const long = scale.right - scale.left;
    if (long < SHORTEST_RULE || area.width < 110) return tooSmall(context, 'guide', { width: 110, height: 140 });
    const title = 'Guide jig';
    const longest = scale.right - 10;
    // The rule stands along the right edge, its lines towards the words, the slip in the bottom corner beside it.
    const edge = right(area) - scale.bottom;
    const upright = scale.items.map((item) => turnedItem(item, 270, point(edge, bottom(area) + scale.left)));
    const at = point(edge - 6 - vernier.right, bottom(area));
    const text = box(area.x, area.y, edge - 6 - area.x, area.height - (vernier.bottom - vernier.top) - 5);
    const sheets = jigSheets(context, {
      kind: 'guide',
      title,
      entries: entries(context, settings(context, longest)),
      figure: () => ({
        items: [...upright, ...moved(vernier.items, at.x, at.y)],
        boxes: [text],
      }),
    });
    return succeed({ title, sheets });
  },
};

/** Round settings from narrow to wide, as wide as guide and rule allow. */
function settings({ guide, units }: JigContext, most: number): readonly number[] {
  const step = units === 'in' ? mmPer('in') / 2 : 10;
  const widest = Math.floor(Math.min(most, guide.longest ?? most) / step) * step;
  return [...new Set(SHARES.map((share) => Math.max(step, Math.round((share * widest) / step) * step)))];
}

function entries(context: JigContext, list: readonly number[]): readonly Entry[] {
  const { units, guide } = context;
  const show = (mm: number) => showLength(mm, units);
  const thickness = guide.setAt === undefined ? [] : [`thickness: ${guide.setAt}`];
  return [
    { kind: 'title', text: 'Guide jig' },
    { kind: 'text', text: 'Whether the guide’s scale says the truth, and by how much it does not.' },
    ...orderEntries(context),
    ...steps([
      'Cut out the rule and the slip along the dashed lines, with a sharp knife exactly on the edge that the lines run to. First lay a steel rule against it: 200 must be 200.',
      'Take one board, its edge trimmed straight, as thick as the board that the guide was set at.',
      'At each setting below cut a strip off, right through, always pressing the board to the guide alike. Mark the strip with its setting.',
      `Lay the rule across the strip at its face, its 0 at the edge that lay on the guide, and the slip’s 0 at the cut edge. ${READING_RULE}`,
      'Measure each strip in its middle and write the width down. A second set, cut later, tells play from error.',
      'Write a file like the one below and type: matwright calibrate guide readings.yaml',
    ]),
    { kind: 'heading', text: 'Write down' },
    {
      kind: 'table',
      head: ['guide set to', 'width at the face', 'second set'],
      rows: list.map((mm) => [show(mm), '', '']),
      widths: [1.3, 1.5, 1.5],
    },
    { kind: 'heading', text: 'readings.yaml' },
    {
      kind: 'file',
      lines: [
        ...thickness,
        'strips:',
        ...list.slice(0, 3).map((mm) => `  - {setting: ${show(mm)}, width: ${(mm * 1.002 + 0.4).toFixed(1)}}`),
      ],
    },
    {
      kind: 'text',
      text: `${guide.setAt === undefined ? 'Where the bar rests on the board, add thickness: and the board’s. ' : ''}Widths are millimetres. The numbers here are examples.`,
    },
    { kind: 'text', text: 'Sharp blade, stable surface, hands out of its path.' },
  ];
}
