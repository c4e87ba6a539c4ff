import { openPdf } from '../../src/dev/render.ts';
import { pattern } from '../../src/documents/pattern.ts';
import { build, type OutputFile, solveJob } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import { canonicalDrawing, canonicalJson } from './canonical.ts';
import type { Case } from './cases.ts';
import type { Outputs } from './compare.ts';
import { pdfText } from './pdf-text.ts';
import { packed } from './pictures.ts';

/** Enough to see every line, and light enough for a page to stay below the limit. */
const DPI = 64;

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A PDF as text and as one picture a page; the bytes themselves hold what no reader shows. */
export async function makePdf(name: string, bytes: Uint8Array): Promise<Outputs> {
  const made = new Map([[`${name}.txt`, encode(await pdfText(bytes))]]);
  const pdf = await openPdf(bytes);
  try {
    for (let page = 0; page < pdf.pageCount; page++) {
      const number = String(page + 1).padStart(2, '0');
      made.set(`${name.replace(/\.pdf$/, '')}-page-${number}.png`, packed(await pdf.render(page, DPI)));
    }
  } finally {
    pdf.close();
  }
  return made;
}

async function makeFile({ name, bytes }: OutputFile): Promise<Outputs> {
  return name.endsWith('.pdf') ? makePdf(name, bytes) : new Map([[name, bytes]]);
}

/** Everything that has a reference: what was solved, the drawings, and the files as they are read back. */
export async function makeCase({ job, file, shop }: Case): Promise<Outputs> {
  const options = { file, ...(shop !== undefined && { shop: { text: shop, file: 'shop.yaml' } }) };
  const solved = solveJob(job, options);
  const built = await build(job, { ...options, documents: ['pattern'], svg: true });
  if (!solved.ok || 'problems' in built) {
    const problems = solved.ok ? ('problems' in built ? built.problems : []) : solved.problems;
    throw new Error(`a golden case must be a good job:\n${problems.map(showProblem).join('\n')}`);
  }
  const { mat, strokes, job: read } = solved.value;
  const made = new Map([['report.json', encode(`${canonicalJson({ ...built.report, warnings: built.warnings })}\n`)]]);
  for (const layer of mat.layers.keys()) {
    const { drawing } = pattern(mat, strokes, read, layer);
    made.set(`pattern-${layer + 1}.drawing.json`, encode(canonicalDrawing(drawing)));
  }
  for (const output of built.files) for (const [name, bytes] of await makeFile(output)) made.set(name, bytes);
  return made;
}
