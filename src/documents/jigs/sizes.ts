import type { Drawing, Item, Pen } from '../../drawing/model.ts';
import { type Box, bottom, box } from '../../geometry/box.ts';
import { polygon } from '../../geometry/path.ts';
import { point } from '../../geometry/point.ts';
import { succeed } from '../../problems/problem.ts';
import type { Entry } from '../../text/entries.ts';
import { capHeight } from '../../text/line.ts';
import { CLEAR, HEAD, TEXT } from '../../text/styles.ts';
import { showLength, showNear } from '../../units/print.ts';
import { mmPer } from '../../units/units.ts';
import { contentArea, type JigContext, type JigEntry, jigSheets, line, tooSmall } from './jig.ts';
import { steps, words } from './words.ts';

const COUNT = 5;
/** Below the line that is laid on the artwork: the numbers, and paper to hold. */
const FOOT = 14;
const WORDS = 46;

const PENS: Readonly<Record<string, Pen>> = { board: { width: 0.25, colour: 0, dash: [], cap: 'butt' } };

interface Bands {
  readonly title: string;
  readonly intro: string;
  /** Widths to try, the narrowest first; the middle one is the job's. */
  readonly widths: readonly number[];
  /** From the line upwards: the bands of one column, each with its colour. */
  readonly bands: (width: number) => readonly { readonly high: number; readonly fill: string }[];
}

/** Five columns at full scale, their lower line to be laid on the edge of the artwork. */
function strip(context: JigContext, { widths, bands }: Bands, area: Box): readonly Item[] {
  const items: Item[] = [];
  const wide = area.width / COUNT;
  const base = bottom(area) - FOOT;
  widths.forEach((width, i) => {
    const x = area.x + i * wide;
    let y = base;
    bands(width).forEach(({ high, fill }, k) => {
      const path = polygon([point(x, y), point(x + wide, y), point(x + wide, y - high), point(x, y - high)]);
      items.push({ kind: 'path', pen: 'board', fill, paths: [path], id: `try-${i + 1}-${k + 1}` });
      y -= high;
    });
    const middle = Math.floor(COUNT / 2) === i;
    items.push(
      words(
        showNear(width, context.units),
        point(x + wide / 2, base + 2.5 + capHeight(CLEAR, context.fonts)),
        middle ? HEAD : CLEAR,
        'middle',
      ),
    );
    if (middle)
      items.push(
        words('as in the job', point(x + wide / 2, base + 9 + capHeight(TEXT, context.fonts)), TEXT, 'middle'),
      );
  });
  items.push(line('bold', point(area.x, base), point(area.x + area.width, base), 'artwork-edge'));
  return items;
}

export const SIZES_TO_TRY: JigEntry = {
  kind: 'sizes',
  summary: 'the job’s border, and its reveal, at five widths to lay on the artwork with the customer',
  needs: 'job',
  make(context) {
    const { job, mat } = context.solved!;
    const area = contentArea(context);
    const title = `Sizes to try, ${job.title}`;
    const kinds = [border(context), ...(mat.layers.length > 1 ? [reveal(context)] : [])];
    const sheets: Drawing[] = [];
    for (const kind of kinds) {
      const high = Math.max(...kind.widths.map((width) => kind.bands(width).reduce((sum, band) => sum + band.high, 0)));
      if (high + FOOT + WORDS > area.height)
        return tooSmall(context, 'sizes', { width: 120, height: high + FOOT + WORDS });
      const figure = box(area.x, bottom(area) - high - FOOT, area.width, high + FOOT);
      sheets.push(
        ...jigSheets(context, {
          kind: 'sizes',
          title: `${title}: ${kind.title}`,
          entries: entries(kind),
          pens: PENS,
          figure: () => ({
            items: strip(context, kind, figure),
            boxes: [box(area.x, area.y, area.width, area.height - figure.height - 4)],
          }),
        }),
      );
    }
    return succeed({ title, sheets });
  },
};

/** Steps that the eye tells apart, round in the job's unit. */
const step = ({ units }: JigContext, inches: number, mm: number): number =>
  units === 'in' ? inches * mmPer('in') : mm;

const around = (middle: number, by: number): readonly number[] =>
  Array.from({ length: COUNT }, (_, i) => middle + (i - Math.floor(COUNT / 2)) * by);

function border(context: JigContext): Bands {
  const { mat } = context.solved!;
  const sides = Math.min(mat.border.left, mat.border.right);
  const by = Math.min(step(context, 1 / 2, 10), sides / 4);
  const colour = mat.layers[0]!.board.colour;
  const below = mat.layers
    .slice(1)
    .map((layer, i) => ({ high: mat.openings[0]!.layers[i + 1]!.strip.left, fill: layer.board.colour }));
  return {
    title: 'border',
    intro: `The border at the sides: five widths of ${mat.layers[0]!.board.name}, full scale.`,
    widths: around(sides, by),
    bands: (width) => [...below.filter(({ high }) => high > 0).reverse(), { high: width, fill: colour }],
  };
}

function reveal(context: JigContext): Bands {
  const { mat } = context.solved!;
  const own = mat.openings[0]!.layers[1]!;
  const by = Math.min(step(context, 1 / 16, 1.5), own.reveal.left / 4);
  const lost = own.reveal.left - own.strip.left;
  return {
    title: 'reveal',
    intro: `The reveal of ${mat.layers[1]!.board.name} under ${mat.layers[0]!.board.name}: five widths, full scale. The bevel of the mat above hides ${showLength(lost, 'mm')} of each.`,
    widths: around(own.reveal.left, by),
    bands: (width) => [
      { high: Math.max(0.2, width - lost), fill: mat.layers[1]!.board.colour },
      { high: 60, fill: mat.layers[0]!.board.colour },
    ],
  };
}

function entries({ title, intro }: Bands): readonly Entry[] {
  return [
    { kind: 'title', text: `Sizes to try: ${title}` },
    { kind: 'text', text: intro },
    ...steps([
      'Cut the sheet off along the thick line.',
      'Lay that edge on the artwork where the mat will end, and move it along: one column after the other stands beside the picture. Cover the others with white paper.',
      'Step back as far as the picture will be looked at from.',
      'Write the chosen width into the job.',
    ]),
    { kind: 'text', text: 'A colour on paper is not the colour of the board: lay a piece of the board beside it.' },
  ];
}
