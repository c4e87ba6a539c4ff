import { build, type Solved, solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';
import { leavesBoard } from '../simulate/compare.ts';
import { plus } from '../simulate/figure.ts';

export interface Trial {
  readonly solved: boolean;
  readonly patterns: boolean;
  /** Strokes whose cut was laid on its board. */
  readonly strokes: number;
  /** What should not be, in plain words. */
  readonly found: readonly string[];
}

/** One job through reading, solving and the strokes, and through its documents where that is wished. Never throws. */
export async function trial(job: string, documents: boolean): Promise<Trial> {
  const found: string[] = [];
  let strokes = 0;
  try {
    const solved = solveJob(job, { fonts: FONTS, file: 'job.yaml' });
    if (solved.ok) {
      if (!finite(solved.value.report)) found.push('a number that is none');
      strokes = solved.value.strokes.length;
      found.push(...off(solved.value));
      const made = documents ? await build(job, { file: 'job.yaml' }) : undefined;
      return { solved: true, patterns: made?.ok === true, strokes, found };
    }
    const bare = solved.problems.find((p) => p.severity === 'error' && (p.line === undefined || p.message === ''));
    if (bare !== undefined) found.push(`a problem without its place: ${bare.code}`);
    if (!solved.problems.some((p) => p.severity === 'error')) found.push('refused without an error');
    if (documents && (await build(job, { file: 'job.yaml' })).ok) found.push('output from wrong input');
  } catch (problem) {
    found.push(problem instanceof Error ? (problem.stack ?? problem.message) : String(problem));
  }
  return { solved: false, patterns: false, strokes, found };
}

/**
 * Cuts that leave their board: of each stroke the line on the back and the edge on the face, and of every opening both
 * outlines' boxes, in the back view, on the blank of their layer.
 */
function off({ mat, strokes, job }: Solved): readonly string[] {
  const { width } = mat.outer;
  return mat.layers.flatMap(({ blankBox }, k) => {
    const corner = { x: width - blankBox.x - blankBox.width, y: blankBox.y };
    const cut = strokes
      .filter(({ layer, cut: done }) => layer === k + 1 && done !== true)
      .flatMap(({ line, face }) => [line.from, line.to, face.from, face.to]);
    const boxes = mat.openings.flatMap(({ layers }) => {
      const { faceBox, backBox, cut: done } = layers[k]!;
      if (done === true) return [];
      return [faceBox, backBox].flatMap((each) => [
        { x: width - each.x, y: each.y },
        { x: width - each.x - each.width, y: each.y + each.height },
      ]);
    });
    // A board of its own size that is cut apart is marked from its own edges.
    const own = job.bench.stack === 'apart' && job.asCut?.blanks[k] !== undefined;
    const laid = [...cut.map((p) => (own ? p : plus(p, corner, -1))), ...boxes.map((p) => plus(p, corner, -1))];
    return leavesBoard(laid, blankBox).map((fault) => `${fault} in layer ${k + 1}`);
  });
}

function finite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  return typeof value !== 'object' || value === null || Object.values(value).every(finite);
}
