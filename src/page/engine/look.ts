import { artBox, bareItems, type PlacedPicture, piecePens } from '../../documents/proof/piece.ts';
import type { Drawing } from '../../drawing/model.ts';
import { loadFonts } from '../../fonts/load.ts';
import type { Job } from '../../job/job.ts';
import { NEEDS_FONTS } from '../../mat/lettering.ts';
import type { Mat } from '../../mat/model.ts';
import { type Solved, solveJob } from '../../outputs/solve-job.ts';
import { reasons } from '../../why.ts';
import type { Look, LookRequest, Piece, View } from './answers.ts';

/** What only the large worker has. */
export interface More {
  readonly backs: (solved: Solved) => Promise<NonNullable<Piece['backs']>>;
}

/** What a text comes to, as it is to be seen: everything is plain data. */
export async function lookAt(request: LookRequest, more?: More): Promise<Look> {
  const { text, file, shop, pictures, view } = request;
  const asked = { file, ...(shop === undefined ? {} : { shop }) };
  const fonts = more === undefined ? {} : { fonts: await loadFonts([], { outlines: true }) };
  const solved = solveJob(text, { ...asked, ...fonts });
  if (!solved.ok) {
    const lacks = solved.problems.some(({ code }) => code === NEEDS_FONTS);
    return { problems: solved.problems, ...(lacks ? { needsOutlines: true as const } : {}) };
  }
  const { value } = solved;
  const piece = await pieceOf(value, view, new Set(pictures));
  const backs = view === 'back' && more !== undefined ? { backs: await more.backs(value) } : {};
  return { problems: solved.warnings, piece: { ...piece, ...backs } };
}

async function pieceOf(solved: Solved, view: View, pictures: ReadonlySet<string>): Promise<Piece> {
  const { job, mat, report, shop } = solved;
  const face = view === 'back' ? undefined : await faceOf(mat, job, pictures);
  return {
    report,
    units: job.units,
    graduation: job.bench.graduation,
    framed: job.mat.frame !== undefined,
    why: view === 'small' ? [] : reasons(solved),
    boards: [...shop.boards.values()].map(({ id, name, colour }) => ({ id, name, colour })),
    machines: [...shop.machines.keys()],
    colours: mat.layers.map(({ board }) => board.colour),
    ...(face === undefined ? {} : { face }),
  };
}

async function faceOf(mat: Mat, job: Job, known: ReadonlySet<string>): Promise<Drawing> {
  // No words are drawn on it, so that no rare characters are wanted.
  const fonts = await loadFonts([]);
  const pictures = mat.openings.map((opening, i): PlacedPicture | undefined => {
    const { picture } = job.openings[i]!;
    return picture !== undefined && known.has(picture) ? { id: picture, box: artBox(opening) } : undefined;
  });
  const items = bareItems(mat, job, { at: { x: 0, y: 0 }, scale: 1 }, pictures, [], fonts);
  const { width, height } = mat.outer;
  return {
    title: job.title,
    width,
    height,
    view: 'face',
    pens: piecePens(job, 1),
    groups: [{ name: 'piece', label: 'The piece', shown: true, items }],
  };
}
