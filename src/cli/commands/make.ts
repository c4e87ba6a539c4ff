import { basename, dirname, extname, join, resolve } from 'node:path';
import type { Command } from 'commander';
import { type Everything, everything } from '../../outputs/everything.ts';
import type { OptionName } from '../../outputs/option-table.ts';
import { type Problem, toldOnce } from '../../problems/problem.ts';
import { leftJson, tellLeft, writeOutputs } from '../earlier.ts';
import { defaultFolder } from '../input.ts';
import { type SolvedFile, solveFiles } from '../jobs.ts';
import { type Given, optionsFrom, outputOptions, type Shared } from '../output-options.ts';
import { picturesBeside } from '../picture.ts';
import { rendererBytes } from '../renderer.ts';
import { rounded } from '../rounded.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { UsageError } from '../usage.ts';

/** What is asked of all outputs of a job at once. */
const OPTIONS: readonly OptionName[] = ['paper', 'printer', 'extent', 'number', 'date', 'format', 'png', 'dpi'];

/** What everything of a job may be called, whichever state of the job it was made of. */
const FAMILIES = [
  '^pattern-(?:\\d+|face)(?:-[\\w-]+)?\\.(?:pdf|svg|png)$',
  '^(?:proof|ticket|intake|placement|blanks|labels)(?:-[\\w-]+)?\\.(?:pdf|svg|png)$',
  '^cut-[\\w.-]+-\\d+\\.(?:svg|dxf|plt)$',
];

export function define(command: Command): void {
  outputOptions(command.argument('<job...>', 'job files, YAML or JSON'), OPTIONS, ['pdf', 'svg', 'png', 'tiles'])
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

async function make(files: readonly string[], flags: Given & Shared): Promise<void> {
  const json = flags.json === true;
  const options = optionsFrom(OPTIONS, flags);
  const { jobs, problems, warnings } = await solveFiles(files, flags.shop);
  if (problems.length > 0) return fail(problems, json);
  const folders = foldersOf(
    jobs.map(({ file }) => file),
    flags.out,
  );
  const made: { readonly job: SolvedFile; readonly folder: string; readonly all: Everything }[] = [];
  const told: Problem[] = [...warnings];
  const wrong: Problem[] = [];
  for (const [index, job] of jobs.entries()) {
    const around = { pictures: picturesBeside(job.file), renderer: rendererBytes };
    const all = await everything(job.solved, index, options, around);
    if (!all.ok) wrong.push(...all.problems);
    else {
      made.push({ job, folder: folders[index]!, all: all.value });
      told.push(...all.warnings);
    }
  }
  if (wrong.length > 0) return fail(wrong, json);
  const outputs = made.map(({ folder, all }) => ({ folder, files: all.files, families: FAMILIES }));
  const left = await writeOutputs('make', outputs, flags.prune === true);
  if (json) {
    const list = made.map(({ job, folder, all }) => ({
      job: job.file,
      folder,
      ...all.manifest,
      ...leftJson(left.filter((each) => each.folder === folder)),
    }));
    return printJson(rounded({ jobs: list }));
  }
  if (flags.quiet === true) return;
  warn(toldOnce(told));
  for (const { folder, all } of made) note(`${all.manifest.title}: ${all.files.length} files in ${folder}`);
  tellLeft(left);
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
