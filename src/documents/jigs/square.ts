import type { Item } from '../../drawing/model.ts';
import { type Box, box, right } from '../../geometry/box.ts';
import { point, type Size } from '../../geometry/point.ts';
import { diagonal, shearOf } from '../../geometry/shear.ts';
import { succeed } from '../../problems/problem.ts';
import type { Entry } from '../../text/entries.ts';
import { capHeight } from '../../text/line.ts';
import { LARGE, LARGE_BOLD } from '../../text/styles.ts';
import { printFraction, showNear } from '../../units/print.ts';
import { mmPer } from '../../units/units.ts';
import { contentArea, type JigContext, type JigEntry, jigSheets, line, rectangle, tooSmall } from './jig.ts';
import { steps, words } from './words.ts';

interface Rectangle extends Size {
  readonly name: string;
}

/** What has right angles in the job: blanks, lines on the back, face openings. */
function rectanglesOf({ mat }: NonNullable<JigContext['solved']>): readonly Rectangle[] {
  const of = (name: string) => (mat.openings.length === 1 ? '' : `${name}, `);
  const all: Rectangle[] = [
    { name: 'mat', ...mat.outer },
    ...mat.layers.map((layer) => ({ name: `blank, ${layer.name}`, ...layer.blank })),
    ...mat.openings.flatMap((opening) =>
      opening.layers.flatMap((layer, i) => [
        {
          name: `${of(opening.name)}${mat.layers[i]!.name}, back line`,
          width: layer.backBox.width,
          height: layer.backBox.height,
        },
        {
          name: `${of(opening.name)}${mat.layers[i]!.name}, face`,
          width: layer.faceBox.width,
          height: layer.faceBox.height,
        },
      ]),
    ),
  ];
  const same = (a: Size, b: Size) => Math.abs(a.width - b.width) < 0.01 && Math.abs(a.height - b.height) < 0.01;
  return all.filter((one, i) => !all.slice(0, i).some((other) => same(one, other)));
}

/** Differences of the diagonals that a tape measure shows. */
function differences({ units }: JigContext): readonly { readonly mm: number; readonly text: string }[] {
  if (units !== 'in') return [0.5, 1, 2, 3, 5].map((mm) => ({ mm, text: `${mm} mm` }));
  return [1, 2, 4, 6, 8].map((n) => {
    const mm = (n * mmPer('in')) / 32;
    return { mm, text: `${printFraction(mm, 32).text} in` };
  });
}

export const SQUARE_CHECK: JigEntry = {
  kind: 'square',
  summary: 'the job’s diagonals, and what shear a measured difference of them means',
  needs: 'job',
  make(context) {
    const solved = context.solved!;
    const area = contentArea(context);
    if (area.width < 100 || area.height < 140) return tooSmall(context, 'square', { width: 100, height: 140 });
    const title = `Square check, ${solved.job.title}`;
    const side = Math.min(78, area.width * 0.4);
    const sheets = jigSheets(context, {
      kind: 'square',
      title,
      entries: entries(context, title),
      figure: () => ({
        items: picture(context, box(right(area) - side, area.y, side, side * 1.1)),
        boxes: [
          box(area.x, area.y, area.width - side - 6, side * 1.1),
          box(area.x, area.y + side * 1.1 + 4, area.width, area.height - side * 1.1 - 4),
        ],
      }),
    });
    return succeed({ title, sheets });
  },
};

/** The mat and its diagonals in proportion, not to scale. */
function picture({ solved, units, fonts }: JigContext, room: Box): readonly Item[] {
  const { mat } = solved!;
  const k = Math.min((room.width - 10) / mat.outer.width, (room.height - 14) / mat.outer.height);
  const [width, height] = [mat.outer.width * k, mat.outer.height * k];
  const left = right(room) - width;
  const at = (x: number, y: number) => point(left + x * k, room.y + y * k);
  const openings = mat.openings.map(({ layers }) => layers.at(-1)!.faceBox);
  return [
    rectangle('bold', box(left, room.y, width, height), 'mat'),
    ...openings.map((b) => rectangle('line', box(left + b.x * k, room.y + b.y * k, b.width * k, b.height * k))),
    line('hidden', at(0, 0), at(mat.outer.width, mat.outer.height), 'falling'),
    line('hidden', at(0, mat.outer.height), at(mat.outer.width, 0), 'rising'),
    words(
      showNear(mat.outer.width, units),
      point(left + width / 2, room.y + height + 2 + capHeight(LARGE, fonts)),
      LARGE,
      'middle',
    ),
    words(showNear(mat.outer.height, units), point(left - 2, room.y + height / 2), LARGE, 'middle', 270),
    words(
      `diagonals ${showNear(diagonal(mat.outer), units)}`,
      point(left + width / 2, room.y + height + 8 + capHeight(LARGE_BOLD, fonts)),
      LARGE_BOLD,
      'middle',
    ),
  ];
}

function entries(context: JigContext, title: string): readonly Entry[] {
  const { units } = context;
  const list = rectanglesOf(context.solved!);
  const shown = differences(context);
  const hundredths = (mm: number) => mm.toFixed(2);
  return [
    { kind: 'title', text: title },
    { kind: 'text', text: 'A rectangle is square where its diagonals are alike. Measure both, from corner to corner.' },
    ...steps([
      'Measure the blank before it is marked, then the marked lines, then the opening.',
      'Write both diagonals into the first table: falling from the top left, rising from the bottom left. The second table says what their difference means.',
      'The shape leans towards the upper end of the longer one. Over a quarter of a millimetre shows in an opening; trim the blank anew before you cut.',
    ]),
    { kind: 'heading', text: 'Diagonals' },
    {
      kind: 'table',
      head: ['', 'width', 'height', 'diagonals', 'falling', 'rising'],
      rows: list.map((one) => [
        one.name,
        showNear(one.width, units),
        showNear(one.height, units),
        showNear(diagonal(one), units),
        '',
        '',
      ]),
      rowHeight: 9,
    },
    { kind: 'heading', text: 'What a difference of the diagonals means: shear over the height, mm' },
    {
      kind: 'table',
      head: ['difference', ...shown.map(({ text }) => text)],
      rows: list.map((one) => [one.name, ...shown.map(({ mm }) => hundredths(shearOf(one, mm)))]),
      rowHeight: 7.5,
    },
  ];
}
