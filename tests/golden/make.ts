import '../svg-window.ts';
import { openPdf } from '../../src/dev/render.ts';
import { pattern } from '../../src/documents/pattern/pattern.ts';
import { build, type OutputFile, solveJob } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import { FONTS } from '../fonts/loaded.ts';
import { canonicalDrawing, canonicalJson } from './canonical.ts';
import type { Case } from './cases.ts';
import type { Outputs } from './compare.ts';
import { makeBenchCase } from './make-bench.ts';
import { makeCutCase } from './make-cut.ts';
import { makeJigCase } from './make-jig.ts';
import { proofFiles } from './make-proof.ts';
import { makeStockCase } from './make-stock.ts';
import { pdfText } from './pdf-text.ts';
import { packed } from './pictures.ts';
import { svgText } from './svg-text.ts';

/** Enough to see every line, and light enough for a page to stay below the limit; templates are many. */
const DPI = 64;
const TEMPLATE_DPI = 40;
/** A ticket is full of words. */
const TICKET_DPI = 60;

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A PDF as text and as one picture a page; the bytes themselves hold what no reader shows. */
export async function makePdf(name: string, bytes: Uint8Array, dpi = DPI): Promise<Outputs> {
  const made = new Map([[`${name}.txt`, encode(await pdfText(bytes))]]);
  const pdf = await openPdf(bytes);
  try {
    for (let page = 0; page < pdf.pageCount; page++) {
      const number = String(page + 1).padStart(2, '0');
      made.set(`${name.replace(/\.pdf$/, '')}-page-${number}.png`, packed(await pdf.render(page, dpi)));
    }
  } finally {
    pdf.close();
  }
  return made;
}

async function makeFile({ name, bytes }: OutputFile, dpi: number): Promise<Outputs> {
  if (name.endsWith('.pdf')) return makePdf(name, bytes, dpi);
  if (name.endsWith('.svg')) return new Map([[`${name}.txt`, encode(svgText(bytes))]]);
  return new Map([[name, bytes]]);
}

/** Everything that has a reference: what was solved, the drawings, and the files as they are read back. */
export async function makeCase(each: Case): Promise<Outputs> {
  if (each.cut !== undefined) return makeCutCase(each);
  if (each.day !== undefined) return makeStockCase(each, (output) => makeFile(output, DPI));
  if (each.sheet !== undefined)
    return makeBenchCase(each, (output) => makeFile(output, each.sheet === 'ticket' ? TICKET_DPI : DPI));
  if (each.jig !== undefined) return makeJigCase(each, (output) => makeFile(output, DPI));
  const { name, job, file, shop } = each;
  const dpi = name.startsWith('template-') ? TEMPLATE_DPI : DPI;
  const options = { file, fonts: FONTS, ...(shop !== undefined && { shop: { text: shop, file: 'shop.yaml' } }) };
  const solved = solveJob(job, options);
  const built = await build(job, { ...options, documents: ['pattern'], format: ['pdf', 'svg'] });
  if (!solved.ok || !built.ok) {
    const problems = solved.ok ? (built.ok ? [] : built.problems) : solved.problems;
    throw new Error(`a golden case must be a good job:\n${problems.map(showProblem).join('\n')}`);
  }
  const { mat, strokes, job: read } = solved.value;
  const made = new Map([
    ['report.json', encode(`${canonicalJson({ ...built.value.report, warnings: built.warnings })}\n`)],
  ]);
  for (const layer of mat.layers.keys()) {
    const { drawing } = pattern(mat, strokes, read, layer, { fonts: FONTS });
    made.set(`pattern-${layer + 1}.drawing.json`, encode(canonicalDrawing(drawing)));
  }
  for (const output of built.value.files)
    for (const [part, bytes] of await makeFile(output, dpi)) made.set(part, bytes);
  for (const output of await proofFiles(each)) {
    for (const [part, bytes] of await makeFile(output, TEMPLATE_DPI)) made.set(part, bytes);
  }
  return made;
}
