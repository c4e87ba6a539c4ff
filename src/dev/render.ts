import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { PNG } from 'pngjs';
import { dotsFromMm, mmFromPoints } from '../units/units.ts';

/** Rows from the top, four bytes a pixel (red, green, blue, opacity), on white. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

/** A PDF opened in PDFium; `close` gives its memory back. Pages count from 0. */
export interface OpenPdf {
  readonly pageCount: number;
  render(pageIndex: number, dpi: number): Promise<Raster>;
  /** The page's words in the order in which they are painted. */
  text(pageIndex: number): string;
  close(): void;
}

let pdfium: Promise<PDFiumLibrary> | undefined;

export async function openPdf(bytes: Uint8Array): Promise<OpenPdf> {
  pdfium ??= PDFiumLibrary.init();
  const library = await pdfium;
  const document = await library.loadDocument(bytes);
  return {
    pageCount: document.getPageCount(),
    async render(pageIndex, dpi) {
      const page = document.getPage(pageIndex);
      const { originalWidth, originalHeight } = page.getOriginalSize();
      const pixels = (points: number): number => Math.round(dotsFromMm(mmFromPoints(points), dpi));
      // The renderer would cut the page's size down to whole points first, and stretch the page over that.
      const { width, height, data } = await page.render({
        width: pixels(originalWidth),
        height: pixels(originalHeight),
        scale: 1,
        render: 'bitmap',
      });
      return { width, height, rgba: data };
    },
    text: (pageIndex) => document.getPage(pageIndex).getText(),
    close: () => document.destroy(),
  };
}

export async function renderPdfPage(bytes: Uint8Array, pageIndex: number, dpi: number): Promise<Raster> {
  const pdf = await openPdf(bytes);
  try {
    return await pdf.render(pageIndex, dpi);
  } finally {
    pdf.close();
  }
}

let resvg: Promise<void> | undefined;

/** An SVG whose width and height are in mm, on white. System fonts stay off: live text shows nothing. */
export async function renderSvg(text: string, dpi: number): Promise<Raster> {
  resvg ??= readFile(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')).then((wasm) =>
    initWasm(wasm),
  );
  await resvg;
  const image = new Resvg(text, {
    dpi,
    background: '#ffffff',
    font: { loadSystemFonts: false },
    fitTo: { mode: 'original' },
  });
  const { width, height, pixels } = image.render();
  return { width, height, rgba: pixels };
}

export function toPng(raster: Raster): Uint8Array {
  const png = new PNG({ width: raster.width, height: raster.height });
  png.data = Buffer.from(raster.rgba.buffer, raster.rgba.byteOffset, raster.rgba.byteLength);
  return PNG.sync.write(png, { colorType: 2 });
}
