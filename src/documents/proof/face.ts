import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { artBox, bareItems, type PlacedPicture, piecePens } from './piece.ts';

/**
 * The face of a piece in its own mm, as the proof draws it: what of it lies in `within`. Openings whose picture is among
 * `known` have it under its name, all others a placeholder without words, so that no rare characters are wanted.
 */
export function faceDrawing(
  mat: Mat,
  job: Job,
  { within, known, fonts }: { readonly within: Box; readonly known: ReadonlySet<string>; readonly fonts: Fonts },
): Drawing {
  const pictures = mat.openings.map((opening, i): PlacedPicture | undefined => {
    const { picture } = job.openings[i]!;
    return picture !== undefined && known.has(picture) ? { id: picture, box: artBox(opening) } : undefined;
  });
  const at = { x: -within.x, y: -within.y };
  return {
    title: job.title,
    width: within.width,
    height: within.height,
    view: 'face',
    pens: piecePens(job, 1),
    groups: [
      {
        name: 'piece',
        label: 'The piece',
        shown: true,
        items: bareItems(mat, job, { at, scale: 1 }, pictures, [], fonts),
      },
    ],
  };
}
