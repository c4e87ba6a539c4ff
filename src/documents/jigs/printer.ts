import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { bottom, box } from '../../geometry/box.ts';
import { type Point, plus, point, times } from '../../geometry/point.ts';
import { succeed } from '../../problems/problem.ts';
import type { Entry } from '../../text/entries.ts';
import { capHeight } from '../../text/line.ts';
import { FINE, LARGE_BOLD } from '../../text/styles.ts';
import { mmFromInches } from '../../units/units.ts';
import { columns, contentArea, type JigContext, type JigEntry, jigSheets, line, tooSmall } from './jig.ts';
import { steps, words } from './words.ts';

interface Lines {
  /** The side of the square whose corners the diagonals run between. */
  readonly side: number;
  readonly text: string;
  /** A second line in each direction, a little further in. */
  readonly second?: { readonly length: number; readonly text: string };
}

const LONG: Lines = { side: 200, text: '200 mm' };
const SHORT: Lines = { side: 150, text: '150 mm', second: { length: mmFromInches(6), text: '6 in' } };

/** Rungs of a ladder, a millimetre each from the paper's edge; deeper than any printer's margin. */
const RUNGS = 14;
const RUNG = 6;
const STEP = 2.7;
const TICK = 2.4;
/** Between the second line and the first. */
const ASIDE = 9;

export const PRINTER_JIG: JigEntry = {
  kind: 'printer',
  summary: 'lines of 200 mm, diagonals and border ladders that measure the printer',
  needs: 'nothing',
  uncorrected: true,
  // A sixth of an inch: what most printers leave blank. Common practice, no source.
  margin: 4.2,
  make(context) {
    const { paper } = context;
    const area = contentArea(context);
    // The ladder stands between the paper's upper edge and the square.
    const top = RUNGS + 3;
    const room = Math.min(area.width, bottom(area) - top);
    const lines = room >= LONG.side ? LONG : SHORT;
    const least = SHORT.side + ASIDE;
    if (room < least) return tooSmall(context, 'printer', { width: least, height: least + top });
    const title = `Printer jig for ${paper.name}`;
    const corner = point((paper.width - lines.side) / 2, top);
    const inner = (lines.second === undefined ? 6 : ASIDE + 6) + 1;
    const inside = box(corner.x + inner, corner.y + inner, lines.side - inner - 4, lines.side - inner - 4);
    // A second line is longer than the side of the square, and begins further in.
    const reach = Math.max(lines.side, lines.second === undefined ? 0 : ASIDE + lines.second.length) + 5;
    const under = box(
      area.x + RUNGS + 3,
      corner.y + reach,
      area.width - 2 * RUNGS - 6,
      bottom(area) - RUNGS - corner.y - reach - 1,
    );
    const sheets = jigSheets(context, {
      kind: 'printer',
      title,
      entries: entries(context, lines),
      figure: () => ({
        items: [...square(corner, lines, context.fonts), ...ladders(context, corner.y + lines.side)],
        boxes: [...columns(inside, 2, 8), ...(under.height > 20 ? columns(under, 2, 8) : [])],
      }),
    });
    return succeed({ title, sheets });
  },
};

/** Lines with ticks at their very ends: across along the top, down along the left, a cross in the far corner. */
function square(corner: Point, { side, text, second }: Lines, fonts: Fonts): readonly Item[] {
  const [across, down] = [point(1, 0), point(0, 1)];
  const far = plus(corner, point(side, side));
  const items: Item[] = [
    ...measured(corner, across, side, `${text} across`, 'line-across', fonts),
    ...measured(corner, down, side, `${text} down`, 'line-down', fonts),
    line('line', plus(far, point(-6, 0)), far, 'corner-across'),
    line('line', plus(far, point(0, -6)), far, 'corner-down'),
  ];
  if (second === undefined) return items;
  return [
    ...items,
    ...measured(
      plus(corner, point(ASIDE, ASIDE)),
      across,
      second.length,
      `${second.text} across`,
      'second-across',
      fonts,
    ),
    ...measured(plus(corner, point(ASIDE, ASIDE)), down, second.length, `${second.text} down`, 'second-down', fonts),
  ];
}

function measured(from: Point, way: Point, length: number, text: string, id: string, fonts: Fonts): readonly Item[] {
  const to = plus(from, times(way, length));
  const aside = point(way.y * TICK, way.x * TICK);
  const back = times(aside, -1);
  const middle = plus(from, times(way, length / 2));
  const turn = way.x === 1 ? 0 : 270;
  const at = plus(
    middle,
    turn === 0 ? point(0, capHeight(LARGE_BOLD, fonts) + 1.6) : point(capHeight(LARGE_BOLD, fonts) + 1.6, 0),
  );
  return [
    line('line', from, to, id),
    line('line', plus(from, aside), plus(from, back), `${id}-start`),
    line('line', plus(to, aside), plus(to, back), `${id}-end`),
    words(text, at, LARGE_BOLD, 'middle', turn),
  ];
}

/** Rungs that come nearer to the paper's edge one by one: those that the printer cannot reach are cut off or missing. */
function ladders({ paper, fonts }: JigContext, below: number): readonly Item[] {
  const length = (RUNGS - 1) * STEP + RUNG;
  const { width, height } = paper;
  const sideways = Math.min(below + 8, height - RUNGS - length - 4);
  return [
    ...ladder('top', (along, deep) => point((width - length) / 2 + along, deep), fonts),
    ...ladder('bottom', (along, deep) => point((width - length) / 2 + along, height - deep), fonts),
    ...ladder('left', (along, deep) => point(deep, sideways + along), fonts),
    ...ladder('right', (along, deep) => point(width - deep, sideways + along), fonts),
  ];
}

function ladder(side: string, place: (along: number, deep: number) => Point, fonts: Fonts): readonly Item[] {
  const items: Item[] = [];
  for (let mm = 1; mm <= RUNGS; mm++) {
    const along = (mm - 1) * STEP;
    items.push(line('line', place(along, mm), place(along + RUNG, mm), `ladder-${side}-${mm}`));
    // Numbers stand at the rung's end on the edge's side, where the rungs before have ended; there is no room for those below 4.
    if (mm % 2 === 0 && mm > 2) items.push(rungNumber(side, mm, place(along + RUNG, mm), fonts));
  }
  return items;
}

function rungNumber(side: string, mm: number, end: Point, fonts: Fonts): Item {
  const high = capHeight(FINE, fonts);
  switch (side) {
    case 'top':
      return words(`${mm}`, plus(end, point(0.7, 0.2)), FINE);
    case 'bottom':
      return words(`${mm}`, plus(end, point(0.7, high - 0.2)), FINE);
    case 'left':
      return words(`${mm}`, plus(end, point(0.3, high + 0.7)), FINE, 'end');
    default:
      return words(`${mm}`, plus(end, point(-0.3, high + 0.7)), FINE);
  }
}

function entries({ paper, printer }: JigContext, { side, text, second }: Lines): readonly Entry[] {
  const share = (whole: number) => `${Math.round(whole * side)}`;
  const line = side === 200 ? [] : [`line: ${side} mm`];
  return [
    { kind: 'title', text: 'Printer jig' },
    { kind: 'text', text: `Made for ${paper.name}. Its lines are never corrected: they measure the printer itself.` },
    ...steps([
      `Set the print dialogue to ${paper.name} and 100 %: no “fit”, no “shrink”. Print on the paper that patterns go on.`,
      `Measure both ${text} lines with a steel rule, from tick to tick, as finely as you can read: 0.25 mm or better.`,
      ...(second === undefined
        ? []
        : [
            `The ${second.text} lines are for a rule of inches. Use one pair, and say which: line: ${side} mm or line: 6 in.`,
          ]),
      `Measure the two diagonals of the square, corner to corner: from the top left (falling) and from the bottom left (rising).`,
      'At each edge find the smallest number whose rung is printed whole: that much the printer leaves blank.',
      'Print and measure two or three sheets, better from different days.',
      'Write a file like the one shown here and type: matwright calibrate printer readings.yaml',
    ]),
    {
      kind: 'text',
      text: `${share(0.9407)} or ${share(0.9727)} mm instead of ${side}: the wrong paper is set (A4 squeezed onto Letter, or Letter onto A4). Set ${paper.name} and print again.`,
      bold: true,
    },
    { kind: 'heading', text: 'Write down' },
    {
      kind: 'table',
      head: ['sheet', 'across', 'down', 'falling', 'rising'],
      rows: ['1', '2', '3'].map((n) => [n, '', '', '', '']),
      widths: [1, 1.5, 1.5, 1.5, 1.5],
    },
    {
      kind: 'table',
      head: ['blank', 'top', 'right', 'bottom', 'left'],
      rows: [['mm', '', '', '', '']],
      widths: [1, 1.5, 1.5, 1.5, 1.5],
    },
    { kind: 'heading', text: 'readings.yaml' },
    {
      kind: 'file',
      lines: [
        `printer: ${printer ?? 'office'}`,
        `madeFor: ${paper.id}`,
        `paper: ${paper.id}`,
        ...line,
        'sheets:',
        `  - {across: ${example(side, 0.9965)}, down: ${example(side, 0.998)}, falling: ${example(side * Math.SQRT2, 0.9972)}, rising: ${example(side * Math.SQRT2, 0.9974)}}`,
        `  - {across: ${example(side, 0.996)}, down: ${example(side, 0.998)}}`,
        'blank: {top: 4, right: 3, bottom: 5, left: 3}',
      ],
    },
    {
      kind: 'text',
      text: 'paper: is what the print dialogue is set to. Millimetres, unless a unit is written behind. The numbers here are examples.',
    },
  ];
}

const example = (length: number, scale: number): string => (length * scale).toFixed(1);
