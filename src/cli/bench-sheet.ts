import { basename, dirname, join } from 'node:path';
import type { Command } from 'commander';
import { type BenchSheetWishes, makeBenchSheets, type Solved, solveLoading } from '../index.ts';
import type { Problem } from '../problems/problem.ts';
import { defaultFolder, findShop, readSource, type SourceFile } from './input.ts';
import { writeAll } from './output.ts';
import { fail, note, printJson, warn } from './say.ts';

export interface SheetOptions {
  readonly shop?: string;
  readonly out?: string;
  readonly paper?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** The options that every sheet for the bench has. */
export function sheetOptions(command: Command): Command {
  return command
    .option('--paper <paper>', 'letter, a4 … (default: the paper of the first job)')
    .option('--out <dir>', "where the file goes (default: a folder named after the job's file; bench for several)")
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the job or in a folder above it)")
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors');
}

export interface SolvedFile {
  readonly file: string;
  readonly text: string;
  readonly solved: Solved;
  readonly shop?: SourceFile;
}

/** Every job with the shop that belongs to it, the problems of all at once. A shop among them, as `*.yaml` gives it, is none. */
export async function solveFiles(given: readonly string[], asked: string | undefined) {
  const files = given.length > 1 ? given.filter((file) => basename(file) !== 'shop.yaml') : given;
  const jobs: SolvedFile[] = [];
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  for (const file of files) {
    const source = await readSource(file, 'job');
    const shop = await findShop(file, asked);
    const known = shop === undefined ? {} : { shop };
    const solved = await solveLoading(source.text, { file, ...known });
    if (solved.ok) {
      jobs.push({ file, text: source.text, solved: solved.value, ...known });
      warnings.push(...solved.warnings);
    } else problems.push(...solved.problems);
  }
  return { jobs, problems, warnings };
}

/** Solves the jobs, all of their problems at once, and writes one kind of sheet for them. */
export async function writeSheets(
  kind: string,
  files: readonly string[],
  options: SheetOptions,
  wishes: BenchSheetWishes,
): Promise<void> {
  const { jobs, problems, warnings } = await solveFiles(files, options.shop);
  if (problems.length > 0) return fail(problems, options.json === true);
  const { paper } = options;
  const made = await makeBenchSheets(
    kind,
    jobs.map(({ solved }) => solved),
    { ...wishes, ...(paper === undefined ? {} : { paper }) },
  );
  if (!made.ok) return fail(made.problems, options.json === true);
  const folder = options.out ?? folderFor(files);
  const { title, sheets, record } = made.value;
  await writeAll(folder, made.value.files);
  const names = made.value.files.map(({ name }) => name);
  const all = [...warnings, ...made.warnings];
  if (options.json === true) {
    const solved = jobs.map(({ file, solved: { report } }) => ({ file, ...report }));
    return printJson({ folder, files: names, sheets, [kind]: record, jobs: solved, warnings: all });
  }
  if (options.quiet === true) return;
  warn(all);
  note(`${names[0]}  ${title}, ${sheets === 1 ? 'one sheet' : `${sheets} sheets`}`);
  note(`written to ${folder}`);
}

export function folderFor(files: readonly string[]): string {
  const [first] = files;
  if (first === undefined) return '.';
  return files.length === 1 ? defaultFolder(first) : join(dirname(first), 'bench');
}
