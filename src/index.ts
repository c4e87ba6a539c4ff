export { readShop } from './shop/read-shop.ts';

import type { Report } from './bench/report.ts';
import { loadFonts } from './fonts/load.ts';
import { parseVary } from './job/change.ts';
import { notShown, userTexts } from './job/printed-texts.ts';
import type { MadeBenchSheets } from './make-bench-sheets.ts';
import type { CutMade, CutWishes } from './make-cut-files.ts';
import type { JigWishes, MadeJig } from './make-jig.ts';
import { makePatterns, type PatternRecord, type PatternWishes } from './make-pattern.ts';
import type { MadeProof, ProofRecord, ProofWishes } from './make-proof.ts';
import type { Paper } from './papers/model.ts';
import { fail, type Problem, type Result, succeed, toldOnce } from './problems/problem.ts';
import { type PaperUse, settle } from './settle/settle.ts';
import type { Settled } from './settle/settled.ts';
import { type Solved, type SolveOptions, type Source, solveLoading } from './solve-job.ts';

export type { Report } from './bench/report.ts';
export { type SharedSetting, sharedSettings } from './bench/settings.ts';
export { type Calibration, type CalibrationRequest, calibrate } from './calibrate/calibrate.ts';
export { type BenchSheetWishes, type MadeBenchSheets, makeBenchSheets } from './make-bench-sheets.ts';
export { type MadePlacement, makePlacement } from './make-placement.ts';
export { type MadeStock, makeStock, type StockDayWishes } from './make-stock.ts';
export type { Clashing, Problem, Result } from './problems/problem.ts';
export { clearField, setField } from './read/edit/set-field.ts';
export { type Solved, type SolveOptions, type Source, solveJob, solveLoading } from './solve-job.ts';
export type {
  CutNode,
  Placement,
  StockInput,
  StockOptions,
  StockPiece,
  StockPlan,
  StockSheet,
  UsedSheet,
} from './stock/planner/model.ts';
export { planStock } from './stock/planner/plan.ts';
export { type CutSequence, cutSequence, type Instruction } from './stock/planner/sequence.ts';
export { reasons, type Why } from './why.ts';
export { loadSvg } from './writers/load-svg.ts';
export { buildSvgIn, type SvgWindow } from './writers/svg-window.ts';

/** Sheets for the bench that are made from one job, by the name of their file. */
const SHEETS = ['ticket', 'placement', 'blanks', 'labels', 'intake'] as const;
export const DOCUMENTS = ['pattern', 'cutfile', 'proof', ...SHEETS] as const;
type Wanted = (typeof DOCUMENTS)[number];

/** What is to be made, and printed on what. Nothing ambient: texts, names and dates all come in here. */
export interface BuildOptions extends SolveOptions, PatternWishes {
  /** The pattern alone, where nothing else is said. */
  readonly documents?: readonly Wanted[];
  /** For which machine, and how, where a file for one is wanted. */
  readonly cut?: CutWishes;
  /** What a proof shows beside the piece, where one is wanted. */
  readonly proof?: ProofWishes;
  /** Instead of the job's `print.paper`. */
  readonly paper?: string;
  /** A printer of the shop, instead of the job's `print.printer`; `none`: none is corrected for. */
  readonly printer?: string;
}

export interface OutputFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Built {
  readonly files: readonly OutputFile[];
  readonly report: Report & {
    readonly patterns: readonly PatternRecord[];
    readonly cutfiles?: CutMade['records'];
    readonly proof?: ProofRecord;
    /** What each sheet for the bench says, by its kind. */
    readonly sheets?: Readonly<Record<string, unknown>>;
  };
  readonly warnings: readonly Problem[];
}

/** Makes the documents of a job: bytes by file name, and what was solved. The same input gives the same bytes. */
export async function build(
  jobText: string,
  options: BuildOptions = {},
): Promise<Built | { readonly problems: readonly Problem[] }> {
  const solved = await solveLoading(jobText, options);
  if (!solved.ok) return { problems: solved.problems };
  const { job, shop, locate } = solved.value;
  const wanted = options.documents ?? ['pattern'];
  const date = options.proof?.date;
  const asked = { ...options, ...(date === undefined ? {} : { date }) };
  const settled = settle({ job, shop, uses: usesOf(wanted), asked });
  if (!settled.ok) return { problems: locate(settled.problems) };

  const texts = userTexts(job).map(({ text }) => text);
  const prints = wanted.includes('pattern');
  const fonts = await loadFonts(texts, {
    files: prints,
    outlines: prints && (options.svg === true || options.tiles === true),
  });
  const patterns = prints ? await makePatterns(solved.value, settled.value, options, fonts) : undefined;
  const cut = wanted.includes('cutfile') ? await cutFiles(solved.value, options) : undefined;
  const proof = wanted.includes('proof') ? await proofFiles(jobText, solved.value, settled.value, options) : undefined;
  const sheets = await sheetFiles(solved.value, options, settled.value.paper);
  const made = [patterns, cut, proof, ...sheets.map(({ one }) => one)].filter((one) => one !== undefined);
  const problems = made.flatMap(refusals);
  if (problems.length > 0) return { problems: locate(problems) };

  const done = made.filter((one) => one.ok);
  const files = done.flatMap((one) => one.value.files);
  const said = locate([...notShown(userTexts(job), fonts), ...done.flatMap((one) => one.warnings)]);
  const warnings = toldOnce([...solved.warnings, ...said]);
  const report = {
    ...solved.value.report,
    patterns: patterns?.ok === true ? patterns.value.records : [],
    ...(cut?.ok === true ? { cutfiles: cut.value.records } : {}),
    ...(proof?.ok === true ? { proof: proof.value.record } : {}),
    ...(sheets.length > 0 ? { sheets: recordsOf(sheets) } : {}),
  };
  return { files, report, warnings };
}

/** What the documents ask of the paper. */
const usesOf = (wanted: readonly Wanted[]): readonly PaperUse[] =>
  wanted.flatMap((each): PaperUse[] => {
    switch (each) {
      case 'pattern':
      case 'placement':
        return ['full scale'];
      case 'proof':
        return ['sheet'];
      case 'ticket':
      case 'blanks':
      case 'labels':
      case 'intake':
        return ['readings'];
      case 'cutfile':
        return [];
      default: {
        const never: never = each;
        throw new TypeError(`unknown document ${JSON.stringify(never)}`);
      }
    }
  });

const refusals = (result: Result<unknown>): readonly Problem[] => (result.ok ? [] : result.problems);

async function cutFiles(solved: Solved, { cut = {} }: BuildOptions): Promise<Result<CutMade>> {
  return (await import('./make-cut-files.ts')).makeCutFiles(solved, cut);
}

interface MadeSheet {
  readonly kind: string;
  readonly one: Result<Pick<MadeBenchSheets, 'files' | 'record'>>;
}

async function sheetFiles(
  solved: Solved,
  { documents = [], paper, printer }: BuildOptions,
  on: Paper,
): Promise<MadeSheet[]> {
  const found: MadeSheet[] = [];
  // A pattern may go on a roll; sheets for the bench then go on the usual paper.
  const known = printer === undefined ? {} : { printer };
  const asked = { ...known, ...(paper === undefined ? {} : { paper }) };
  for (const kind of SHEETS.filter((each) => documents.includes(each))) {
    if (kind === 'placement') {
      found.push({ kind, one: await (await import('./make-placement.ts')).makePlacement(solved, asked) });
    } else {
      const { makeBenchSheets: make } = await import('./make-bench-sheets.ts');
      found.push({ kind, one: await make(kind, [solved], on.kind === 'sheet' ? asked : known) });
    }
  }
  return found;
}

const recordsOf = (sheets: readonly MadeSheet[]): Readonly<Record<string, unknown>> =>
  Object.fromEntries(sheets.flatMap(({ kind, one }) => (one.ok ? [[kind, one.value.record]] : [])));

/** The proof of the job, or of each way to make it where something is to be varied. */
async function proofFiles(
  jobText: string,
  solved: Solved,
  settled: Settled,
  options: BuildOptions,
): Promise<Result<MadeProof>> {
  const { vary } = options.proof ?? {};
  const asked = vary === undefined ? undefined : parseVary(vary);
  if (asked !== undefined && 'problem' in asked) return fail([asked.problem]);
  const ways = await Promise.all(
    (asked?.changes ?? []).map(async (change) => ({
      change,
      made: await solveLoading(jobText, { ...options, change }),
    })),
  );
  const problems = toldOnce(ways.flatMap(({ made }) => refusals(made)));
  if (problems.length > 0) return fail(problems);
  const varied = ways.flatMap(({ change, made }) => (made.ok ? [{ ...made.value, varied: change }] : []));
  const pieces = varied.length === 0 ? [solved] : varied;
  const date = { text: options.proof?.date ?? '', path: [] };
  const said = [date, ...pieces.flatMap(({ job }) => userTexts(job))];
  const texts = said.map(({ text }) => text);
  const outlines = options.svg === true || options.proof?.png !== undefined;
  const fonts = await loadFonts(texts, { files: true, outlines });
  const { makeProof } = await import('./make-proof.ts');
  const proof = await makeProof(pieces, {
    ...options.proof,
    settled,
    svg: options.svg === true,
    fonts,
  });
  if (!proof.ok) return proof;
  const odd = ways.flatMap(({ made }) => (made.ok ? made.warnings : []));
  return succeed(proof.value, [...odd, ...notShown(said, fonts), ...proof.warnings]);
}

/** Makes a jig, for one job where it is made for one: `jig-KIND.pdf`, and `jig-KIND.svg` where something of it is cut. */
export async function buildJig(
  kind: string,
  { job, ...wishes }: Omit<JigWishes, 'solved'> & { readonly job?: Source } = {},
): Promise<Result<MadeJig>> {
  const { makeJig } = await import('./make-jig.ts');
  if (job === undefined) return makeJig(kind, wishes);
  const solved = await solveLoading(job.text, {
    file: job.file,
    ...(wishes.shop === undefined ? {} : { shop: wishes.shop }),
  });
  return solved.ok ? makeJig(kind, { ...wishes, solved: solved.value }) : solved;
}
