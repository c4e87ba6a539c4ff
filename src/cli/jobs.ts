import { basename, dirname, join } from 'node:path';
import { type Solved, solveLoading } from '../outputs/solve-job.ts';
import { defined } from '../problems/defined.ts';
import type { Problem } from '../problems/problem.ts';
import { defaultFolder, findShop, readSource, type SourceFile } from './input.ts';
import { UsageError } from './usage.ts';

export interface SolvedFile {
  readonly file: string;
  readonly solved: Solved;
  readonly shop?: SourceFile;
}

/** Every job with the shop that belongs to it, the problems of all at once. A shop among them, as `*.yaml` gives it, is none. */
export async function solveFiles(given: readonly string[], shopFile: string | undefined) {
  const files = given.length > 1 ? given.filter((file) => basename(file) !== 'shop.yaml') : given;
  const jobs: SolvedFile[] = [];
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  for (const file of files) {
    const source = await readSource(file, 'job');
    const shop = await findShop(file, shopFile);
    const known = defined({ shop });
    const solved = await solveLoading(source.text, { file: source.file, ...known });
    if (solved.ok) {
      jobs.push({ file, solved: solved.value, ...known });
      warnings.push(...solved.warnings);
    } else problems.push(...solved.problems);
  }
  return { jobs, problems, warnings };
}

/** The shop of the jobs; of none the one that would be theirs here. Where counts and shelf are one shop's, all are of one. */
export async function shopOf(
  jobs: readonly SolvedFile[],
  shopFile: string | undefined,
  oneShop: boolean,
): Promise<SourceFile | undefined> {
  if (jobs.length === 0) return findShop(join('.', 'job.yaml'), shopFile);
  const shops = [...new Map(jobs.map(({ shop }) => [shop?.file, shop])).values()];
  if (!oneShop || shops.length === 1) return shops[0];
  const said = jobs.map(({ file, shop }) => `${file}: ${shop?.file ?? 'none'}`).join('; ');
  throw new UsageError(`the jobs lie beside different shop files (${said}); name one with --shop`);
}

/** Where outputs go unless shopFile otherwise: beside the job, of several in one folder beside the first. */
export function folderFor(files: readonly string[]): string {
  const [first] = files;
  if (first === undefined) return '.';
  return files.length === 1 ? defaultFolder(first) : join(dirname(first), 'bench');
}
