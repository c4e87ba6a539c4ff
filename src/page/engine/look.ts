import { faceDrawing } from '../../documents/proof/face.ts';
import type { Drawing } from '../../drawing/model.ts';
import { loadFonts } from '../../fonts/load.ts';
import { box } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import { NEEDS_FONTS } from '../../mat/lettering.ts';
import type { Mat } from '../../mat/model.ts';
import { type Solved, solveJob } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import type { Result } from '../../problems/problem.ts';
import { reasons, type Why } from '../../why.ts';
import type { Look, LookRequest, Piece, View } from './answers.ts';

/** Openings of a piece whose reasons are worked out with its picture. */
const FEW = 12;

/** What only the large worker has. */
export interface More {
  readonly backs: (solved: Solved) => Promise<NonNullable<Piece['backs']>>;
}

/** What a text comes to, as it is to be seen: everything is plain data. */
export async function lookAt(request: LookRequest, more?: More): Promise<Look> {
  const { pictures, view } = request;
  const solved = await solvedOf(request, more !== undefined);
  if (!solved.ok) {
    const lacks = solved.problems.some(({ code }) => code === NEEDS_FONTS);
    return { problems: solved.problems, ...(lacks ? { needsOutlines: true as const } : {}) };
  }
  const { value } = solved;
  const piece = await pieceOf(value, view, new Set(pictures));
  const backs = view === 'back' && more !== undefined ? { backs: await more.backs(value) } : {};
  return { problems: solved.warnings, piece: { ...piece, ...backs } };
}

/** Why each size of it is what it is; nothing where it cannot be solved here. */
export async function whyOf(request: LookRequest, outlines = false): Promise<readonly Why[] | undefined> {
  const solved = await solvedOf(request, outlines);
  return solved.ok ? reasons(solved.value) : undefined;
}

async function solvedOf({ text, file, shop }: LookRequest, outlines: boolean): Promise<Result<Solved>> {
  const fonts = outlines ? { fonts: await loadFonts([], { outlines: true }) } : {};
  return solveJob(text, { file, ...defined({ shop }), ...fonts });
}

async function pieceOf(solved: Solved, view: View, pictures: ReadonlySet<string>): Promise<Piece> {
  const { job, mat, report, shop } = solved;
  const face = view === 'back' ? undefined : await faceOf(mat, job, pictures);
  const { strokes: _, grooves: __, ...told } = report;
  const later = view !== 'small' && job.openings.length > FEW;
  return {
    report: told,
    units: job.units,
    graduation: job.bench.graduation,
    framed: job.mat.frame !== undefined,
    why: view === 'small' || later ? [] : reasons(solved),
    ...(later ? { whyLater: true as const } : {}),
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
