import { pattern } from '../../documents/pattern/pattern.ts';
import { loadFonts } from '../../fonts/load.ts';
import { userTexts } from '../../job/printed-texts.ts';
import { onOwnBoard } from '../../mat/own-board.ts';
import type { Solved } from '../../outputs/solve-job.ts';
import type { Piece } from './answers.ts';
import { seen } from './seen.ts';

/** The back of every board with its strokes, as the pattern draws it. */
export async function backsOf({ job, mat, strokes }: Solved): Promise<NonNullable<Piece['backs']>> {
  const fonts = await loadFonts(userTexts(job).map(({ text }) => text));
  return mat.layers.map((layer, i) => ({
    name: layer.name,
    drawing: seen(pattern(onOwnBoard(mat, job, i), strokes, job, i, { fonts }).drawing),
  }));
}
