import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { solveFiles } from '../../cli/jobs.ts';
import { picturesBeside } from '../../cli/output/picture.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { faceSvg } from '../../outputs/face.ts';
import type { OutputOptions } from '../../outputs/options.ts';
import { type Prepared, prepare } from '../../outputs/prepare.ts';
import type { OutputId } from '../../outputs/records.ts';
import { solveJob } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import type { Result } from '../../problems/problem.ts';
import { showProblem } from '../../problems/show.ts';
import { loadSvg } from '../../writers/svg/load.ts';
import { renderSvg } from '../render.ts';
import { smallPng } from './small-png.ts';

/** What a command makes, to be shown as a picture. */
interface Made {
  readonly name: string;
  readonly output: OutputId;
  /** Files below the top; none for outputs that need no job. */
  readonly jobs: readonly string[];
  readonly options?: OutputOptions;
}

/** A page of what is printed. */
export interface SheetPicture extends Made {
  /** Its name, `B2` or `check`, or its place from 0; the first where left out. */
  readonly page?: string | number;
  readonly dpi: number;
  /** Sheets for the bench are black, proofs are not. */
  readonly colour?: boolean;
}

/** A file that a machine follows. */
export type CutPicture = Made;

/** A piece as it hangs. */
export interface FacePicture {
  readonly name: string;
  /** A job's file below the top. */
  readonly job: string;
}

function madeOr<T>(name: string, made: Result<T>): T {
  if (!made.ok) throw new Error(`${name}: ${made.problems.map(showProblem).join('\n')}`);
  return made.value;
}

async function prepared(top: string, { name, output, jobs, options }: Made, format: string): Promise<Prepared> {
  const files = jobs.map((file) => join(top, file));
  const { jobs: solved, problems } = await solveFiles(files, undefined);
  if (problems.length > 0) throw new Error(`${name}: ${problems.map(showProblem).join('\n')}`);
  const [first] = files;
  const around = defined({ pictures: first === undefined ? undefined : picturesBeside(first) });
  const work = { jobs: solved.map((each) => each.solved) };
  return madeOr(name, await prepare(output, work, { ...options, format: [format] }, around));
}

export async function sheetPng(top: string, sheet: SheetPicture): Promise<Uint8Array> {
  const { drawn, ready } = await prepared(top, sheet, 'png');
  const { page = 0, dpi } = sheet;
  const document = drawn.documents[0]?.document;
  const found = document?.pages.find((each, i) => (typeof page === 'number' ? i === page : each.name === page));
  if (document === undefined || found === undefined)
    throw new Error(`${sheet.name}: there are only ${document?.pages.map(({ name }) => name).join(', ')}`);
  const how = { fonts: ready.settled.fonts, ...defined({ pictures: drawn.pictures }) };
  const { writePageSvg } = await loadSvg();
  const svg = writePageSvg(document, found, how);
  return smallPng(await renderSvg(svg, dpi), sheet.colour === true);
}

/** An SVG in its own mm, to be shown no larger than this on a page: in mm. */
const SHOWN = 110;

/** The same picture, smaller: what a drawing's lengths are stays in its viewBox. */
function shownSmall(svg: string): string {
  return svg.replace(/width="([\d.]+)mm" height="([\d.]+)mm"/, (_, width: string, height: string) => {
    const share = Math.min(1, SHOWN / Math.max(Number(width), Number(height)));
    return `width="${(Number(width) * share).toFixed(2)}mm" height="${(Number(height) * share).toFixed(2)}mm"`;
  });
}

export async function cutSvg(top: string, cut: CutPicture, fonts: Fonts, family: string): Promise<string> {
  const { drawn } = await prepared(top, cut, 'svg');
  const { writeSvg } = await loadSvg();
  const { drawing } = drawn.drawings[0]!;
  return shownSmall(writeSvg({ ...drawing, pens: drawnBroader(drawing) }, { fonts, family }));
}

/** Lines of files for machines are hairs; seen as small as on a page they would be lost. */
function drawnBroader({ pens, width }: Drawing): Drawing['pens'] {
  const least = width / 300;
  return Object.fromEntries(
    Object.entries(pens).map(([name, pen]) => [name, { ...pen, width: Math.max(pen.width, least) }]),
  );
}

export async function pieceSvg(top: string, { name, job }: FacePicture): Promise<string> {
  const text = await readFile(join(top, job), 'utf8');
  return shownSmall(madeOr(name, await faceSvg(madeOr(name, solveJob(text)))));
}
