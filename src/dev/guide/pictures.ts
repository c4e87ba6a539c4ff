import { loadFonts } from '../../fonts/load.ts';
import { loadSvg } from '../../writers/svg/load.ts';
import { FIGURES } from './figures.ts';
import { CUT, FACES, PRINTED } from './printed.ts';
import { cutSvg, pieceSvg, sheetPng } from './sheets.ts';

/** Letters of figures stay text, which is small and can be searched; each line is as wide as it was measured. */
const FAMILY = 'sans-serif';

/** Every picture of the guide, by its file's name: figures as SVG, pages that the program prints as PNG. */
export async function pictures(top: string): Promise<ReadonlyMap<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  const encoder = new TextEncoder();
  const { writeSvg } = await loadSvg();
  const fonts = await loadFonts([], { outlines: true });
  for (const [name, figure] of Object.entries(FIGURES)) {
    files.set(`${name}.svg`, encoder.encode(writeSvg(figure(), { fonts, family: FAMILY })));
  }
  for (const face of FACES) files.set(`${face.name}.svg`, encoder.encode(await pieceSvg(top, face)));
  for (const cut of CUT) files.set(`${cut.name}.svg`, encoder.encode(await cutSvg(top, cut, fonts, FAMILY)));
  for (const sheet of PRINTED) files.set(`${sheet.name}.png`, await sheetPng(top, sheet));
  return files;
}
