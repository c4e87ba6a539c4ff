import type { BenchJob } from '../../bench/bench-job.ts';
import type { Drawing, Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, right } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { error, fail, type Result, succeed } from '../../problems/problem.ts';
import type { Margined } from '../../settle/settled.ts';
import { boardTitle } from '../../shop/board.ts';
import { type Block, moved, stacked } from '../../text/block.ts';
import { fittedLine, level, line, paragraph, type TextBlock } from '../../text/paragraph.ts';
import { colourChip, upArrow } from '../../text/signs.ts';
import { BOLD, FINE, FINE_BOLD, HEAD, LARGE, LARGE_BOLD, SIGN, type Style, TEXT } from '../../text/styles.ts';
import { showLength } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import { benchSheet } from '../bench-page.ts';
import { size } from '../proof/words.ts';
import { blankWords } from '../ticket/blanks.ts';
import { layerTitle } from '../ticket/steps.ts';
import { fine } from '../words/fine.ts';
import { markBlock, type ShownLetterhead, type ShownMark } from '../words/letterhead-block.ts';

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
  /** Of the board that a blank is cut from. */
  readonly colour?: string;
}

/** One for every blank and one for every back, job by job, piece by piece. */
export function labelsOf(jobs: readonly BenchJob[], letterhead?: ShownLetterhead): readonly Label[] {
  const from = letterhead === undefined ? '' : [letterhead.name, ...letterhead.address].join(', ');
  return jobs.flatMap(({ job, mat, number }) =>
    Array.from({ length: job.count }, (_, piece): readonly Label[] => {
      const which = job.count === 1 ? '' : `, ${piece + 1} of ${job.count}`;
      const head = `${number === undefined ? '' : `${number}  `}${job.title}${which}`;
      const blanks = mat.layers.map((layer, i): Label => {
        const { size: shown, note } = blankWords(mat, job, i);
        const { board } = layer;
        const what = `${layerTitle(layer)}, ${boardTitle(board)} ${fine(board.thickness)}`;
        return { kind: 'blank', head, what, size: shown, note: note.trim(), colour: board.colour };
      });
      const what = [job.customer, ...worksOf(mat, job)];
      const said = what.filter((text) => text !== undefined).join(', ');
      return [
        ...blanks,
        {
          kind: 'back',
          head,
          what: `Back${said === '' ? '' : `: ${said}`}`,
          size: size(mat.outer, job.units),
          note: from,
        },
      ];
    }).flat(),
  );
}

/** Every work of a group, by the name that the job gives its opening; those that are alike and have none are counted. */
function worksOf(mat: Mat, job: Job): readonly string[] {
  const counted = new Map<string, number>();
  mat.openings.forEach(({ artwork }, i) => {
    if (artwork === undefined) return;
    const name = job.openings[i]?.name;
    const words = `${name ?? 'artwork'} ${size(artwork.size, job.units)}`;
    counted.set(words, (counted.get(words) ?? 0) + 1);
  });
  return [...counted].map(([words, count]) => (count === 1 ? words : `${count} × ${words}`));
}

/** Errors: `label-grid` where rows, columns and gaps leave labels too small. */
export function labelSheets(
  jobs: readonly BenchJob[],
  paper: Margined,
  grid: SheetGrid,
  units: LengthUnit,
  fonts: Fonts,
  letterhead?: ShownLetterhead,
): Result<readonly Drawing[]> {
  const width = (paper.width - 2 * grid.marginX - (grid.columns - 1) * grid.gapX) / grid.columns;
  const height = (paper.height - 2 * grid.marginY - (grid.rows - 1) * grid.gapY) / grid.rows;
  if (width < LEAST.width || height < LEAST.height) {
    const show = (mm: number): string => showLength(mm, units);
    const message = `${grid.columns} × ${grid.rows} labels would be ${show(Math.max(0, width))} × ${show(Math.max(0, height))}`;
    const hint = `${show(LEAST.width)} × ${show(LEAST.height)} are needed: fewer rows or columns, smaller gaps or margins`;
    return fail([error('label-grid', ['grid'], message, hint)]);
  }
  const cells = Array.from({ length: grid.rows * grid.columns }, (_, cell): Box => {
    const x = grid.marginX + (cell % grid.columns) * (width + grid.gapX);
    const y = grid.marginY + Math.floor(cell / grid.columns) * (height + grid.gapY);
    return shared(box(x + PAD, y + PAD, width - 2 * PAD, height - 2 * PAD), paper.area);
  });
  if (cells.some((cell) => cell.width < LEAST.width - 2 * PAD || cell.height < LEAST.height - 2 * PAD)) {
    const message = 'the margins of the print leave too little of the labels at the edges of their sheet';
    return fail([error('label-grid', ['grid'], message, 'make them smaller: print.margin, or the printer’s')]);
  }
  const skip = grid.skip % cells.length;
  const labels = labelsOf(jobs, letterhead);
  const count = Math.ceil((labels.length + skip) / cells.length);
  const sheets = Array.from({ length: count }, (_, s): Drawing => {
    const items = cells.flatMap((cell, i): readonly Item[] => {
      const label = labels[s * cells.length + i - skip];
      return label === undefined ? [] : labelItems(label, cell, letterhead?.shown, fonts);
    });
    // Every label has its job's number; stickers have no place for a head above them.
    return benchSheet('Labels', 'labels', { jobs: [], paper, fonts }, items);
  });
  return succeed(sheets);
}

/** What of a label the printer reaches: labels lie where the sheet has them, whatever its margins. */
function shared(label: Box, area: Box): Box {
  const [x, y] = [Math.max(label.x, area.x), Math.max(label.y, area.y)];
  return box(x, y, Math.min(right(label), right(area)) - x, Math.min(bottom(label), bottom(area)) - y);
}

interface LabelStyles {
  readonly head: Style;
  readonly what: Style;
  readonly size: Style;
  readonly note: Style;
}

/** From the largest down. */
const STEPS: readonly LabelStyles[] = [
  { head: LARGE_BOLD, what: LARGE, size: SIGN, note: TEXT },
  { head: BOLD, what: TEXT, size: HEAD, note: FINE },
  { head: FINE_BOLD, what: FINE, size: BOLD, note: FINE },
];

/** Of a back's width. */
const MARK_SHARE = 0.26;

function labelItems(
  label: Label,
  { x, y, width, height }: Box,
  mark: ShownMark | undefined,
  fonts: Fonts,
): readonly Item[] {
  if (label.kind === 'back' && mark !== undefined) {
    const own = markBlock(mark, { width: MARK_SHARE * width, height });
    const room = box(x, y, width - own.width - PAD, height);
    return [...labelItems(label, room, undefined, fonts), ...moved(own.items, x + width - own.width, y)];
  }
  const made = STEPS.map((styles) => () => labelOf(label, width, styles, fonts, paragraph));
  // Names that fill the label even so are cut off.
  const cut = () => labelOf(label, width, STEPS.at(-1)!, fonts, fittedLine);
  const found = made.map((make) => make()).find((block) => block.height <= height) ?? cut();
  return moved(found.items, x, y);
}

function labelOf(
  { kind, head, what, size: shown, note, colour }: Label,
  width: number,
  styles: LabelStyles,
  fonts: Fonts,
  named: (text: string, width: number, style: Style, fonts: Fonts) => TextBlock,
): Block {
  const top = level([
    [0, line('TOP', styles.head, fonts)],
    [-styles.head.size, upArrow(styles.head, fonts)],
  ]);
  const mark = kind === 'blank' ? [[width - top.width, top] as const] : [];
  const room = width - (kind === 'blank' ? top.width + styles.head.size + 2 : 0);
  const sized = level([[0, fittedLine(shown, room, styles.size, fonts)], ...mark]);
  const chip = colour === undefined ? undefined : colourChip(colour, styles.what, fonts);
  const words = [
    named(head, width, styles.head, fonts),
    chip === undefined
      ? named(what, width, styles.what, fonts)
      : level([
          [0, chip],
          [chip.width + 1, named(what, width - chip.width - 1, styles.what, fonts)],
        ]),
  ];
  return stacked([...words, sized, ...(note === '' ? [] : [named(note, width, styles.note, fonts)])], 1.2);
}
