import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { Document, Page } from '../drawing/document.ts';
import { loadSvg } from './svg/load.ts';
import type { SvgOptions } from './svg/svg.ts';

let ready: Promise<void> | undefined;

/**
 * A drawing that was written as SVG (letters as outlines, lengths in mm), rendered on white by a general renderer.
 * `renderer` gives the renderer's own bytes; it is asked once. The same SVG gives the same bytes.
 */
export async function writePng(svg: Uint8Array, dpi: number, renderer: () => Promise<Uint8Array>): Promise<Uint8Array> {
  ready ??= renderer().then((wasm) => initWasm(wasm as Uint8Array<ArrayBuffer>));
  await ready;
  const image = new Resvg(svg, {
    dpi,
    background: '#ffffff',
    font: { loadSystemFonts: false },
    fitTo: { mode: 'original' },
  });
  const rendered = image.render();
  const bytes = rendered.asPng();
  rendered.free();
  image.free();
  return bytes;
}

/** One page of a document as a picture. */
export async function writePagePng(
  document: Document,
  page: Page,
  { dpi, renderer, ...how }: SvgOptions & { readonly dpi: number; readonly renderer: () => Promise<Uint8Array> },
): Promise<Uint8Array> {
  const { encodePageSvg } = await loadSvg();
  return writePng(encodePageSvg(document, page, how), dpi, renderer);
}
