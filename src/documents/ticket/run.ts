import type { SharedSetting } from '../../bench/settings.ts';
import { mostUncut } from '../../bench/uncut.ts';
import type { Drawing } from '../../drawing/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Size } from '../../geometry/point.ts';
import { theNamed } from '../../mat/layers.ts';
import type { Section } from '../../text/bench-flow.ts';
import { action, HEAD, moved, type Part, READING, scaled, TEXT, textPart } from '../../text/bench-type.ts';
import { capHeight, set, widthOf } from '../../text/type-scale.ts';
import { size } from '../proof/words.ts';
import { backSide } from '../words/back-side.ts';
import { reverseCornerWords } from '../words/reverse-corners.ts';
import type { BenchJob } from './model.ts';
import { listedSheets } from './page.ts';

/** What lies in front of several tickets: the jobs in their order, and the settings that serve more than one of them. */
export function runList(
  jobs: readonly BenchJob[],
  shared: readonly SharedSetting[],
  paper: Size,
  fonts: Fonts,
): readonly Drawing[] {
  const sections: Section[] = [
    {
      title: 'Order',
      parts: (width, { scale }) => jobs.map((work, i) => action(jobLine(work, i), width, scaled(TEXT, scale), fonts)),
    },
    ...(shared.length === 0
      ? []
      : [
          {
            title: 'Set once, cut in all',
            aside: 'sides seen from the BACK',
            parts: (width: number, { scale }: { readonly scale: number }) =>
              shared.map((setting) => sharedPart(setting, jobs, width, scale, fonts)),
          },
        ]),
  ];
  const lead = `${jobs.length} tickets, by board and guide setting`;
  return listedSheets({ title: 'Run list', name: 'Run list', lead, group: 'run', sections, paper, fonts });
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

function sharedPart(
  { text, sense, uses }: SharedSetting,
  jobs: readonly BenchJob[],
  width: number,
  scale: number,
  fonts: Fonts,
): Part {
  const cap = capHeight(READING, fonts);
  const head = scaled(HEAD, scale);
  const said = [...new Set(uses.map(({ job }) => job))].map((job) => {
    const orders = uses
      .filter((use) => use.job === job)
      .map(({ layer, opening, side }) => {
        const found = jobs[job]!.strokes.filter((s) => s.layer === layer && s.opening === opening && s.side === side);
        return found.map((stroke) => `${stroke.order} ${backSide(stroke)}`).join(', ');
      });
    return `${nameOf(jobs[job]!, job)}: stroke ${[...new Set(orders)].join(', ')}`;
  });
  const words = textPart(fraction(said.join('; ')), width, scaled(TEXT, scale), fonts);
  const top = cap + 2.2;
  const items = [
    set(text, 0, cap, READING),
    ...(sense === 'exact' ? [] : [set(sense, widthOf(text, READING, fonts) + 2, cap, head)]),
    ...moved(words.items, 0, top),
  ];
  return { items, height: top + words.height + 1.5 };
}
