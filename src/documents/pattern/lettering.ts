import { mirror } from '../../bench/outline.ts';
import type { Item } from '../../drawing/model.ts';
import { type Box, box } from '../../geometry/box.ts';
import { parallelOf } from '../../geometry/parallel.ts';
import { type Path, placedPath } from '../../geometry/path.ts';
import type { Job } from '../../job/job.ts';
import { setback } from '../../mat/bevel.ts';
import type { LetterPart, Mat, MatLettering } from '../../mat/model.ts';
import { showLength } from '../../units/print.ts';

/** A text of the top mat in the back view, moved by `by`. */
export interface Lettered {
  readonly items: readonly Item[];
  readonly box: Box;
  readonly what: string;
  readonly lines: readonly string[];
}

export function letteredBack(mat: Mat, job: Job, by: number): readonly Lettered[] {
  return (mat.lettering ?? []).map((made, i) => {
    const { x, y, width, height } = made.box;
    return {
      items: made.parts.map((part, k): Item => {
        const path = mirror(lineOf(mat, job, made, part), mat.outer.width);
        const placed = placedPath(path, (p) => ({ x: p.x + by, y: p.y + by }));
        return { kind: 'path', pen: 'cut', paths: [placed], id: `cut-letters-${i + 1}-${k + 1}` };
      }),
      box: box(mat.outer.width - x - width + by, y + by, width, height),
      what: `lettering ${made.text}`,
      lines: letteringWords(made, job),
    };
  });
}

/** The line to follow on the back; paper that stays on lifts a bevel, not an upright cut. */
function lineOf(mat: Mat, job: Job, { square }: MatLettering, { face, back }: LetterPart): Path {
  if (square || job.print.transfer !== 'cut-through') return back;
  const { board, bevel } = mat.layers[0]!;
  const aside = setback(board.thickness + job.print.paperThickness, bevel);
  const lifted = parallelOf(face, bevel.reverse ? aside : -aside);
  return typeof lifted === 'string' ? back : lifted;
}

export function letteringWords({ text, square, bridges, bridge }: MatLettering, job: Job): readonly string[] {
  const held = bridges === 0 ? [] : [`${bridges} bridges of ${showLength(bridge, job.units)} stay`];
  return [`${text}: ${square ? 'cut upright' : 'bevelled'}, by template or machine`, ...held];
}
