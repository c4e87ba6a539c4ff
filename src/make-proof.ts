import type { Variant, WantedPicture } from './documents/proof/model.ts';
import { proof } from './documents/proof/proof.ts';
import type { Drawing } from './drawing/model.ts';
import type { Fonts } from './fonts/model.ts';
import type { Size } from './geometry/point.ts';
import type { Change } from './job/change.ts';
import type { Job } from './job/job.ts';
import type { Mat } from './mat/model.ts';
import { sheetsDocument } from './paper/sheets.ts';
import type { OpenPicture, Pictures, PreparedPicture } from './pictures/model.ts';
import { error, fail, type Problem, type Result, succeed, warning } from './problems/problem.ts';
import type { Settled } from './settle/settled.ts';
import type { Shop } from './shop/shop.ts';
import { type PriceList, priceList } from './stock/prices.ts';
import { dotsFromMm } from './units/units.ts';
import { loadSvg } from './writers/load-svg.ts';
import { writePdf } from './writers/pdf.ts';

/** What a caller hands over for the name of a picture: its file's bytes, or why there are none. */
export type PictureSource = (
  name: string,
) => Promise<{ readonly bytes: Uint8Array } | { readonly why: string; readonly hint: string }>;

export interface ProofWishes {
  /** As it is to be printed. */
  readonly date?: string;
  readonly dimensions?: boolean;
  /** `mat.layers[1].board=a,b,c`: one way beside the other. */
  readonly vary?: string;
  readonly pictures?: PictureSource;
  /** Also each sheet as PNG: the renderer's own bytes (`index_bg.wasm` of @resvg/resvg-wasm) and its resolution. */
  readonly png?: { readonly renderer: () => Promise<Uint8Array>; readonly dpi: number };
}

interface Request extends ProofWishes {
  readonly settled: Settled;
  readonly svg: boolean;
  readonly fonts: Fonts;
}

/** What a proof asks of a solved job. */
export interface Piece {
  readonly job: Job;
  readonly shop: Shop;
  readonly mat: Mat;
  /** What is different in it, where there are several. */
  readonly varied?: Change;
}

export interface ProofRecord {
  readonly sheets: number;
  /** Width and height of each sheet. */
  readonly paper: Size;
  /** 1 : so much. */
  readonly scale: number;
  readonly variants: readonly { readonly label?: string; readonly prices?: PriceList }[];
}

export interface MadeProof {
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly record: ProofRecord;
  readonly drawings: readonly Drawing[];
}

/** Fine enough for a good print seen in the hand. */
const DPI = 200;

/** `proof.pdf`, and each sheet as SVG or PNG where that is wished. Errors: those of reading pictures. */
export async function makeProof(pieces: readonly Piece[], request: Request): Promise<Result<MadeProof>> {
  const { fonts, date } = request;
  const { job } = pieces[0]!;
  const opened = await openPictures(
    job.openings.map(({ picture }) => picture),
    request.pictures,
  );
  if (!opened.ok) return opened;
  const variants = pieces.map(({ mat, job: own, shop, varied }): Variant => {
    const prices = priceList(mat, own, shop);
    return { mat, job: own, prices, ...(varied === undefined ? {} : { label: labelOf(varied, own) }) };
  });
  const made = proof(variants, {
    paper: request.settled.sheet,
    dimensions: request.dimensions === true,
    pictures: opened.value.map((picture) => picture?.size),
    ...(date === undefined ? {} : { date }),
    fonts,
  });
  const prepared = await preparePictures(made.pictures, opened.value);
  if (!prepared.ok) return prepared;
  const how = { pictures: prepared.value, fonts };
  const document = sheetsDocument({ title: made.title, subject: 'Proof for the customer', sheets: made.sheets });
  const files = [{ name: 'proof.pdf', bytes: await writePdf(document, how) }];
  if (request.svg || request.png !== undefined) {
    const { writeSvg } = await loadSvg();
    for (const [i, sheet] of made.sheets.entries()) {
      const stem = made.sheets.length === 1 ? 'proof' : `proof-${i + 1}`;
      const svg = writeSvg(sheet, how);
      if (request.svg) files.push({ name: `${stem}.svg`, bytes: new TextEncoder().encode(svg) });
      if (request.png === undefined) continue;
      const { writePng } = await import('./writers/png.ts');
      files.push({ name: `${stem}.png`, bytes: await writePng(svg, request.png.dpi, request.png.renderer) });
    }
  }
  const { width, height } = made.sheets[0]!;
  const record: ProofRecord = {
    sheets: made.sheets.length,
    paper: { width, height },
    scale: 1 / made.scale,
    variants: variants.map(({ label, prices }) => ({
      ...(label === undefined ? {} : { label }),
      ...(prices === undefined ? {} : { prices }),
    })),
  };
  return succeed({ files, record, drawings: made.sheets }, [...opened.warnings, ...prepared.warnings]);
}

/** A board or a frame by its name, any other value as it was given. */
function labelOf({ path, value }: Change, { mat }: Job): string {
  const [first, second, index, last] = path;
  if (first === 'mat' && second === 'layers' && last === 'board' && path.length === 4) {
    return mat.layers[Number(index)]?.board.name ?? value;
  }
  if (first === 'mat' && second === 'frame') return mat.frame?.name ?? value;
  return value;
}

const pathOf = (opening: number): Problem['path'] => ['openings', opening, 'picture'];

/** Heads only. Where nobody hands pictures over at all, placeholders stand in, with a warning. */
async function openPictures(
  names: readonly (string | undefined)[],
  source: PictureSource | undefined,
): Promise<Result<readonly (OpenPicture | undefined)[]>> {
  if (names.every((name) => name === undefined)) return succeed([]);
  const { openPicture } = await import('./pictures/picture.ts');
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const opened: (OpenPicture | undefined)[] = [];
  for (const [i, name] of names.entries()) {
    if (name === undefined || source === undefined) {
      if (name !== undefined) {
        const message = 'the picture was not handed over, so a placeholder is drawn';
        warnings.push(warning('picture-missing', pathOf(i), message, 'hand its bytes over with the job'));
      }
      opened.push(undefined);
      continue;
    }
    const found = await source(name);
    if ('why' in found) {
      problems.push(error('picture-unreadable', pathOf(i), found.why, found.hint));
      continue;
    }
    const picture = openPicture(found.bytes, name, pathOf(i));
    if (picture.ok) {
      opened.push(picture.value);
      warnings.push(...picture.value.warnings);
    } else problems.push(...picture.problems);
  }
  return problems.length > 0 ? fail(problems) : succeed(opened, warnings);
}

/** The parts that the proof shows, as fine as they are printed. */
async function preparePictures(
  wanted: readonly WantedPicture[],
  opened: readonly (OpenPicture | undefined)[],
): Promise<Result<Pictures>> {
  if (wanted.length === 0) return succeed({});
  const [{ readPart }, { writeJpeg }] = await Promise.all([
    import('./pictures/picture.ts'),
    import('./pictures/jpeg-write.ts'),
  ]);
  const made: Record<string, PreparedPicture> = {};
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  for (const { id, opening, crop, size, cut } of wanted) {
    const path = pathOf(opening);
    const pixels = (mm: number): number => Math.max(1, Math.round(dotsFromMm(mm, DPI)));
    const most = { width: pixels(size.width), height: pixels(size.height) };
    const part = await readPart(opened[opening]!, crop, most, path);
    if (!part.ok) {
      problems.push(...part.problems);
      continue;
    }
    made[id] = writeJpeg(part.value);
    if (cut && warnings.length === 0) {
      const message = 'the picture has other proportions than the artwork, so its edges are cut off evenly';
      warnings.push(
        warning('picture-proportions', path, message, 'crop it to the artwork, or measure the artwork again'),
      );
    }
  }
  return problems.length > 0 ? fail(problems) : succeed(made, warnings);
}
