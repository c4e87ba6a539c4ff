import type { Drawing, Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, box } from '../../geometry/box.ts';
import { polygon } from '../../geometry/path.ts';
import { point, type Size } from '../../geometry/point.ts';
import { error, fail, type Result, succeed } from '../../problems/problem.ts';
import { BOLD, FINE, moved, type Part, scaled, stacked, TEXT, textPart } from '../../text/bench-type.ts';
import { capHeight, type Style, set, widthOf } from '../../text/type-scale.ts';
import { showLength } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import { size } from '../proof/words.ts';
import { blankWords } from '../ticket/blanks.ts';
import type { BenchJob } from '../ticket/model.ts';
import { benchSheet } from '../ticket/page.ts';
import { fine, layerTitle } from '../ticket/steps.ts';

/** Labels on a sheet: how many, how far apart, and how far from the paper's edges, mm. */
export interface SheetGrid {
  readonly rows: number;
  readonly columns: number;
  readonly gapX: number;
  readonly gapY: number;
  readonly marginX: number;
  readonly marginY: number;
  /** Labels at the beginning of the first sheet that are used already. */
  readonly skip: number;
}

/** Three by eight, whatever the paper: large enough for a title, a layer and its size (common practice, no source). */
export const USUAL_GRID: SheetGrid = { rows: 8, columns: 3, gapX: 3, gapY: 0, marginX: 7, marginY: 13, skip: 0 };

const LEAST = { width: 28, height: 14 };
const PAD = 2.4;

/** What one label says. */
export interface Label {
  readonly kind: 'blank' | 'back';
  /** The job's number, where it has one, and its title. */
  readonly head: string;
  readonly what: string;
  readonly size: string;
  readonly note: string;
}

/** One for every blank and one for every back, job by job, piece by piece. */
export function labelsOf(jobs: readonly BenchJob[]): readonly Label[] {
  return jobs.flatMap(({ job, mat, number }) =>
    Array.from({ length: job.count }, (_, piece): readonly Label[] => {
      const which = job.count === 1 ? '' : `, ${piece + 1} of ${job.count}`;
      const head = `${number === undefined ? '' : `${number}  `}${job.title}${which}`;
      const blanks = mat.layers.map((layer, i): Label => {
        const { size: shown, note } = blankWords(mat, job, i);
        const { board } = layer;
        const what = `${layerTitle(layer)}, ${board.name} ${fine(board.thickness)}`;
        return { kind: 'blank', head, what, size: shown, note: note.trim() };
      });
      const art = mat.openings.flatMap(({ artwork }) => (artwork === undefined ? [] : [artwork.size]));
      const what = [job.customer, ...art.slice(0, 1).map((each) => `artwork ${size(each, job.units)}`)];
      const said = what.filter((text) => text !== undefined).join(', ');
      return [
        ...blanks,
        {
          kind: 'back',
          head,
          what: `Back${said === '' ? '' : `: ${said}`}`,
          size: size(mat.outer, job.units),
          note: '',
        },
      ];
    }).flat(),
  );
}

/** Errors: `label-grid` where rows, columns and gaps leave labels too small. */
export function labelSheets(
  jobs: readonly BenchJob[],
  paper: Size,
  grid: SheetGrid,
  units: LengthUnit,
  fonts: Fonts,
): Result<readonly Drawing[]> {
  const width = (paper.width - 2 * grid.marginX - (grid.columns - 1) * grid.gapX) / grid.columns;
  const height = (paper.height - 2 * grid.marginY - (grid.rows - 1) * grid.gapY) / grid.rows;
  if (width < LEAST.width || height < LEAST.height) {
    const show = (mm: number): string => showLength(mm, units);
    const message = `${grid.columns} × ${grid.rows} labels would be ${show(Math.max(0, width))} × ${show(Math.max(0, height))}`;
    const hint = `${show(LEAST.width)} × ${show(LEAST.height)} are needed: fewer rows or columns, smaller gaps or margins`;
    return fail([error('label-grid', ['grid'], message, hint)]);
  }
  const perSheet = grid.rows * grid.columns;
  const skip = grid.skip % perSheet;
  const labels = labelsOf(jobs);
  const count = Math.ceil((labels.length + skip) / perSheet);
  const sheets = Array.from({ length: count }, (_, s): Drawing => {
    const items: Item[] = [];
    for (let cell = 0; cell < perSheet; cell++) {
      const label = labels[s * perSheet + cell - skip];
      if (label === undefined) continue;
      const x = grid.marginX + (cell % grid.columns) * (width + grid.gapX);
      const y = grid.marginY + Math.floor(cell / grid.columns) * (height + grid.gapY);
      items.push(...labelItems(label, box(x, y, width, height), fonts));
    }
    return benchSheet('Labels', 'labels', paper, items);
  });
  return succeed(sheets);
}

/** From the largest down; the smallest is only reached by names that fill the label. */
const SCALES = [1.25, 1.1, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3];

function labelItems(label: Label, { x, y, width, height }: Box, fonts: Fonts): readonly Item[] {
  const [wide, high] = [width - 2 * PAD, height - 2 * PAD];
  let made: Part = { items: [], height: 0 };
  for (const scale of SCALES) {
    made = labelPart(label, wide, scale, fonts);
    if (made.height <= high) break;
  }
  const left = x + PAD;
  return moved(made.items, left, y + PAD);
}

function labelPart({ kind, head, what, size: shown, note }: Label, width: number, scale: number, fonts: Fonts): Part {
  const [bold, text, small] = [scaled(BOLD, scale), scaled(TEXT, scale), scaled(FINE, scale)];
  const big = scaled(BOLD, 1.5 * scale);
  const mark = kind === 'blank' ? topMark(width, bold, fonts) : undefined;
  const sized = textPart(shown, width - (mark?.width ?? 0), big, fonts);
  const last: Part = {
    items: [...sized.items, ...(mark?.items ?? []).flatMap((item) => moved([item], 0, capHeight(big, fonts)))],
    height: sized.height,
  };
  return stacked(
    [
      textPart(head, width, bold, fonts),
      textPart(what, width, text, fonts),
      last,
      ...(note === '' ? [] : [textPart(note, width, small, fonts)]),
    ],
    1.3 * scale,
  );
}

/** `TOP` with an arrow up, at the right end of a base line at 0. */
function topMark(
  right: number,
  style: Style,
  fonts: Fonts,
): { readonly width: number; readonly items: readonly Item[] } {
  const cap = capHeight(style, fonts);
  const wide = widthOf('TOP', style, fonts);
  const x = right - wide - 0.7 * cap - 0.6;
  const arrow: Item = {
    kind: 'path',
    fill: 0,
    paths: [polygon([point(x, -cap), point(x + 0.6 * cap, 0), point(x - 0.6 * cap, 0)])],
  };
  return { width: wide + 1.4 * cap + 3, items: [set('TOP', right, 0, style, 'end'), arrow] };
}
