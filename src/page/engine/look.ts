import { faceDrawing } from '../../documents/proof/face.ts';
import type { Drawing } from '../../drawing/model.ts';
import { loadFonts } from '../../fonts/load.ts';
import { box } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import { NEEDS_FONTS } from '../../mat/lettering.ts';
import type { Mat } from '../../mat/model.ts';
import { type Solved, solveJob } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import { reasons } from '../../why.ts';
import type { Look, LookRequest, Piece, View } from './answers.ts';

/** What only the large worker has. */
export interface More {
  readonly backs: (solved: Solved) => Promise<NonNullable<Piece['backs']>>;
}

/** What a text comes to, as it is to be seen: everything is plain data. */
export async function lookAt(request: LookRequest, more?: More): Promise<Look> {
  const { text, file, shop, pictures, view } = request;
  const asked = { file, ...defined({ shop }) };
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
    ...defined({ face }),
  };
}

async function faceOf(mat: Mat, job: Job, known: ReadonlySet<string>): Promise<Drawing> {
  const within = box(0, 0, mat.outer.width, mat.outer.height);
  return faceDrawing(mat, job, { within, known, fonts: await loadFonts([]) });
}
