import { type Document, type Page, wholeFrame } from '../drawing/document.ts';
import type { Fonts } from '../fonts/model.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { showSize } from '../units/print.ts';
import { dotsFromMm } from '../units/units.ts';
import { FORMATS } from '../writers/formats.ts';
import { offSheet } from '../writers/off-sheet.ts';
import { loadSvg } from '../writers/svg/load.ts';
import type { SvgOptions } from '../writers/svg/svg.ts';
import { CANCELLED } from './cancelled.ts';
import type { Surroundings } from './options.ts';
import type { DrawnDocument, DrawnFile } from './output.ts';
import type { Prepared } from './prepare.ts';

export interface OutputFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A file that is still to be written. */
interface Job {
  readonly name: string;
  readonly write: () => Promise<Uint8Array>;
}

/** Fine enough to be looked at. */
const USUAL_DPI = 150;
/** Fewer are not asked for. */
const LEAST_DPI = 20;

/** Pixels of one picture; a renderer holds each in eight bytes. A3 at 600 to the inch has 70 million. */
const MOST_PIXELS = 72e6;

/** Formats that are built as trees of SVG. */
const AS_SVG: readonly string[] = ['svg', 'tiles', 'png'];

export const NO_WINDOW = error(
  'svg-window',
  [],
  'there is no document here to build SVG in',
  'hand one over by buildSvgIn, or import the library as Node or workers have it',
);

/**
 * The files of an output, in the formats that it was prepared for. Errors: `renderer-missing`, `png-large`,
 * `line-off-sheet`, `svg-window`, `cancelled`.
 */
export async function write(
  { id, drawn, formats, options, ready: { settled } }: Prepared,
  around: Surroundings = {},
): Promise<Result<readonly OutputFile[]>> {
  const large = formats.includes('png')
    ? drawn.documents.flatMap((each) => tooLarge(each, options.dpi ?? USUAL_DPI))
    : [];
  if (large.length > 0) return fail(large.slice(0, 1));
  if (formats.includes('png') && around.renderer === undefined && drawn.documents.length > 0)
    return fail([
      error('renderer-missing', [], 'a PNG needs a renderer, and none was handed over', 'hand its bytes over'),
    ]);
  const off = drawn.drawings.flatMap(({ name, drawing }) => offSheet(drawing, name));
  if (off.length > 0) return fail(off);
  if (formats.some((format) => AS_SVG.includes(format)) && !(await loadSvg()).hasWindow()) return fail([NO_WINDOW]);
  const { fonts } = settled;
  const how = { fonts, ...defined({ pictures: drawn.pictures }) };
  const dpi = options.dpi ?? USUAL_DPI;
  const jobs = [
    ...drawn.documents.flatMap((each) => documentFiles(each, formats, how, dpi, around)),
    ...drawn.drawings.flatMap((each) => drawingFiles(each, each.formats ?? drawn.drawingFormats, fonts)),
  ];
  const files: OutputFile[] = [];
  for (const { name, write: bytesOf } of jobs) {
    if (around.signal?.aborted === true) return fail([CANCELLED]);
    files.push({ name, bytes: await bytesOf() });
    around.progress?.({ output: id, file: name, done: files.length, of: jobs.length });
  }
  return succeed(files);
}

function tooLarge({ document }: DrawnDocument, dpi: number): readonly Problem[] {
  return document.pages.flatMap(({ paper }) => {
    const pixels = dotsFromMm(paper.width, dpi) * dotsFromMm(paper.height, dpi);
    if (pixels <= MOST_PIXELS) return [];
    const most = Math.floor(dpi * Math.sqrt(MOST_PIXELS / pixels));
    const message = `a page of ${showSize(paper, 'mm')} has ${Math.ceil(pixels / 1e6)} million pixels at ${dpi} to the inch, more than fit into memory`;
    const hint = most >= LEAST_DPI ? `at ${most} to the inch it can be made` : 'take a PDF or an SVG';
    return [error('png-large', ['options', 'dpi'], message, hint)];
  });
}

function drawingFiles({ name, drawing, how }: DrawnFile, formats: readonly string[], fonts: Fonts): readonly Job[] {
  return FORMATS.flatMap((format) => {
    if (format.of !== 'drawing' || !formats.includes(format.id)) return [];
    const write = async () => (await format.load())(drawing, { ...how, fonts });
    return [{ name: `${name}.${format.extension}`, write }];
  });
}

function documentFiles(
  drawn: DrawnDocument,
  formats: readonly string[],
  how: SvgOptions,
  dpi: number,
  { renderer }: Surroundings,
): readonly Job[] {
  const { name, document, whole, tiles = [] } = drawn;
  const pages = document.pages.map((page, i) => ({ page, i, stem: stemOf(drawn, page, i) }));
  const svg = async (page: Page) => pageSvg(document, page, how);
  const one = async () => (await loadSvg()).encodeSvg(whole!, how);
  const png = async (page: Page) => (await import('../writers/png.ts')).writePng(await svg(page), dpi, renderer!);
  const files: Readonly<Record<string, () => readonly Job[]>> = {
    pdf: () => [
      { name: `${name}.pdf`, write: async () => (await import('../writers/pdf/pdf.ts')).writePdf(document, how) },
    ],
    svg: () =>
      whole === undefined
        ? pages.map(({ page, stem }) => ({ name: `${stem}.svg`, write: () => svg(page) }))
        : [{ name: `${name}.svg`, write: one }],
    tiles: () =>
      pages
        .filter(({ i }) => tiles.includes(i))
        .map(({ page, stem }) => ({ name: `${stem}.svg`, write: () => svg(page) })),
    png: () => pages.map(({ page, stem }) => ({ name: `${stem}.png`, write: () => png(page) })),
  };
  return Object.entries(files).flatMap(([format, make]) => (formats.includes(format) ? make() : []));
}

function stemOf({ name, document, pages }: DrawnDocument, page: Page, i: number): string {
  switch (pages) {
    case 'numbered':
      return `${name}-${i + 1}`;
    case 'numbered where there are several':
      return document.pages.length === 1 ? name : `${name}-${i + 1}`;
    case 'by name':
      return `${name}-${page.name.replaceAll(' ', '-')}`;
    default: {
      const never: never = pages;
      throw new TypeError(`unknown way to name pages ${JSON.stringify(never)}`);
    }
  }
}

/** A page that is one drawing as it is, is that drawing; any other is its frames. */
async function pageSvg(document: Document, page: Page, how: SvgOptions): Promise<Uint8Array> {
  const { encodePageSvg, encodeSvg } = await loadSvg();
  const [frame, ...others] = page.frames;
  if (frame === undefined || others.length > 0 || page.scale.x !== 1 || page.scale.y !== 1) {
    return encodePageSvg(document, page, how);
  }
  const { drawing, clip, turn, at } = frame;
  const whole = wholeFrame(drawing);
  const isWhole = clip === undefined && turn === whole.turn && at.x === whole.at.x && at.y === whole.at.y;
  return isWhole ? encodeSvg(drawing, how) : encodePageSvg(document, page, how);
}
