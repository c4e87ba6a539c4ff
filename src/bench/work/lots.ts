import { decor, grooveDepth } from '../../mat/decor.ts';
import { defined } from '../../problems/defined.ts';
import { boardKey } from '../../shop/board.ts';
import { handHeld } from '../../shop/head.ts';
import type { BenchJob } from '../bench-job.ts';
import type { Stroke } from '../model.ts';
import type { Lot } from './model.ts';

/** A blank that comes out of a fallout, and the layers of the job that must be cut before it drops out. Layers from 1. */
export interface Wait {
  readonly job: number;
  readonly layer: number;
  readonly after: { readonly job: number; readonly layers: readonly number[] };
}

/** A lot with what is cut in it. */
export interface LotWork {
  readonly lot: Lot;
  readonly source: BenchJob;
  readonly strokes: readonly Stroke[];
  /** Head, bevel, board, thickness and depth: lots of one key are cut with nothing set but the guide. */
  readonly key: string;
}

/** From this on a board is cut in two passes: between 4-ply and double weight (Saitzyk, Art Hardware, 1987: 1.5 and 2.5 mm). */
const THICK = 2;

/** Half of a thick board first, then all of it. */
const depthsOf = (thickness: number): readonly number[] =>
  thickness >= THICK ? [thickness / 2, thickness] : [thickness];

/** Job by job from the top mat down, grooves before the openings that they frame. */
export function lotsOf(jobs: readonly BenchJob[], waits: readonly Wait[] = []): readonly LotWork[] {
  const found = jobs.flatMap((source, job) => [
    ...grooveLots(source, job),
    ...source.mat.layers.map((_, index) => layerLot(source, job, index)),
  ]);
  const numbersOf = (job: number, layers: readonly number[]): readonly number[] =>
    found.flatMap(({ lot }, i) => (lot.job === job && layers.includes(lot.layer) ? [i] : []));
  return found.map(({ lot, ...work }, i): LotWork => {
    const own = numbersOf(lot.job, [lot.layer]).filter((other) => other < i);
    const together = jobs[lot.job]!.job.bench.stack === 'together';
    const above = together ? numbersOf(lot.job, [lot.layer - 1]) : [];
    const waited = waits.filter(({ job, layer }) => job === lot.job && layer === lot.layer);
    const fallouts = waited.flatMap(({ after }) => numbersOf(after.job, after.layers));
    return { ...work, lot: { ...lot, after: [...new Set([...own, ...above, ...fallouts])] } };
  });
}

function layerLot(source: BenchJob, job: number, index: number): LotWork {
  const { board, bevel } = source.mat.layers[index]!;
  return lotWork(source, job, {
    layer: index + 1,
    work: 'opening',
    up: 'back',
    angle: bevel.angle,
    depths: depthsOf(board.thickness),
    strokes: source.strokes.filter((stroke) => stroke.layer === index + 1),
  });
}

/** Grooves of one angle and depth are one lot: head and depth are set for them alone. */
function grooveLots(source: BenchJob, job: number): readonly LotWork[] {
  const requests = decor(source.mat, source.job).filter(({ request }) => request.kind === 'groove');
  const kinds = new Map(requests.map(({ request }) => [`${request.angle} ${grooveDepth(request)}`, request]));
  return [...kinds].flatMap(([kind, request]): LotWork[] => {
    const own = requests.filter((each) => `${each.request.angle} ${grooveDepth(each.request)}` === kind);
    const strokes = source.grooves.filter(({ opening, number }) =>
      own.some((each) => each.opening + 1 === opening && each.number === number),
    );
    const depths = [grooveDepth(request)];
    return [lotWork(source, job, { layer: 1, work: 'groove', up: 'face', angle: request.angle, depths, strokes })];
  });
}

function lotWork(
  source: BenchJob,
  job: number,
  {
    angle,
    strokes,
    ...own
  }: Pick<Lot, 'layer' | 'work' | 'up' | 'depths'> & Pick<LotWork, 'strokes'> & { readonly angle: number },
): LotWork {
  const { head } = source.job.bench;
  const { name, board } = source.mat.layers[own.layer - 1]!;
  const lot: Lot = {
    job,
    ...defined({ number: source.number ?? source.job.number }),
    title: source.job.title,
    name,
    ...own,
    count: source.job.count,
    head: { id: head.id, angle, handHeld: handHeld(head) },
    board: {
      id: board.id,
      name: board.name,
      thickness: board.thickness,
      colour: board.colour,
      ...defined({ code: board.code }),
    },
    after: [],
  };
  const key = [head.id, angle, boardKey(board), own.work, ...own.depths].join('|');
  return { lot, source, strokes, key };
}
