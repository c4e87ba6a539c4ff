import { basename } from 'node:path';
import { countedOn } from '../documents/ticket/tickets.ts';
import { build, makeBenchSheets, makePlacement } from '../index.ts';
import { fail, type Problem, type Result, succeed, toldOnce } from '../problems/problem.ts';
import type { SolvedFile } from './bench-sheet.ts';
import type { OutputFile } from './output.ts';
import { picturesBeside } from './picture.ts';

export interface EverythingWishes {
  readonly paper?: string;
  readonly printer?: string;
  readonly extent?: 'whole' | 'corners';
  /** Of the first job. */
  readonly number?: string;
  readonly date?: string;
}

export interface Everything {
  readonly files: readonly OutputFile[];
  /** What `manifest.json` says: the files, and of every page what it shows and where. */
  readonly manifest: {
    readonly title: string;
    readonly files: readonly string[];
    readonly pages: readonly unknown[];
    readonly [key: string]: unknown;
  };
}

const SHEETS = ['ticket', 'blanks', 'labels', 'intake'] as const;

/**
 * All documents of one job, the one at `index` among those asked for, by the same ways as the commands for each of them:
 * patterns, a file for every machine of the shop, proof, placement and the sheets for the bench. What a machine cannot
 * cut is told as a warning and left out; other problems leave nothing.
 */
export async function everything(
  { file, text, shop, solved }: SolvedFile,
  index: number,
  wishes: EverythingWishes,
): Promise<Result<Everything>> {
  const { paper, printer, extent, date } = wishes;
  const known = { file, ...(shop === undefined ? {} : { shop }) };
  const printed = { ...(paper === undefined ? {} : { paper }), ...(printer === undefined ? {} : { printer }) };
  const laid = extent === undefined ? {} : { extent };
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const files: OutputFile[] = [];
  const said: Record<string, unknown> = {};
  const pages: unknown[] = [];

  const drawn = await build(text, {
    ...known,
    ...printed,
    ...laid,
    documents: ['pattern', 'proof'],
    svg: true,
    proof: { pictures: picturesBeside(file), ...(date === undefined ? {} : { date }) },
  });
  if ('problems' in drawn) problems.push(...drawn.problems);
  else {
    files.push(...drawn.files);
    warnings.push(...drawn.warnings);
    const { patterns, proof, ...report } = drawn.report;
    pages.push(...patterns.flatMap((pattern) => pattern.pages));
    Object.assign(said, report, { board: patterns[0]?.board, patterns, proof });
  }

  const cutfiles: unknown[] = [];
  for (const machine of solved.shop.machines.keys()) {
    const cut = await build(text, { ...known, documents: ['cutfile'], cut: { machine } });
    if ('problems' in cut) {
      warnings.push(...cut.problems.map((problem) => ({ ...problem, severity: 'warning' as const })));
      continue;
    }
    files.push(...cut.files);
    warnings.push(...cut.warnings);
    cutfiles.push(...(cut.report.cutfiles ?? []));
  }

  const number = wishes.number === undefined ? {} : { number: countedOn(wishes.number, index) };
  const sheetPaper = paper === undefined ? {} : { paper };
  for (const kind of SHEETS) {
    const made = await makeBenchSheets(kind, [solved], { ...sheetPaper, ...number });
    if (!made.ok) problems.push(...made.problems);
    else {
      files.push(...made.value.files);
      warnings.push(...made.warnings);
      said[kind] = made.value.record;
    }
  }
  if (solved.mat.openings.some(({ artwork }) => artwork !== undefined)) {
    const placed = await makePlacement(solved, { ...printed, ...laid });
    if (!placed.ok) problems.push(...solved.locate(placed.problems));
    else {
      files.push(...placed.value.files);
      warnings.push(...solved.locate(placed.warnings));
      pages.push(...placed.value.record.pages);
      said.placement = placed.value.record;
    }
  }
  if (problems.length > 0) return fail(toldOnce(problems));
  const names = files.map(({ name }) => name);
  const told = toldOnce(warnings);
  // The folder may be moved: what it says of itself holds no ways of this machine.
  const portable = told.map((problem) =>
    problem.file === undefined ? problem : { ...problem, file: basename(problem.file) },
  );
  const manifest = { title: solved.job.title, files: names, pages, ...said, cutfiles, warnings: portable };
  return succeed({ files: [...files, manifestFile(manifest)], manifest }, told);
}

const manifestFile = (manifest: Everything['manifest']): OutputFile => ({
  name: 'manifest.json',
  bytes: new TextEncoder().encode(`${JSON.stringify(manifest, null, 2)}\n`),
});
