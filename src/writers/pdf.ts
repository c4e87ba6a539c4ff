import { PDFContext, PDFHexString, type PDFObject, type PDFRef, PDFString, PDFWriter } from 'pdf-lib';
import type { Drawing, Group } from '../drawing/model.ts';
import { fontFor, runs } from '../fonts/embed.ts';
import type { RareFonts } from '../fonts/model.ts';
import type { Document, Page, Part } from '../paper/model.ts';
import type { Pictures } from '../pictures/model.ts';
import { pointsFromMm } from '../units/units.ts';
import { decimal } from './decimal.ts';
import { Content, points, type Resources } from './pdf-content.ts';
import { UsedFonts, writeFont } from './pdf-fonts.ts';
import { type Layers, writeLayers } from './pdf-layers.ts';
import { writePictures } from './pdf-pictures.ts';
import { streamOf } from './pdf-stream.ts';
import { placement } from './placement.ts';
import { namedGroups } from './shown.ts';

export interface PdfOptions {
  /** Names of the groups to show: the file is then flat, with these alone and no optional content. */
  readonly show?: readonly string[];
  /** Stamped as the date of creation and change; a fixed one unless given, so that the bytes stay the same. */
  readonly date?: Date;
  /** The fonts for characters that the prepared ones lack, where the document has such. */
  readonly rare?: RareFonts;
  /** By the names that the items give them. */
  readonly pictures?: Pictures;
}

/** Stands where no date is given; it means nothing. */
const NO_DATE = new Date(Date.UTC(2000, 0, 1));
const PROGRAM = 'Matwright';

/**
 * A document as PDF 1.7. Every page is its paper, exactly; the drawing stands once in the file, as a form, and every
 * page clips its part of it. The same document gives the same bytes. Pens, pictures and groups that are named but
 * do not exist are mistakes of the program and throw. Content is not deflated: for a pattern it takes longer than
 * everything else here together, to save some tens of kilobytes.
 */
export async function writePdf(document: Document, options: PdfOptions = {}): Promise<Uint8Array> {
  const context = PDFContext.create();
  const { drawing, pages } = document;
  const groups = options.show === undefined ? drawing.groups : namedGroups(drawing, options.show);
  const fonts = new UsedFonts();
  const pictures = writePictures(context, options.pictures ?? {});
  const hasPictures = Object.keys(pictures.objects).length > 0;
  const fontsRef = context.nextRef();
  const resources: Resources = {
    runs: remembered((text, weight) => runs(text, weight, options.rare)),
    font: (id, glyphs) => fonts.use(id, glyphs),
    picture: pictures.nameOf,
  };

  const shared: Record<string, PDFObject> = { Font: fontsRef };
  if (hasPictures) shared.XObject = context.obj(pictures.objects);
  let layers: Layers | undefined;
  if (pages.some((page) => page.part !== undefined)) {
    layers = options.show === undefined ? writeLayers(context, groups) : undefined;
    const form = streamOf(context, formContent(drawing, groups, layers, resources), {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [0, 0, rounded(drawing.width), rounded(drawing.height)],
      Resources: {
        Font: fontsRef,
        ...(hasPictures ? { XObject: pictures.objects } : {}),
        ...(layers === undefined ? {} : { Properties: layers.names }),
      },
    });
    shared.XObject = context.obj({ ...pictures.objects, Drawing: context.register(form) });
  }

  const resourcesRef = context.register(context.obj(shared));
  const tree = context.nextRef();
  const kids = pages.map((page) => writePage(context, page, drawing, tree, resourcesRef, resources));
  context.assign(tree, context.obj({ Type: 'Pages', Kids: kids, Count: kids.length }));
  const written = fonts.entries().map(({ id, name, glyphs }) => {
    return [name, writeFont(context, fontFor(id, options.rare), glyphs)] as const;
  });
  context.assign(fontsRef, context.obj(Object.fromEntries(written)));
  context.trailerInfo.Root = context.register(
    context.obj({
      Type: 'Catalog',
      Pages: tree,
      Lang: PDFString.of(document.language),
      // Not every reader obeys, so sheet 1 checks the scale all the same.
      ViewerPreferences: { PrintScaling: 'None', PickTrayByPDFSize: true, DisplayDocTitle: true },
      ...(layers === undefined ? {} : { OCProperties: layers.properties }),
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

/** The whole drawing, its bottom left at 0 0, points. */
function formContent(
  drawing: Drawing,
  groups: readonly Group[],
  layers: Layers | undefined,
  resources: Resources,
): string {
  const content = new Content(drawing.height, drawing.pens, resources);
  groups.forEach((group, i) => {
    if (layers !== undefined) content.raw(`/OC /${layers.nameOf(i)} BDC`);
    content.items(group.items);
    if (layers !== undefined) content.raw('EMC');
  });
  return content.toString();
}

function writePage(
  context: PDFContext,
  page: Page,
  drawing: Drawing,
  parent: PDFRef,
  shared: PDFRef,
  resources: Resources,
): PDFRef {
  const content = new Content(page.paper.height, page.pens, resources);
  const { x, y } = page.scale;
  // About the top left, where y up has its height.
  const corrected = x !== 1 || y !== 1;
  if (corrected) {
    const lift = decimal(pointsFromMm(page.paper.height) * (1 - 1 / y), 6);
    content.raw(`q ${decimal(1 / x, 9)} 0 0 ${decimal(1 / y, 9)} 0 ${lift} cm`);
  }
  content.items(page.under);
  if (page.part !== undefined) content.raw(showPart(page.part, page, drawing));
  content.items(page.over);
  if (corrected) content.raw('Q');
  return context.register(
    context.obj({
      Type: 'Page',
      Parent: parent,
      MediaBox: [0, 0, rounded(page.paper.width), rounded(page.paper.height)],
      Resources: shared,
      Contents: context.register(streamOf(context, content.toString())),
    }),
  );
}

/** The form under the part's clip, turned and shifted to its place. */
function showPart(part: Part, page: Page, drawing: Drawing): string {
  const [width, height] = page.rotation % 180 === 0 ? [part.width, part.height] : [part.height, part.width];
  const clip = [part.pageX, page.paper.height - part.pageY - height, width, height].map(points).join(' ');
  const { a, b, c, d, e, f } = placement(part, page.rotation);
  // The form counts y from the drawing's bottom, upwards, and so does the page.
  const matrix = [a, -b, -c, d].map((v) => decimal(v, 0)).join(' ');
  const origin = [c * drawing.height + e, page.paper.height - d * drawing.height - f].map(points).join(' ');
  return `q ${clip} re W n ${matrix} ${origin} cm /Drawing Do Q`;
}
