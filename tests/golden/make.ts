import '../svg-window.ts';
import { openPdf } from '../../src/dev/render.ts';
import { type OutputId, type OutputOptions, type Prepared, prepare, type Work, write } from '../../src/index.ts';
import type { Problem, Result } from '../../src/problems/problem.ts';
import { toldOnce } from '../../src/problems/problem.ts';
import { showProblem } from '../../src/problems/show.ts';
import { canonicalDrawing, canonicalJson } from './canonical.ts';
import type { Case } from './case.ts';
import type { Outputs } from './compare.ts';
import { makeCutCase } from './make-cut.ts';
import { pdfText, type Strokes } from './pdf-text.ts';
import { packed } from './pictures.ts';
import { picturesIn } from './pictures-in.ts';
import { type Solving, solveWork } from './solve-work.ts';
import { svgText } from './svg-text.ts';

/** Enough to see every line and to read every word, and light enough for a page to stay below the limit. */
const DPI = 64;
/** Pictures in colour are heavier: a proof is coloured all over, a full ticket has the colours of its boards. */
const COLOURED: Partial<Readonly<Record<OutputId, number>>> = { proof: 40, ticket: 34 };

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A PDF as text, and pages of it as pictures; the bytes themselves hold what no reader shows. */
export async function makePdf(
  name: string,
  bytes: Uint8Array,
  strokes: Strokes,
  pages: readonly number[],
  dpi = DPI,
): Promise<Outputs> {
  const made = new Map([[`${name}.txt`, encode(await pdfText(bytes, strokes))]]);
  if (pages.length === 0) return made;
  const pdf = await openPdf(bytes);
  try {
    for (const page of pages) {
      const number = String(page).padStart(2, '0');
      made.set(`${name.replace(/\.pdf$/, '')}-page-${number}.png`, packed(await pdf.render(page - 1, dpi)));
    }
  } finally {
    pdf.close();
  }
  return made;
}

/** The value of what a golden case must be able to make. */
function good<T>(result: Result<T>): { readonly value: T; readonly warnings: readonly Problem[] } {
  if (result.ok) return result;
  throw new Error(`a golden case must be good:\n${result.problems.map(showProblem).join('\n')}`);
}

interface Made<Id extends OutputId> {
  readonly prepared: Prepared<Id>;
  readonly warnings: readonly Problem[];
  /** Its files as they are read back. */
  readonly files: Outputs;
}

async function makeOutput<Id extends OutputId>(
  each: Case,
  id: Id,
  work: Work,
  options: OutputOptions,
): Promise<Made<Id>> {
  const { value: prepared, warnings } = good(await prepare(id, work, options, { pictures: picturesIn(each.folder) }));
  const files = new Map<string, Uint8Array>();
  for (const { name, bytes } of good(await write(prepared)).value) {
    const pages = each.pictures?.[name.replace(/\.pdf$/, '')] ?? [];
    const read = name.endsWith('.pdf')
      ? await makePdf(name, bytes, each.inFull || id === 'proof' ? 'each' : 'summed', pages, COLOURED[id] ?? DPI)
      : new Map([[`${name}.txt`, encode(svgText(bytes))]]);
    for (const [part, content] of read) files.set(part, content);
  }
  return { prepared, warnings, files };
}

/** Outputs that say more of themselves than their pages do. */
const RECORDED: readonly OutputId[] = ['pattern', 'stock'];

/** One output alone; where it goes on paper by itself, every line of its text stands for one of its drawings. */
async function makeAlone(each: Case, { work }: Solving): Promise<Outputs> {
  const { prepared, files } = await makeOutput(each, each.output!, work, each.options ?? {});
  const record = encode(`${canonicalJson(prepared.drawn.record)}\n`);
  return RECORDED.includes(prepared.id) ? new Map([...files, ['record.json', record]]) : files;
}

/** The patterns of a job with their drawings, its customer's proof, measured and dated, and what is said of them. */
async function makeWhole(each: Case, { work, warnings }: Solving): Promise<Outputs> {
  const pattern = await makeOutput(each, 'pattern', work, { format: ['pdf', 'svg'] });
  const proof = await makeOutput(each, 'proof', work, { dimensions: true, date: '12 March 2031' });
  const report = {
    ...work.jobs[0]!.report,
    patterns: pattern.prepared.drawn.record,
    warnings: toldOnce([...warnings, ...pattern.warnings]),
  };
  const drawings = pattern.prepared.drawn.documents.flatMap(({ name, whole }) =>
    whole === undefined ? [] : [[`${name}.drawing.json`, encode(canonicalDrawing(whole))] as const],
  );
  return new Map([
    ['report.json', encode(`${canonicalJson(report)}\n`)],
    ...drawings,
    ...pattern.files,
    ...proof.files,
  ]);
}

/** Everything that has a reference: what was solved, the drawings, and the files as they are read back. */
export async function makeCase(each: Case): Promise<Outputs> {
  if (each.machine !== undefined) return makeCutCase(each);
  const solving = good(solveWork(each)).value;
  return each.output === undefined ? makeWhole(each, solving) : makeAlone(each, solving);
}
