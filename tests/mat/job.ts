import type { BenchRequest } from '../../src/job/bench.ts';
import type { Job } from '../../src/job/job.ts';
import type { LayerRequest } from '../../src/job/layer.ts';
import type { OpeningRequest } from '../../src/job/opening.ts';
import type { Mat } from '../../src/mat/model.ts';
import { solve } from '../../src/mat/solve.ts';
import { showPath } from '../../src/problems/show.ts';
import type { Board } from '../../src/shop/board.ts';
import { MM_PER_INCH } from '../../src/units/units.ts';

export const inch = (amount: number): number => amount * MM_PER_INCH;
export const inches = (width: number, height: number) => ({ width: inch(width), height: inch(height) });
export const all = (length: number) => ({ top: length, right: length, bottom: length, left: length });

export const board = (thickness = 1.4, more: Partial<Board> = {}): Board => ({
  id: 'bone-4',
  name: 'bone-4',
  thickness,
  colour: '#efe9dc',
  core: '#ffffff',
  sheets: [],
  directional: false,
  ...more,
});

export const layer = (more: Partial<LayerRequest> = {}): LayerRequest => ({
  board: board(),
  bevel: { angle: 45, reverse: false },
  trimBack: 0,
  ...more,
});

export const opening = (more: Partial<OpeningRequest> = {}): OpeningRequest => ({
  shape: 'rectangle',
  overlap: {},
  measure: 'face',
  ...more,
});

const bench: BenchRequest = {
  head: {
    id: 'pull-45',
    bevel: 45,
    opening: 'left',
    straightedge: 0,
    straightedgeOn: 'border',
    pin: false,
    strokesPerBlade: 64,
    start: [],
    stop: [],
    overrun: 0.25,
    calibrated: false,
  },
  guide: { graduation: inch(1 / 16), a: 0, b: 1 },
  graduation: inch(1 / 16),
  snap: false,
  stack: 'apart',
  mark: 'pattern',
};

export type Changes = Partial<Omit<Job, 'mat' | 'bench'>> & {
  readonly mat?: Partial<Job['mat']>;
  readonly bench?: Partial<BenchRequest>;
};

/** A job in inches with one layer and nothing else given. */
export function jobOf(changes: Changes = {}): Job {
  const { mat, bench: benchChanges, ...more } = changes;
  return {
    title: 'Heron',
    units: 'in',
    openings: [opening()],
    count: 1,
    print: {
      paper: 'letter',
      margin: all(6.35),
      lap: 12.7,
      join: 'lap',
      transfer: 'prick',
      paperThickness: 0.1,
    },
    ...more,
    mat: { border: {}, layers: [layer()], ...mat },
    bench: { ...bench, ...benchChanges },
  };
}

/** What solving makes of a job that must be right. */
export function solvedMat(job: Job): Mat {
  const result = solve(job);
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1));
  return result.value;
}

/** Every problem and warning of a job, as `code path`. */
export function complaints(job: Job): readonly string[] {
  const result = solve(job);
  const problems = result.ok ? result.warnings : result.problems;
  return problems.map((each) => `${each.code} ${showPath(each.path)}`);
}

/** The double mat that the job format is explained with, 16 × 20 in. */
export function sampleJob(changes: Changes = {}): Job {
  return jobOf({
    openings: [opening({ artwork: inches(10.5, 13.5), overlap: all(inch(1 / 4)) })],
    ...changes,
    mat: {
      outer: inches(16, 20),
      weighting: { kind: 'add', length: inch(1 / 2) },
      layers: [
        layer(),
        layer({ board: board(1.4, { id: 'slate-4', name: 'slate-4' }), reveal: inch(1 / 4), trimBack: inch(1 / 8) }),
      ],
      ...changes.mat,
    },
    bench: { snap: true, stack: 'together', ...changes.bench },
  });
}
