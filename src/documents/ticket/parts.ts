import type { Stroke } from '../../bench/model.ts';
import type { LotWork } from '../../bench/work/lots.ts';
import type { CutStep, Lot, LotStep, OrderOfWork, ToolStep } from '../../bench/work/model.ts';

/** A cut with the stroke that it makes. */
export interface Cut {
  readonly step: CutStep;
  readonly stroke: Stroke;
}

/** What is done on one lot of a job that is worked alone: before its cuts, setting by setting, and after them. */
export interface LotPart {
  readonly lot: Lot;
  readonly strokes: readonly Stroke[];
  readonly before: readonly (LotStep | Exclude<ToolStep, { kind: 'guide' | 'guide-off' }>)[];
  /** The cuts of the first piece in its first pass; those at one setting follow each other. */
  readonly cuts: readonly Cut[];
  readonly after: readonly LotStep[];
}

/** The order of work of one job, lot by lot. */
export function lotParts({ steps }: OrderOfWork, lots: readonly LotWork[]): readonly LotPart[] {
  const parts = new Map<number, { before: LotPart['before'][number][]; cuts: Cut[]; after: LotStep[] }>();
  const partOf = (lot: number) => {
    const part = parts.get(lot) ?? { before: [], cuts: [], after: [] };
    parts.set(lot, part);
    return part;
  };
  let waiting: LotPart['before'][number][] = [];
  for (const step of steps) {
    switch (step.kind) {
      case 'guide':
      case 'guide-off':
        break;
      case 'head':
      case 'depth':
        waiting.push(step);
        break;
      case 'cut': {
        const part = partOf(step.lot);
        if (part.cuts.length === 0) part.before.push(...waiting);
        waiting = [];
        if (step.piece > 1 || step.pass > 1) break;
        const stroke = lots[step.lot]!.strokes.find(({ order }) => order === step.stroke)!;
        part.cuts.push({ step, stroke });
        break;
      }
      default: {
        const part = partOf(step.lot);
        if (part.cuts.length === 0) part.before.push(step);
        else part.after.push(step);
      }
    }
  }
  return [...parts].map(([index, part]) => ({ lot: lots[index]!.lot, strokes: lots[index]!.strokes, ...part }));
}
