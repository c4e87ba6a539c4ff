import type { MatLayer } from '../../mat/model.ts';
import { defined } from '../../problems/defined.ts';
import { LEAST_FREED, mostUncut } from '../uncut.ts';
import type { LotWork } from './lots.ts';
import type { LotStep } from './model.ts';
import { pencilMarks } from './pencil.ts';

/** What is done to the pieces of a lot before its first cut. */
export function beginning({ lot: { layer, work, up }, source }: LotWork, lot: number): readonly LotStep[] {
  const { mat, job } = source;
  if (work === 'groove') return [{ kind: 'marks', lot }];
  const steps: LotStep[] = [];
  const own = mat.layers[layer - 1]!;
  const above = mat.layers[layer - 2];
  if (above !== undefined && job.bench.stack === 'together') {
    const of = dropsThrough(above) ? 'fallout' : 'waste';
    steps.push({ kind: 'slip', lot, of, thickness: above.board.thickness });
    steps.push({ kind: 'fix', lot, short: own.trimBack, tapedFallout: of === 'fallout' });
  }
  const openings = (has: (index: number) => boolean): readonly number[] =>
    mat.openings.flatMap((_, i) => (has(i) ? [i + 1] : []));
  const inked = openings((i) => layer === 1 && job.openings[i]?.decor?.some(({ kind }) => kind === 'ink') === true);
  if (inked.length > 0) steps.push({ kind: 'ink', lot, openings: inked });
  const pencil = job.bench.mark === 'pencil' ? pencilMarks(mat, job, source.strokes, layer) : undefined;
  if (up === 'back') steps.push({ kind: 'marks', lot, ...defined({ pencil }) });
  if (layer === 1 && mat.lettering !== undefined) steps.push({ kind: 'lettering', lot });
  const curved = openings((i) => {
    const { hidden, face } = mat.openings[i]!.layers[layer - 1]!;
    return hidden !== true && face.segments.some(({ kind }) => kind !== 'line');
  });
  if (curved.length > 0) steps.push({ kind: 'curves', lot, openings: curved });
  return steps;
}

/** A reverse bevel has its fallout wider at the back: with an under mat fixed there it cannot drop out. */
export const dropsThrough = ({ bevel, setback }: Pick<MatLayer, 'bevel' | 'setback'>): boolean =>
  !bevel.reverse || setback <= 0;

/** What is done to the pieces of a lot after its last cut. */
export function ending({ lot: { layer, work }, source }: LotWork, lot: number, isLast: boolean): readonly LotStep[] {
  if (work === 'groove') return [];
  const { mat, job, strokes } = source;
  const steps: LotStep[] = [];
  const most = mostUncut(strokes, layer);
  if (most >= LEAST_FREED) steps.push({ kind: 'corners', lot, most });
  const together = job.bench.stack === 'together';
  const isLowest = layer === mat.layers.length;
  if (!together || !dropsThrough(mat.layers[layer - 1]!)) steps.push({ kind: 'lift', lot, layers: [layer] });
  else if (isLowest) steps.push({ kind: 'lift', lot, layers: droppedWith(source) });
  if (!together && isLast && mat.layers.length > 1) {
    steps.push({ kind: 'join', lot, layers: mat.layers.map((_, i) => i + 1) });
  }
  return steps;
}

/** The layers whose fallouts come out with the lowest one's: from the last that had to be lifted by itself on. */
function droppedWith({ mat }: LotWork['source']): readonly number[] {
  const layers = mat.layers.map((_, i) => i + 1);
  const alone = layers.filter((layer) => !dropsThrough(mat.layers[layer - 1]!));
  return layers.filter((layer) => !alone.includes(layer));
}
