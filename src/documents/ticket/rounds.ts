import type { Stroke } from '../../bench/model.ts';
import type { LotWork } from '../../bench/work/lots.ts';
import type { CutStep, Lot, LotStep, OrderOfWork } from '../../bench/work/model.ts';

/** What is cut of one lot at one setting, by its first piece in its first pass. */
export interface RunCut {
  readonly lot: number;
  readonly strokes: readonly { readonly step: CutStep; readonly stroke: Stroke }[];
}

/** One line of a run list: things done between cuts, of one kind, or one setting with all that is cut at it. */
export type RunItem =
  | { readonly kind: 'steps'; readonly steps: readonly LotStep[] }
  | { readonly kind: 'row'; readonly cuts: readonly RunCut[] };

/** What is cut with one head in one board, until another is taken up. */
export interface RunRound {
  /** Any of its lots: they are alike in head, bevel, board and depth. */
  readonly lot: Lot;
  readonly items: readonly RunItem[];
}

/** What ends work on a lot is done where it ends, before anything that begins with another. */
const ENDS: ReadonlySet<LotStep['kind']> = new Set(['corners', 'lift', 'join']);
/** In which order steps of one moment are said; each lot's own keep theirs. */
const KINDS: readonly LotStep['kind'][] = [
  'corners',
  'lift',
  'join',
  'slip',
  'fix',
  'ink',
  'marks',
  'lettering',
  'curves',
];

const keyOf = ({ head, board, work, depths }: Lot): string =>
  [head.id, head.angle, board.name, work, ...depths].join('|');

/** The order of work of a day, round by round and line by line. */
export function runRounds({ lots, steps }: OrderOfWork, works: readonly LotWork[]): readonly RunRound[] {
  const rounds: { lot: Lot; items: RunItem[] }[] = [];
  let waiting: LotStep[] = [];
  let row: { lot: number; strokes: { step: CutStep; stroke: Stroke }[] }[] | undefined;
  const inRound = (lot: Lot): { lot: Lot; items: RunItem[] } => {
    const last = rounds.at(-1);
    if (last !== undefined && keyOf(last.lot) === keyOf(lot)) return last;
    rounds.push({ lot, items: [] });
    return rounds.at(-1)!;
  };
  const flush = (round: { items: RunItem[] }, said: readonly LotStep[]): void => {
    for (const kind of KINDS) {
      const own = said.filter((step) => step.kind === kind).sort((a, b) => a.lot - b.lot);
      for (const alike of byWay(own)) round.items.push({ kind: 'steps', steps: alike });
    }
  };
  for (const step of steps) {
    if (step.kind === 'cut') {
      if (row === undefined) {
        flush(
          rounds.at(-1) ?? inRound(lots[step.lot]!),
          waiting.filter(({ kind }) => ENDS.has(kind)),
        );
        const round = inRound(lots[step.lot]!);
        flush(
          round,
          waiting.filter(({ kind }) => !ENDS.has(kind)),
        );
        waiting = [];
        row = [];
        round.items.push({ kind: 'row', cuts: row });
      }
      if (step.piece > 1 || step.pass > 1) continue;
      const stroke = works[step.lot]!.strokes.find(({ order }) => order === step.stroke)!;
      if (row.at(-1)?.lot !== step.lot) row.push({ lot: step.lot, strokes: [] });
      row.at(-1)!.strokes.push({ step, stroke });
    } else {
      // Depths of a thick board are set within one setting.
      if (step.kind === 'depth' && step.passes > 1) continue;
      row = undefined;
      if ('lot' in step) waiting.push(step);
    }
  }
  const left = waiting;
  if (left.length > 0) flush(rounds.at(-1) ?? inRound(lots[left[0]!.lot]!), left);
  return rounds;
}

/** Slip sheets of fallouts apart from those of waste board, of each thickness. */
function byWay(steps: readonly LotStep[]): readonly (readonly LotStep[])[] {
  const found = new Map<string, LotStep[]>();
  for (const step of steps) {
    const way = step.kind === 'slip' ? `${step.of} ${step.thickness}` : '';
    found.set(way, [...(found.get(way) ?? []), step]);
  }
  return [...found.values()];
}

/** `A5 × 6`, and which of its layers where it has several. */
export function lotName(
  { job, layer, name, count, work }: Lot,
  works: readonly LotWork[],
  names: readonly string[],
): string {
  const several = works.some(({ lot }) => lot.job === job && lot.layer !== layer);
  const which = work === 'groove' ? ' grooves' : several ? ` ${name}` : '';
  return `${names[job]!}${which}${count === 1 ? '' : ` × ${count}`}`;
}
