import type { SharedSetting } from '../../bench/settings.ts';
import { mostUncut } from '../../bench/uncut.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { theNamed } from '../../mat/layers.ts';
import type { Margined } from '../../settle/settled.ts';
import { type Block, stacked } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import { level, line, paragraph } from '../../text/paragraph.ts';
import { HEAD, READING, type Style } from '../../text/styles.ts';
import { listedSheets } from '../bench-page.ts';
import { size } from '../proof/words.ts';
import { backSide } from '../words/back-side.ts';
import { reverseCornerWords } from '../words/reverse-corners.ts';
import type { BenchJob } from './model.ts';

/** What lies in front of several tickets: the jobs in their order, and the settings that serve more than one of them. */
export function runList(
  jobs: readonly BenchJob[],
  shared: readonly SharedSetting[],
  paper: Margined,
  fonts: Fonts,
): readonly Drawing[] {
  const entries: readonly Entry[] = [
    { kind: 'section', text: 'Order' },
    ...jobs.map((work, i): Entry => ({ kind: 'action', text: jobLine(work, i) })),
    ...(shared.length === 0
      ? []
      : [{ kind: 'section', text: 'Set once, cut in all', aside: 'sides seen from the BACK' } as const]),
    ...shared.map(
      (setting): Entry => ({
        kind: 'figure',
        make: (width, { text }) => sharedBlock(setting, jobs, width, text, fonts),
      }),
    ),
  ];
  const lead = `${jobs.length} tickets, by board and guide setting`;
  return listedSheets({ title: 'Run list', name: 'Run list', lead, group: 'run', entries, jobs, paper, fonts });
}

const nameOf = ({ number }: BenchJob, index: number): string => number ?? `ticket ${index + 1}`;

function jobLine(work: BenchJob, index: number): string {
  const { job, mat, strokes } = work;
  const boards = mat.layers.map(({ board }) => board.name).join(' + ');
  const count = job.count === 1 ? '' : ` × ${job.count}`;
  const freed = mat.layers.filter((_, i) => reverseCornerWords(mostUncut(strokes, i + 1)).length > 0);
  const corners =
    freed.length === 0
      ? ''
      : `; reverse bevel: free the corners of ${freed.map(({ name }) => theNamed(name)).join(' and ')} as its ticket says`;
  return `${nameOf(work, index)}: ${job.title}, ${size(mat.outer, job.units)}${count}, ${boards}${corners}`;
}

function sharedBlock(
  { text, sense, uses }: SharedSetting,
  jobs: readonly BenchJob[],
  width: number,
  style: Style,
  fonts: Fonts,
): Block {
  const said = [...new Set(uses.map(({ job }) => job))].map((job) => {
    const orders = uses
      .filter((use) => use.job === job)
      .map(({ layer, opening, side }) => {
        const found = jobs[job]!.strokes.filter((s) => s.layer === layer && s.opening === opening && s.side === side);
        return found.map((stroke) => `${stroke.order} ${backSide(stroke)}`).join(', ');
      });
    return `${nameOf(jobs[job]!, job)}: stroke ${[...new Set(orders)].join(', ')}`;
  });
  const reading = line(text, READING, fonts);
  const set = level([
    [0, reading],
    [reading.width + 2, line(sense === 'exact' ? '' : sense, HEAD, fonts)],
  ]);
  return stacked([set, paragraph(said.join('; '), width, style, fonts)], 0.6);
}
