/** The large worker, started when something is to come out: letters as outlines, all formats, rare characters. */
import { buildSvgIn } from '../../writers/svg/window.ts';
import { answerWith } from './answering.ts';
import { backsOf } from './backs.ts';
import { book } from './book.ts';
import { calibrating } from './calibrating.ts';
import { lookAt, restOf } from './look.ts';
import { lay, make, take } from './make.ts';
import { steps } from './steps.ts';
import { stockSheets } from './stock-sheets.ts';
import { table } from './table.ts';

buildSvgIn(async () => (await import('svgdom')).createSVGWindow());

answerWith({
  look: (request) => lookAt(request, { backs: backsOf }),
  rest: (request) => restOf(request, true),
  lay,
  make,
  take,
  steps,
  calibrating,
  table,
  book,
  sheets: stockSheets,
});
