import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { inBlack } from './laser.ts';
import { openPdf, type Raster, renderSvg, toPng } from './render.ts';

/**
 * `npm run look -- FILE.pdf OUTDIR [dpi] [laser]`: one PNG for each page of a PDF, or the picture of an SVG; as a laser printer
 * of black alone would print it, where that is asked for.
 */
async function look(file: string, out: string, dpi: number, asPrinted: (page: Raster) => Raster): Promise<void> {
  await mkdir(out, { recursive: true });
  const stem = basename(file, extname(file));
  const write = async (name: string, png: Uint8Array): Promise<void> => {
    await writeFile(join(out, name), png);
    console.log(join(out, name));
  };
  if (extname(file) === '.svg') {
    await write(`${stem}.png`, toPng(asPrinted(await renderSvg(await readFile(file, 'utf8'), dpi))));
    return;
  }
  const pdf = await openPdf(await readFile(file));
  for (let index = 0; index < pdf.pageCount; index++) {
    const number = String(index + 1).padStart(String(pdf.pageCount).length, '0');
    await write(`${stem}-${number}.png`, toPng(asPrinted(await pdf.render(index, dpi))));
  }
  pdf.close();
}

const [file, out, dpi = '100', how] = process.argv.slice(2);
if (file === undefined || out === undefined || !(Number(dpi) > 0) || (how !== undefined && how !== 'laser')) {
  console.error('usage: npm run look -- FILE.pdf|FILE.svg OUTDIR [dpi] [laser]');
  process.exitCode = 2;
} else {
  await look(file, out, Number(dpi), how === 'laser' ? inBlack : (page) => page);
}
