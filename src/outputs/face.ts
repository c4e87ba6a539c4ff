import { faceDrawing } from '../documents/proof/face.ts';
import { drawnBox } from '../drawing/bounds.ts';
import type { Frame } from '../drawing/document.ts';
import type { Drawing } from '../drawing/model.ts';
import { loadFonts } from '../fonts/load.ts';
import type { Fonts } from '../fonts/model.ts';
import { pieceBox } from '../mat/framed.ts';
import { defined } from '../problems/defined.ts';
import { fail, type Result, succeed } from '../problems/problem.ts';
import { loadSvg } from '../writers/svg/load.ts';
import type { Prepared } from './prepare.ts';
import type { Solved } from './solve-job.ts';
import { NO_WINDOW, type OutputFile } from './write.ts';

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

export const FACE = 'face.svg';

/** The piece as the proof shows it, pictures and all: what stands for the job in a list. Errors: `svg-window`. */
export async function faceFile({ drawn: { documents, pictures }, ready }: Prepared): Promise<Result<OutputFile>> {
  const { hasWindow, encodePageSvg } = await loadSvg();
  if (!hasWindow()) return fail([NO_WINDOW]);
  const { document } = documents[0]!;
  const [page] = document.pages;
  const { drawing } = page!.frames[0]!;
  const { fonts } = ready.settled;
  const group = drawing.groups.find(({ name }) => name === 'piece')!;
  const alone = { ...drawing, groups: [group] };
  const clip = drawnBox(alone, fonts)!;
  const frame: Frame = { drawing: alone, clip, turn: 0, at: { x: 0, y: 0 } };
  const bytes = encodePageSvg(
    document,
    { ...page!, name: 'face', paper: clip, scale: { x: 1, y: 1 }, frames: [frame] },
    { fonts, ...defined({ pictures }) },
  );
  return succeed({ name: FACE, bytes });
}
