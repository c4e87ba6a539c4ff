import { PDFContext, PDFHexString, type PDFObject, type PDFRef, PDFString, PDFWriter } from 'pdf-lib';
import type { Document, Frame, Page } from '../../drawing/document.ts';
import type { Drawing } from '../../drawing/model.ts';
import { fontFor, runs } from '../../fonts/embed.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Pictures } from '../../pictures/model.ts';
import { defined } from '../../problems/defined.ts';
import { pointsFromMm } from '../../units/units.ts';
import { decimal } from '../decimal.ts';
import { frameMatrix, isInPlace } from '../frame-matrix.ts';
import { shownLayers } from '../shown.ts';
import { Content, points, type Resources } from './content.ts';
import { UsedFonts, writeFont } from './fonts.ts';
import { type WrittenLayers, writeLayers } from './layers.ts';
import { pageLabels, writeOutline } from './outline.ts';
import { writePictures } from './pictures.ts';
import { streamOf } from './stream.ts';

export interface PdfOptions {
  /** Names of the layers to show: the file is then flat, with these alone and no optional content. */
  readonly show?: readonly string[];
  /** Stamped as the date of creation and change; a fixed one unless given, so that the bytes stay the same. */
  readonly date?: Date;
  /** With their files. */
  readonly fonts: Fonts;
  /** By the names that the items give them. */
  readonly pictures?: Pictures;
}

/** Stands where no date is given; it means nothing. */
const NO_DATE = new Date(Date.UTC(2000, 0, 1));
const PROGRAM = 'Matwright';

/**
 * A document as PDF 1.7. Every page is its paper, exactly. A drawing that several frames show, or one shows in part,
 * stands once in the file, as a form; any other stands in the content of its page. The same document gives the same
 * bytes. Pens, pictures and layers that are named but do not exist are mistakes of the program and throw. Content is
 * not deflated: for a pattern it takes longer than everything else here together, to save some tens of kilobytes.
 */
export async function writePdf(document: Document, options: PdfOptions): Promise<Uint8Array> {
  const context = PDFContext.create();
  const { pages } = document;
  const fonts = new UsedFonts();
  const pictures = writePictures(context, options.pictures ?? {});
  const fontsRef = context.nextRef();
  const resources: Resources = {
    runs: remembered((text, weight) => runs(text, weight, options.fonts).map((run) => fonts.shown(run))),
    picture: pictures.nameOf,
  };
  const layers = writeLayers(context, options.show === undefined ? document.layers : []);
  const own: Record<string, PDFObject> = { Font: fontsRef };
  if (layers.properties !== undefined) own.Properties = context.obj(layers.names);
  const painter: Painter = { layers, isShown: shownLayers(document, options.show), resources };

  const forms = new Map<Drawing, string>();
  const objects: Record<string, PDFRef> = { ...pictures.objects };
  const hasPictures = Object.keys(objects).length > 0;
  for (const drawing of sharedDrawings(pages)) {
    const name = `D${forms.size + 1}`;
    const form = streamOf(context, paint(drawing, painter), {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [0, 0, rounded(drawing.width), rounded(drawing.height)],
      Resources: { ...own, ...(hasPictures ? { XObject: pictures.objects } : {}) },
    });
    forms.set(drawing, name);
    objects[name] = context.register(form);
  }

  const everything = Object.keys(objects).length === 0 ? own : { ...own, XObject: context.obj(objects) };
  const resourcesRef = context.register(context.obj(everything));
  const tree = context.nextRef();
  const kids = pages.map((page) => writePage(context, page, forms, tree, resourcesRef, painter));
  context.assign(tree, context.obj({ Type: 'Pages', Kids: kids, Count: kids.length }));
  const written = fonts.entries().map(({ id, name, glyphs }) => {
    return [name, writeFont(context, fontFor(id, options.fonts), glyphs)] as const;
  });
  context.assign(fontsRef, context.obj(Object.fromEntries(written)));
  const labels = pageLabels(context, pages);
  const outline = writeOutline(context, pages, kids);
  context.trailerInfo.Root = context.register(
    context.obj({
      Type: 'Catalog',
      Pages: tree,
      Lang: PDFString.of(document.language),
      // Not every reader obeys, so sheet 1 checks the scale all the same.
      ViewerPreferences: { PrintScaling: 'None', PickTrayByPDFSize: true, DisplayDocTitle: true },
      ...defined({ PageLabels: labels, Outlines: outline, OCProperties: layers.properties }),
    }),
  );
  const date = PDFString.fromDate(options.date ?? NO_DATE);
  context.trailerInfo.Info = context.register(
    context.obj({
      Title: PDFHexString.fromText(document.title),
      Subject: PDFHexString.fromText(document.subject),
      Creator: PDFHexString.fromText(PROGRAM),
      Producer: PDFHexString.fromText(PROGRAM),
      CreationDate: date,
      ModDate: date,
    }),
  );
  return PDFWriter.forContext(context, Number.POSITIVE_INFINITY).serializeToBuffer();
}

/** The numbers of rulers and the words about sheets stand on every page. */
function remembered(make: Resources['runs']): Resources['runs'] {
  const known = new Map<string, ReturnType<Resources['runs']>>();
  return (text, weight) => {
    const key = `${weight} ${text}`;
    const found = known.get(key) ?? make(text, weight);
    known.set(key, found);
    return found;
  };
}

const rounded = (mm: number): number => Number(decimal(pointsFromMm(mm), 6));

/** Drawings that more than one frame shows, or one shows in part, in the order of the pages. */
function sharedDrawings(pages: readonly Page[]): readonly Drawing[] {
  const frames = pages.flatMap((page) => page.frames);
  const times = new Map<Drawing, number>();
  for (const { drawing, clip } of frames)
    times.set(drawing, (times.get(drawing) ?? 0) + (clip === undefined ? 1 : Number.POSITIVE_INFINITY));
  return [...times].flatMap(([drawing, count]) => (count > 1 ? [drawing] : []));
}

interface Painter {
  readonly layers: WrittenLayers;
  readonly isShown: ReturnType<typeof shownLayers>;
  readonly resources: Resources;
}

/** The whole drawing, its bottom left at 0 0, points. */
function paint(drawing: Drawing, { layers, isShown, resources }: Painter): string {
  const content = new Content(drawing.height, drawing.pens, resources);
  for (const group of drawing.groups) {
    const layer = layers.nameOf(group.name);
    if (layer === undefined && !isShown(group)) continue;
    if (layer !== undefined) content.raw(`/OC /${layer} BDC`);
    content.items(group.items);
    if (layer !== undefined) content.raw('EMC');
  }
  return content.toString();
}

function writePage(
  context: PDFContext,
  page: Page,
  forms: ReadonlyMap<Drawing, string>,
  parent: PDFRef,
  shared: PDFRef,
  painter: Painter,
): PDFRef {
  const { paper, scale, frames } = page;
  const parts = frames.map((frame) => {
    const form = forms.get(frame.drawing);
    const content = form === undefined ? paint(frame.drawing, painter) : `/${form} Do`;
    const asItIs = isInPlace(frame) && frame.drawing.height === paper.height;
    return asItIs ? content : `q ${placed(frame, page)}\n${content}\nQ`;
  });
  // About the top left, where y up has its height.
  if (scale.x !== 1 || scale.y !== 1) {
    const lift = decimal(pointsFromMm(paper.height) * (1 - 1 / scale.y), 6);
    parts.unshift(`q ${decimal(1 / scale.x, 9)} 0 0 ${decimal(1 / scale.y, 9)} 0 ${lift} cm`);
    parts.push('Q');
  }
  return context.register(
    context.obj({
      Type: 'Page',
      Parent: parent,
      MediaBox: [0, 0, rounded(paper.width), rounded(paper.height)],
      Resources: shared,
      Contents: context.register(streamOf(context, parts.join('\n'))),
    }),
  );
}

/** The clip of a frame, and how it is turned and shifted to its place. */
function placed(frame: Frame, { paper }: Page): string {
  const { drawing, clip, turn, at } = frame;
  const { a, b, c, d, e, f } = frameMatrix(frame);
  // The drawing counts y from its bottom, upwards, and so does the page.
  const matrix = [a, -b, -c, d].map((v) => decimal(v, 0)).join(' ');
  const origin = [c * drawing.height + e, paper.height - d * drawing.height - f].map(points).join(' ');
  const moved = `${matrix} ${origin} cm`;
  if (clip === undefined) return moved;
  const [width, height] = turn % 180 === 0 ? [clip.width, clip.height] : [clip.height, clip.width];
  const seen = [at.x, paper.height - at.y - height, width, height].map(points).join(' ');
  return `${seen} re W n ${moved}`;
}
