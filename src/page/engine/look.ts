import { report } from '../../bench/report.ts';
import { faceDrawing } from '../../documents/proof/face.ts';
import { loadFonts } from '../../fonts/load.ts';
import { box } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import { NEEDS_FONTS } from '../../mat/lettering.ts';
import type { Mat } from '../../mat/model.ts';
import { type Sized, type Solved, type SolveOptions, sizeJob, workedOut } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import type { Result } from '../../problems/problem.ts';
import { reasons } from '../../why.ts';
import type { Look, LookRequest, Piece, Remaining, View } from './answers.ts';
import { type Seen, seenTogether } from './seen.ts';

/** Openings of a piece whose strokes and reasons are worked out with its picture. */
const FEW = 12;

/** What only the large worker has. */
export interface More {
  readonly backs: (solved: Solved) => Promise<NonNullable<Piece['backs']>>;
}

/** What a text comes to, as it is to be seen: everything is plain data. */
export async function lookAt(request: LookRequest, more?: More): Promise<Look> {
  const { pictures, view, text } = request;
  const options = await optionsOf(request, more !== undefined);
  const sized = sizedOf(request, options);
  if (!sized.ok) {
    const lacks = sized.problems.some(({ code }) => code === NEEDS_FONTS);
    return { problems: sized.problems, ...(lacks ? { needsOutlines: true as const } : {}) };
  }
  const piece = await pieceOf(sized.value, view, new Set(pictures));
  if (view === 'small' || piece.later === true) return { problems: sized.warnings, piece };
  const solved = workedOut(sized.value, sized.warnings, text, options);
  if (!solved.ok) return { problems: solved.problems };
  const backs = view === 'back' && more !== undefined ? { backs: await more.backs(solved.value) } : {};
  return { problems: solved.warnings, piece: { ...piece, why: reasons(solved.value), ...backs } };
}

/** What the picture of a piece with many openings did not wait for; nothing where it cannot be solved here. */
export async function restOf(request: LookRequest, outlines = false): Promise<Remaining | undefined> {
  const options = await optionsOf(request, outlines);
  const sized = sizedOf(request, options);
  if (!sized.ok) return undefined;
  const solved = workedOut(sized.value, sized.warnings, request.text, options);
  return solved.ok ? { problems: solved.warnings, why: reasons(solved.value) } : { problems: solved.problems };
}

/** The last that was sized: what comes behind a picture is asked of the same text. */
let last: { readonly request: LookRequest; readonly sized: Result<Sized> } | undefined;

function sizedOf(request: LookRequest, options: SolveOptions): Result<Sized> {
  const { text, file, shop } = request;
  const was = last?.request;
  const same =
    was?.text === text && was.file === file && was.shop?.text === shop?.text && was.shop?.file === shop?.file;
  if (!same || last === undefined) last = { request, sized: sizeJob(text, options) };
  return last.sized;
}

async function optionsOf({ file, shop }: LookRequest, outlines: boolean): Promise<SolveOptions> {
  const fonts = outlines ? { fonts: await loadFonts([], { outlines: true }) } : {};
  return { file, ...defined({ shop }), ...fonts };
}

async function pieceOf({ job, mat, shop }: Sized, view: View, pictures: ReadonlySet<string>): Promise<Piece> {
  const face = view === 'back' ? undefined : await faceOf(mat, job, pictures);
  const { strokes: _, grooves: __, ...told } = report(job, mat, []);
  const later = view === 'face' && job.openings.length > FEW;
  return {
    report: told,
    units: job.units,
    graduation: job.bench.graduation,
    framed: job.mat.frame !== undefined,
    why: [],
    ...(later ? { later } : {}),
    boards: [...shop.boards.values()].map(({ id, name, colour }) => ({ id, name, colour })),
    machines: [...shop.machines.keys()],
    colours: mat.layers.map(({ board }) => board.colour),
    ...defined({ face }),
  };
}

async function faceOf(mat: Mat, job: Job, known: ReadonlySet<string>): Promise<Seen> {
  const within = box(0, 0, mat.outer.width, mat.outer.height);
  return seenTogether(faceDrawing(mat, job, { within, known, fonts: await loadFonts([]) }));
}
