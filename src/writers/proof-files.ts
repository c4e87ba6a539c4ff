import { proof } from '../documents/proof.ts';
import type { Variant, WantedPicture } from '../documents/proof-model.ts';
import type { PriceList } from '../documents/proof-prices.ts';
import type { Drawing } from '../drawing/model.ts';
import type { RareFonts } from '../fonts/model.ts';
import type { Size } from '../geometry/point.ts';
import type { OpenPicture, Pictures, PreparedPicture } from '../pictures/model.ts';
import { fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { sheetsDocument } from '../tiling/sheets.ts';
import { dotsFromMm } from '../units/units.ts';
import { writePdf } from './pdf.ts';

export interface ProofWishes {
  readonly paper: Size;
  readonly date?: string;
  readonly dimensions: boolean;
  readonly rare?: RareFonts;
  /** The files that openings name as their pictures, by those names. */
  readonly pictures: Readonly<Record<string, Uint8Array>>;
  readonly svg: boolean;
  /** The renderer's own bytes (`index_bg.wasm` of @resvg/resvg-wasm) where a PNG is wanted. */
  readonly png?: { readonly renderer: () => Promise<Uint8Array>; readonly dpi: number };
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
export async function makeProof(variants: readonly Variant[], wishes: ProofWishes): Promise<Result<MadeProof>> {
  const { rare, date } = wishes;
  const { openings } = variants[0]!.job;
  const opened = await openPictures(
    openings.map(({ picture }) => picture),
    wishes.pictures,
  );
  if (!opened.ok) return opened;
  const made = proof(variants, {
    paper: wishes.paper,
    dimensions: wishes.dimensions,
    pictures: opened.value.map((picture) => picture?.size),
    ...(date === undefined ? {} : { date }),
    ...(rare === undefined ? {} : { rare }),
  });
  const prepared = await preparePictures(made.pictures, opened.value);
  if (!prepared.ok) return prepared;
  const how = { pictures: prepared.value, ...(rare === undefined ? {} : { rare }) };
  const document = sheetsDocument({ title: made.title, subject: 'Proof for the customer', sheets: made.sheets });
  const files = [{ name: 'proof.pdf', bytes: await writePdf(document, how) }];
  if (wishes.svg || wishes.png !== undefined) {
    const { writeSvg } = await import('./svg.ts');
    for (const [i, sheet] of made.sheets.entries()) {
      const stem = made.sheets.length === 1 ? 'proof' : `proof-${i + 1}`;
      const svg = writeSvg(sheet, how);
      if (wishes.svg) files.push({ name: `${stem}.svg`, bytes: new TextEncoder().encode(svg) });
      if (wishes.png === undefined) continue;
      const { writePng } = await import('./png.ts');
      files.push({ name: `${stem}.png`, bytes: await writePng(svg, wishes.png.dpi, wishes.png.renderer) });
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

const pathOf = (opening: number): Problem['path'] => ['openings', opening, 'picture'];

/** Heads only; what the caller did not bring is left out with a warning. */
async function openPictures(
  names: readonly (string | undefined)[],
  bytes: ProofWishes['pictures'],
): Promise<Result<readonly (OpenPicture | undefined)[]>> {
  if (names.every((name) => name === undefined)) return succeed([]);
  const { openPicture } = await import('../pictures/picture.ts');
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const opened = names.map((name, i) => {
    if (name === undefined) return undefined;
    const own = Object.hasOwn(bytes, name) ? bytes[name] : undefined;
    if (own === undefined) {
      const message = `the picture ${JSON.stringify(name)} was not given, so a placeholder is drawn`;
      warnings.push(warning('picture-missing', pathOf(i), message, 'hand its bytes over with the job'));
      return undefined;
    }
    const found = openPicture(own, name, pathOf(i));
    if (found.ok) {
      warnings.push(...found.value.warnings);
      return found.value;
    }
    problems.push(...found.problems);
    return undefined;
  });
  return problems.length > 0 ? fail(problems) : succeed(opened, warnings);
}

/** The parts that the proof shows, as fine as they are printed. */
async function preparePictures(
  wanted: readonly WantedPicture[],
  opened: readonly (OpenPicture | undefined)[],
): Promise<Result<Pictures>> {
  if (wanted.length === 0) return succeed({});
  const [{ readPart }, { writeJpeg }] = await Promise.all([
    import('../pictures/picture.ts'),
    import('../pictures/jpeg-write.ts'),
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
