import type { BenchJob } from '../../bench/bench-job.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Size } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import type { Margined } from '../../settle/settled.ts';
import { boardKey, boardTitle } from '../../shop/board.ts';
import { layerBlanks, type Material } from '../../stock/blanks.ts';
import { type Block, stacked } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import { paragraph } from '../../text/paragraph.ts';
import type { Style } from '../../text/styles.ts';
import { listedSheets } from '../bench-page.ts';
import { blankWords, sizeToCut } from '../ticket/blanks.ts';
import { fine } from '../words/fine.ts';

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
  readonly code?: string;
  readonly colour?: string;
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
      ...defined({ code: board.code, colour: board.colour }),
      thickness: board.thickness,
      count: blanks.reduce((sum, { count }) => sum + count, 0),
      blanks: [...blanks].sort((a, b) => b.width - a.width || b.height - a.height),
    }));
}

/** The list on as few sheets as it takes; no packing, and nothing about sheets of stock. */
export function blankList(
  jobs: readonly BenchJob[],
  { paper, fonts }: { readonly paper: Margined; readonly fonts: Fonts },
): readonly Drawing[] {
  const list = listedBlanks(jobs);
  const total = list.reduce((sum, { count }) => sum + count, 0);
  const of = jobs.length === 1 ? jobs[0]!.job.title : `${jobs.length} jobs`;
  const entries = list.flatMap(({ thickness, count, blanks, ...board }): readonly Entry[] => [
    {
      kind: 'section',
      ...defined({ colour: board.colour }),
      text: boardTitle(board),
      aside: `${fine(thickness)}, ${count} in all`,
    },
    ...blanks.map(
      (blank): Entry => ({ kind: 'figure', make: (width, { text }) => blankRow(blank, width, text, fonts) }),
    ),
  ]);
  const intro = `${total} ${total === 1 ? 'blank' : 'blanks'} for ${of}; width × height as the stops are set`;
  return listedSheets({ title: 'Blanks', name: 'Blanks', intro, group: 'blanks', entries, jobs, paper, fonts });
}

function blankRow({ shown, note, count, uses }: ListedBlank, width: number, text: Style, fonts: Fonts): Block {
  const size = sizeToCut(shown, `× ${count}`, width, fonts);
  const words = `${note === '' ? '' : `${note.trim()} `}${uses.join('; ')}`;
  return stacked([size, paragraph(words, width, text, fonts, INDENT)], 0.6);
}

/** What is said of a blank stands below its size. */
const INDENT = 9;
