import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Size } from '../../geometry/point.ts';
import { boardKey, layerBlanks, type Material } from '../../stock/blanks.ts';
import type { Section } from '../../text/bench-flow.ts';
import { BLANK, HEAD, moved, type Part, scaled, TEXT, textPart, tickSquare } from '../../text/bench-type.ts';
import { capHeight, fitted, set, widthOf } from '../../text/type-scale.ts';
import { blankWords } from '../ticket/blanks.ts';
import type { BenchJob } from '../ticket/model.ts';
import { listedSheets } from '../ticket/page.ts';
import { fine } from '../ticket/steps.ts';

/** Blanks of one size from one board. */
export interface ListedBlank extends Size {
  readonly count: number;
  /** As the stops are set. */
  readonly shown: string;
  readonly note: string;
  readonly uses: readonly string[];
}

export interface BoardBlanks {
  readonly board: string;
  readonly name: string;
  readonly thickness: number;
  readonly count: number;
  readonly blanks: readonly ListedBlank[];
}

/** Every blank of the jobs, by board, the widest first, so that stops only ever move one way. */
export function listedBlanks(jobs: readonly BenchJob[]): readonly BoardBlanks[] {
  const boards = new Map<string, { readonly board: Material; readonly blanks: ListedBlank[] }>();
  for (const { job: j, layer, material, name, count, width, height } of layerBlanks(jobs)) {
    const { job, mat, number } = jobs[j]!;
    const key = boardKey(material);
    const entry = boards.get(key) ?? { board: material, blanks: [] };
    boards.set(key, entry);
    const { size, note } = blankWords(mat, job, layer);
    const use = `${number ?? (jobs.length === 1 ? job.title : `job ${j + 1}, ${job.title}`)}: ${name}`;
    const at = entry.blanks.findIndex((each) => each.shown === size && each.note === note);
    const same = entry.blanks[at];
    if (same === undefined) entry.blanks.push({ width, height, count, shown: size, note, uses: [use] });
    else entry.blanks[at] = { ...same, count: same.count + count, uses: [...same.uses, use] };
  }
  return [...boards.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { board, blanks }]) => ({
      board: board.id,
      name: board.name,
      thickness: board.thickness,
      count: blanks.reduce((sum, { count }) => sum + count, 0),
      blanks: [...blanks].sort((a, b) => b.width - a.width || b.height - a.height),
    }));
}

/** The list on as few sheets as it takes; no packing, and nothing about sheets of stock. */
export function blankList(
  jobs: readonly BenchJob[],
  { paper, fonts }: { readonly paper: Size; readonly fonts: Fonts },
): readonly Drawing[] {
  const list = listedBlanks(jobs);
  const total = list.reduce((sum, { count }) => sum + count, 0);
  const of = jobs.length === 1 ? jobs[0]!.job.title : `${jobs.length} jobs`;
  const sections = list.map(
    ({ name, thickness, count, blanks }): Section => ({
      title: name,
      aside: `${fine(thickness)}, ${count} in all`,
      parts: (width, { scale }) => blanks.map((blank) => blankRow(blank, width, scale, fonts)),
    }),
  );
  const lead = `${total} ${total === 1 ? 'blank' : 'blanks'} for ${of}; width × height as the stops are set`;
  return listedSheets({ title: 'Blanks', name: 'Blanks', lead, group: 'blanks', sections, paper, fonts });
}

/** As high as the capitals. */
const SQUARE = scaled(BLANK, 0.72);

function blankRow({ shown, note, count, uses }: ListedBlank, width: number, scale: number, fonts: Fonts): Part {
  const times = `× ${count}`;
  const big = scaled(HEAD, 1.25);
  const base = capHeight(BLANK, fonts);
  const { item, side } = tickSquare(0.15, base - (base - capHeight(SQUARE, fonts)) / 2, SQUARE, fonts);
  const left = side + 2;
  const style = fitted(shown, BLANK, width - left - widthOf(times, big, fonts) - 3, 0.6, fonts);
  const words = textPart(
    `${note === '' ? '' : `${note.trim()} `}${uses.join('; ')}`,
    width,
    scaled(TEXT, scale),
    fonts,
    left,
  );
  const top = base + 2.6;
  return {
    items: [item, set(shown, left, base, style), set(times, width, base, big, 'end'), ...moved(words.items, 0, top)],
    height: top + words.height + 1.5,
  };
}
