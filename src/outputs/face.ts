import { faceDrawing } from '../documents/proof/face.ts';
import type { Drawing } from '../drawing/model.ts';
import { loadFonts } from '../fonts/load.ts';
import type { Fonts } from '../fonts/model.ts';
import { pieceBox } from '../mat/framed.ts';
import { fail, type Result, succeed } from '../problems/problem.ts';
import { loadSvg } from '../writers/load-svg.ts';
import type { Solved } from './solve-job.ts';
import { NO_WINDOW } from './write.ts';

type Face = Pick<Solved, 'job' | 'mat'>;

const drawn = ({ job, mat }: Face, fonts: Fonts): Drawing =>
  faceDrawing(mat, job, { within: pieceBox(mat, job), known: new Set(), fonts });

/** The framed piece from the face, without its pictures. */
export async function face(job: Face): Promise<Drawing> {
  return drawn(job, await loadFonts([]));
}

/** The same as SVG. Errors: `svg-window`, where there is nothing to build it in. */
export async function faceSvg(job: Face): Promise<Result<string>> {
  const fonts = await loadFonts([], { outlines: true });
  const { hasWindow, writeSvg } = await loadSvg();
  if (!hasWindow()) return fail([NO_WINDOW]);
  return succeed(writeSvg(drawn(job, fonts), { fonts }));
}
