import { basename, dirname, extname, join, resolve } from 'node:path';
import type { Command } from 'commander';
import type { Problem } from '../../problems/problem.ts';
import { type SheetOptions, type SolvedFile, sheetOptions, solveFiles } from '../bench-sheet.ts';
import { type Everything, type EverythingWishes, everything } from '../everything.ts';
import { defaultFolder } from '../input.ts';
import { writeFolders } from '../output.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { UsageError } from '../usage.ts';

interface Options extends SheetOptions {
  readonly extent?: string;
  readonly printer?: string;
  readonly number?: string;
  readonly date?: string;
}

export function define(command: Command): void {
  sheetOptions(
    command
      .argument('<job...>', 'job files, YAML or JSON')
      .option('--extent <extent>', 'of patterns: whole (default) or corners, laid on by the board’s own edges')
      .option('--printer <name>', 'a printer of the shop, whose measured scale is corrected')
      .option(
        '--number <number>',
        'of the first job, as the shop counts; the others count on (default: what each says)',
      )
      .option('--date <text>', 'the date on the proof, as it is to be printed'),
  )
    .addHelpText(
      'after',
      `
Each job has a folder of its own, in --out or beside the job, with manifest.json: every file, and where each page's part of
the drawing lies. Where one job is wrong nothing is written for any.

Examples:
  matwright make examples/heron/job.yaml
  matwright make monday/*.yaml --out monday-out --number 41
`,
    )
    .action(make);
}

async function make(files: readonly string[], options: Options): Promise<void> {
  const json = options.json === true;
  const wishes = wishesOf(options);
  const { jobs, problems, warnings } = await solveFiles(files, options.shop);
  if (problems.length > 0) return fail(problems, json);
  const folders = foldersOf(
    jobs.map(({ file }) => file),
    options.out,
  );
  const made: { readonly job: SolvedFile; readonly folder: string; readonly all: Everything }[] = [];
  const told: Problem[] = [...warnings];
  const wrong: Problem[] = [];
  for (const [index, job] of jobs.entries()) {
    const all = await everything(job, index, wishes);
    if (!all.ok) wrong.push(...all.problems);
    else {
      made.push({ job, folder: folders[index]!, all: all.value });
      told.push(...all.warnings);
    }
  }
  if (wrong.length > 0) return fail(wrong, json);
  await writeFolders(made.map(({ folder, all }) => ({ folder, files: all.files })));
  if (json) {
    const list = made.map(({ job, folder, all }) => ({ job: job.file, folder, ...all.manifest }));
    return printJson({ jobs: list });
  }
  if (options.quiet === true) return;
  warn([...new Map(told.map((problem) => [JSON.stringify(problem), problem])).values()]);
  for (const { folder, all } of made) note(`${all.manifest.title}: ${all.files.length} files in ${folder}`);
}

function wishesOf({ paper, printer, extent, number, date }: Options): EverythingWishes {
  if (extent !== undefined && extent !== 'whole' && extent !== 'corners')
    throw new UsageError(`--extent ${extent}: write whole or corners`);
  return {
    ...(paper === undefined ? {} : { paper }),
    ...(printer === undefined ? {} : { printer }),
    ...(extent === undefined ? {} : { extent }),
    ...(number === undefined ? {} : { number }),
    ...(date === undefined ? {} : { date }),
  };
}

/**
 * A folder for each job, by the name of its file; jobs of one name (`heron/job.yaml`, `terns/job.yaml`) by that of the
 * folder that they lie in. No two are alike, capitals left aside, since some disks do not tell them apart.
 */
function foldersOf(files: readonly string[], out: string | undefined): readonly string[] {
  const name = (file: string): string => basename(file, extname(file));
  const above = (file: string): string => `${basename(dirname(resolve(file)))}-${name(file)}`;
  const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
  const folders = files.map((file) => {
    if (out === undefined) return defaultFolder(file);
    const alone = files.filter((other) => same(name(other), name(file))).length === 1;
    return join(out, alone ? name(file) : above(file));
  });
  const twice = files.filter((_, i) => folders.some((each, k) => k !== i && same(each, folders[i]!)));
  if (twice.length === 0) return folders;
  throw new UsageError(`${twice.join(' and ')} would share a folder; rename one, or make them by themselves`);
}
