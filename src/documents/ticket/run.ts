import type { BenchJob } from '../../bench/bench-job.ts';
import { type LotWork, lotsOf, type Wait } from '../../bench/work/lots.ts';
import type { LotStep, OrderOfWork } from '../../bench/work/model.ts';
import { work as orderOfWork } from '../../bench/work/work.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Margined } from '../../settle/settled.ts';
import { boardTitle } from '../../shop/board.ts';
import type { Entry } from '../../text/entries.ts';
import type { Units } from '../../units/units.ts';
import { listedSheets } from '../bench-page.ts';
import { size } from '../proof/words.ts';
import { fine } from '../words/fine.ts';
import { type Blades, bladesOf } from './blades.ts';
import { lotName, type RunItem, type RunRound, runRounds } from './rounds.ts';
import { runRow } from './run-row.ts';

/** What lies in front of several tickets: the whole day as one order of work, each setting of the guide once a board. */
export function runList(
  jobs: readonly BenchJob[],
  waits: readonly Wait[],
  paper: Margined,
  fonts: Fonts,
): readonly Drawing[] {
  const day = orderOfWork(jobs, waits);
  const works = lotsOf(jobs, waits);
  const pieces = jobs.reduce((sum, { job }) => sum + job.count, 0);
  const settings = `${day.settings} ${day.settings === 1 ? 'setting' : 'settings'} of the guide`;
  const intro = `${jobs.length === 1 ? 'one ticket' : `${jobs.length} tickets`}, ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}, ${settings}`;
  const entries = dayEntries(day, works, jobs, fonts);
  return listedSheets({ title: 'Run list', name: 'Run list', intro, group: 'run', entries, jobs, paper, fonts });
}

function dayEntries(
  day: OrderOfWork,
  works: readonly LotWork[],
  jobs: readonly BenchJob[],
  fonts: Fonts,
): readonly Entry[] {
  const names = jobs.map(nameOf);
  const units = jobs[0]!.job.units;
  return [
    { kind: 'section', text: 'Tickets' },
    ...jobs.map((job, i): Entry => ({ kind: 'action', text: jobLine(job, names[i]!) })),
    { kind: 'section', text: 'Before the first cut' },
    {
      kind: 'action',
      text: 'All blanks cut, each with its ticket’s number and TOP on its back; each piece’s waste or slip sheet at hand.',
    },
    ...bladesOf(works).map((blades): Entry => ({ kind: 'action', text: bladeWords(blades) })),
    ...runRounds(day, works).flatMap((round) => roundEntries(round, works, names, units, fonts)),
  ];
}

const nameOf = ({ number }: BenchJob, index: number): string => number ?? `ticket ${index + 1}`;

function jobLine({ job, mat }: BenchJob, name: string): string {
  const boards = mat.layers.map(({ board }) => boardTitle(board)).join(' + ');
  const count = job.count === 1 ? '' : ` × ${job.count}`;
  return `${name}: ${job.title}, ${size(mat.outer, job.units)}${count}, ${boards}`;
}

/** Where no blade was counted: common practice, no source, for what one lasts. */
const bladeWords = ({ head, strokes, perBlade, blades }: Blades): string =>
  `Head ${head}: ${blades} ${blades === 1 ? 'blade' : 'blades'} for ${strokes} strokes, ${perBlade} to a blade.`;

function roundEntries(
  { lot, items }: RunRound,
  works: readonly LotWork[],
  names: readonly string[],
  units: Units,
  fonts: Fonts,
): readonly Entry[] {
  const [first, second] = lot.depths;
  const face = lot.up === 'face' ? 'the grooves, FACE up' : `sides seen from the BACK`;
  const depth = second === undefined ? `depth ${fine(first!, units)}` : 'two passes';
  return [
    {
      kind: 'section',
      colour: lot.board.colour,
      text: `${boardTitle(lot.board)}, ${fine(lot.board.thickness, units)}`,
      aside: [`head ${lot.head.id}`, `${lot.head.angle}°`, depth, face].join(', '),
    },
    ...(second === undefined
      ? []
      : [
          {
            kind: 'text',
            text: `At each setting all at a depth of ${fine(first!, units)} (left box), then all again at ${fine(second, units)} (right box).`,
          } as const,
        ]),
    ...(lot.head.handHeld
      ? [{ kind: 'text', text: 'Along a straightedge, each stroke at its distance.' } as const]
      : []),
    ...items.map((item): Entry => itemEntry(item, works, names, fonts)),
  ];
}

function itemEntry(item: RunItem, works: readonly LotWork[], names: readonly string[], fonts: Fonts): Entry {
  if (item.kind === 'steps') return { kind: 'action', text: stepsWords(item.steps, works, names) };
  return { kind: 'figure', make: (width, { text }) => runRow(item.cuts, works, names, width, text, fonts) };
}

/** What is done to several lots at one moment, and to which; the tickets say how. */
function stepsWords(steps: readonly LotStep[], works: readonly LotWork[], names: readonly string[]): string {
  const lots = steps.map(({ lot }) => lotName(works[lot]!.lot, works, names)).join(', ');
  return `${doing(steps[0]!, works[steps[0]!.lot]!)}: ${lots}.`;
}

function doing(step: LotStep, { source }: LotWork): string {
  switch (step.kind) {
    case 'marks':
      return 'Mark out, as the ticket says';
    case 'slip':
      return step.of === 'fallout'
        ? 'The mat above face down, its fallout back in place'
        : `The mat above face down, waste board of ${fine(step.thickness, source.job.units)} loose in its opening`;
    case 'fix':
      return 'Fix behind the mat above, as the ticket says';
    case 'curves':
      return 'Cut the curves, as the ticket says';
    case 'lettering':
      return 'Cut the lettering, as the ticket says';
    case 'ink':
      return 'Rule the ink lines on the FACE, as the ticket says';
    case 'corners':
      return 'Reverse bevel: free the corners from the back, as the ticket says';
    case 'lift':
      return 'Lift the fallouts out';
    case 'join':
      return 'Put the mats together, as the ticket says';
    default: {
      const never: never = step;
      throw new TypeError(`unknown step ${JSON.stringify(never)}`);
    }
  }
}
