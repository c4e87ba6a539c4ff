/** Writes the sample in every format and prints a digest of each: the determinism test runs it as processes of its own. */
import { createHash } from 'node:crypto';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { everything } from './everything.ts';
import { writePageSvg, writeSvg } from './svg-in-node.ts';

const digest = (data: Uint8Array | string): string => createHash('sha256').update(data).digest('hex');

console.log(
  JSON.stringify({
    pdf: digest(await writePdf(everything, { fonts: FONTS })),
    svg: digest(writeSvg(everything.drawing, { fonts: FONTS })),
    sheets: everything.pages.map((page) => digest(writePageSvg(everything, page, { fonts: FONTS }))),
  }),
);
