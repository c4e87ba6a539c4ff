import type { Stroke } from './bench/model.ts';
import { report as makeReport, type Report } from './bench/report.ts';
import { strokes as makeStrokes } from './bench/strokes.ts';
import { pattern } from './documents/pattern.ts';
import type { Drawing } from './drawing/model.ts';
import { needsRare } from './fonts/coverage.ts';
import { type Change, parseVary } from './job/change.ts';
import type { Job, Shop } from './job/model.ts';
import { notShown, userTexts } from './job/printed-texts.ts';
import { readJob } from './job/read.ts';
import type { Mat } from './mat/model.ts';
import { solve } from './mat/solve.ts';
import type { Paper } from './papers/model.ts';
import { nearest } from './problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed } from './problems/problem.ts';
import { type Layout, layOut } from './tiling/layout.ts';
import { type DocumentRecord, documentRecord } from './tiling/manifest.ts';
import { onPaper } from './tiling/on-paper.ts';
import type { LayoutOptions } from './tiling/options.ts';
import type { CutMade, CutWishes } from './writers/cut-files.ts';
import type { JigWishes, MadeJig } from './writers/jig-files.ts';
import { writePdf } from './writers/pdf.ts';
import type { MadeProof, ProofRecord, ProofWishes } from './writers/proof-files.ts';
import type { SvgOptions } from './writers/svg.ts';

export { type Calibration, type CalibrationRequest, calibrate } from './bench/calibration.ts';
export type { Report } from './bench/report.ts';
export { readShop } from './job/read.ts';
export type { Problem, Result } from './problems/problem.ts';

export interface Source {
  readonly text: string;
  /** As problems name it. */
  readonly file: string;
}

export interface SolveOptions {
  /** The job's file name, for titles and problems. */
  readonly file?: string;
  readonly shop?: Source;
  /** Tried instead of what the job says in its place. */
  readonly change?: Change;
}

export interface Solved {
  readonly job: Job;
  readonly shop: Shop;
  readonly mat: Mat;
  readonly strokes: readonly Stroke[];
  readonly report: Report;
  /** Adds file, line and column to problems that point into the job. */
  readonly locate: (problems: readonly Problem[]) => readonly Problem[];
}

/** Reads and solves a job; nothing is written. All problems at once, each with its place. */
export function solveJob(jobText: string, options: SolveOptions = {}): Result<Solved> {
  const read = readJob({
    text: jobText,
    file: options.file ?? 'job.yaml',
    ...(options.shop === undefined ? {} : { shopText: options.shop.text, shopFile: options.shop.file }),
    ...(options.change === undefined ? {} : { change: options.change }),
  });
  if (!read.ok) return read;
  const { job, shop, locate } = read.value;
  const solved = solve(job);
  if (!solved.ok) return fail(locate(solved.problems));
  const mat = solved.value;
  const cut = makeStrokes(mat, job);
  const refused = cut.warnings.filter((problem) => problem.severity === 'error');
  if (refused.length > 0) return fail(locate(refused));
  return succeed({ job, shop, mat, strokes: cut.strokes, report: makeReport(job, mat, cut.strokes), locate }, [
    ...read.warnings,
    ...locate([...solved.warnings, ...cut.warnings]),
  ]);
}

export const DOCUMENTS = ['pattern', 'cutfile', 'proof'] as const;

/** What is to be made, and printed on what. Nothing ambient: texts, names and dates all come in here. */
export interface BuildOptions extends SolveOptions {
  /** The pattern alone, where nothing else is said. */
  readonly documents?: readonly (typeof DOCUMENTS)[number][];
  /** For which machine, and how, where a file for one is wanted. */
  readonly cut?: CutWishes;
  /** What a proof shows beside the piece, where one is wanted. */
  readonly proof?: ProofWishes;
  /** Instead of the job's `print.paper`. */
  readonly paper?: string;
  readonly extent?: LayoutOptions['extent'];
  /** A printer of the shop, instead of the job's `print.printer`. */
  readonly printer?: string;
  /** Also one SVG for each pattern. */
  readonly svg?: boolean;
  /** Also one SVG for each sheet. */
  readonly tiles?: boolean;
  /** Only these groups of the drawings, flattened. */
  readonly show?: readonly string[];
}

export interface OutputFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface PatternRecord extends DocumentRecord {
  readonly file: string;
  readonly layer: number;
  readonly name: string;
  readonly sheets: number;
  readonly skipped: number;
  readonly summary: string;
  readonly advice: readonly string[];
}

export interface Built {
  readonly files: readonly OutputFile[];
  readonly report: Report & {
    readonly patterns: readonly PatternRecord[];
    readonly cutfiles?: CutMade['records'];
    readonly proof?: ProofRecord;
  };
  readonly warnings: readonly Problem[];
}

/** Makes the documents of a job: bytes by file name, and what was solved. The same input gives the same bytes. */
export async function build(
  jobText: string,
  options: BuildOptions = {},
): Promise<Built | { readonly problems: readonly Problem[] }> {
  const solved = solveJob(jobText, options);
  if (!solved.ok) return { problems: solved.problems };
  const { job, shop, mat, strokes, locate } = solved.value;
  const printed = onPaper(job, shop, options);
  if (!printed.ok) return { problems: locate(printed.problems) };

  const texts = userTexts(job).map(({ text }) => text);
  const rare = needsRare(texts) ? await (await import('./fonts/rare.ts')).prepareRare(texts) : undefined;
  const how = { extent: options.extent ?? 'whole', ...(rare === undefined ? {} : { rare }) } as const;
  const wanted = options.documents ?? ['pattern'];
  const drawn = wanted.includes('pattern') ? mat.layers : [];
  const patterns = drawn.map((_, layer) => pattern(mat, strokes, job, layer, how));
  const show = knownGroups(
    options.show,
    patterns.map((p) => p.drawing),
  );
  const layouts = patterns.map(({ drawing, instructions, warnings }) =>
    layOut(drawing, { ...printed.value, title: job.title, instructions, warnings, units: job.units }),
  );
  const cut = wanted.includes('cutfile') ? await cutFiles(solved.value, options) : undefined;
  const proof = wanted.includes('proof')
    ? await proofFiles(jobText, solved.value, printed.value.paper, options)
    : undefined;
  const problems = [
    ...show,
    ...[...layouts, ...(cut === undefined ? [] : [cut]), ...(proof === undefined ? [] : [proof])].flatMap(refusals),
  ];
  if (problems.length > 0) return { problems: locate(problems) };

  const files: OutputFile[] = [];
  const records: PatternRecord[] = [];
  const warnings = [...solved.warnings, ...locate(notShown(job)), ...locate(patterns.flatMap((p) => p.warnings))];
  for (const [i, layout] of layouts.entries()) {
    if (!layout.ok) continue;
    const name = `pattern-${i + 1}`;
    const { sheets, skipped, summary, advice, drawing } = layout.value;
    warnings.push(...locate(layout.warnings));
    records.push({
      file: `${name}.pdf`,
      layer: i + 1,
      name: mat.layers[i]!.name,
      sheets,
      skipped,
      summary,
      advice,
      ...documentRecord(`${name}.pdf`, layout.value),
    });
    const named = options.show?.filter((group) => drawing.groups.some((g) => g.name === group));
    const written = { ...(named === undefined ? {} : { show: named }), ...(rare === undefined ? {} : { rare }) };
    files.push({ name: `${name}.pdf`, bytes: await writePdf(layout.value, written) });
    if (options.svg === true || options.tiles === true)
      files.push(...(await svgFiles(name, layout.value, options, written)));
  }
  for (const made of [cut, proof]) {
    if (made?.ok !== true) continue;
    files.push(...made.value.files);
    warnings.push(...locate(made.warnings));
  }
  const report = {
    ...solved.value.report,
    patterns: records,
    ...(cut?.ok === true ? { cutfiles: cut.value.records } : {}),
    ...(proof?.ok === true ? { proof: proof.value.record } : {}),
  };
  return { files, report, warnings };
}

const refusals = (result: Result<unknown>): readonly Problem[] => (result.ok ? [] : result.problems);

async function cutFiles(solved: Solved, { cut = {} }: BuildOptions): Promise<Result<CutMade>> {
  return (await import('./writers/cut-files.ts')).makeCutFiles(solved, cut);
}

/** The proof of the job, or of each way to make it where something is to be varied. */
async function proofFiles(
  jobText: string,
  solved: Solved,
  paper: Paper,
  options: BuildOptions,
): Promise<Result<MadeProof>> {
  const { vary } = options.proof ?? {};
  const asked = vary === undefined ? undefined : parseVary(vary);
  if (asked !== undefined && 'problem' in asked) return fail([asked.problem]);
  const ways = (asked?.changes ?? []).map((change) => ({ change, made: solveJob(jobText, { ...options, change }) }));
  // What is wrong whatever is varied is told once.
  const problems = [...new Map(ways.flatMap(({ made }) => refusals(made)).map((p) => [JSON.stringify(p), p])).values()];
  if (problems.length > 0) return fail(problems);
  const varied = ways.flatMap(({ change, made }) => (made.ok ? [{ ...made.value, varied: change }] : []));
  const pieces = varied.length === 0 ? [solved] : varied;
  const texts = [options.proof?.date ?? '', ...pieces.flatMap(({ job }) => userTexts(job).map(({ text }) => text))];
  const rare = needsRare(texts) ? await (await import('./fonts/rare.ts')).prepareRare(texts) : undefined;
  const { makeProof } = await import('./writers/proof-files.ts');
  return makeProof(pieces, {
    ...options.proof,
    paper,
    paperAsked: options.paper !== undefined,
    svg: options.svg === true,
    ...(rare === undefined ? {} : { rare }),
  });
}

/** The pattern as one SVG, or each of its sheets as one, or both. */
async function svgFiles(name: string, layout: Layout, options: BuildOptions, how: SvgOptions): Promise<OutputFile[]> {
  const { writePageSvg, writeSvg } = await import('./writers/svg.ts');
  const file = (stem: string, text: string): OutputFile => ({
    name: `${stem}.svg`,
    bytes: new TextEncoder().encode(text),
  });
  return [
    ...(options.svg === true ? [file(name, writeSvg(layout.drawing, how))] : []),
    ...(options.tiles === true
      ? layout.pages.map((page) => file(`${name}-${page.name}`, writePageSvg(layout, page, how)))
      : []),
  ];
}

/** Groups that no drawing has are refused, with the nearest one that there is. */
function knownGroups(asked: readonly string[] | undefined, drawings: readonly Drawing[]): readonly Problem[] {
  const known = [...new Set(drawings.flatMap((d) => d.groups.map((group) => group.name)))];
  return (asked ?? [])
    .filter((name) => !known.includes(name))
    .map((name) => {
      const near = nearest(name, known);
      return error(
        'group-unknown',
        [],
        `there is nothing named ${JSON.stringify(name)} to show`,
        `${near === undefined ? '' : `did you mean ${near}? `}known are ${known.join(', ')}`,
      );
    });
}

/** Makes a jig, for one job where it is made for one: `jig-KIND.pdf`, and `jig-KIND.svg` where something of it is cut. */
export async function buildJig(
  kind: string,
  { job, ...wishes }: Omit<JigWishes, 'solved'> & { readonly job?: Source } = {},
): Promise<Result<MadeJig>> {
  const { makeJig } = await import('./writers/jig-files.ts');
  if (job === undefined) return makeJig(kind, wishes);
  const solved = solveJob(job.text, { file: job.file, ...(wishes.shop === undefined ? {} : { shop: wishes.shop }) });
  return solved.ok ? makeJig(kind, { ...wishes, solved: solved.value }) : solved;
}
