import type { Command } from 'commander';
import type { Stroke } from '../../bench/model.ts';
import type { Report } from '../../bench/report.ts';
import { sharedSettings } from '../../bench/settings.ts';
import { solveLoading } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import { showPath } from '../../problems/show.ts';
import { reasons, type Why } from '../../why.ts';
import { findShop, readSource } from '../input.ts';
import { rounded } from '../rounded.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { sharedInWords } from '../shared-words.ts';
import { sizesInWords } from '../sizes.ts';

interface Options {
  readonly shop?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

export function define(command: Command): void {
  command
    .argument('<job...>', 'job files, YAML or JSON')
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the job or in a folder above it)")
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors')
    .addHelpText('after', '\nExample:\n  matwright check examples/heron/job.yaml\n')
    .action(check);
}

/** Its paths as they are written elsewhere. */
const reasonRecord = ({ given, from, rules, ...why }: Why) => ({
  ...why,
  ...defined({ given: given === undefined ? undefined : showPath(given) }),
  from: from.map((part) => (part.path === undefined ? part : { ...part, path: showPath(part.path) })),
  rules: rules.map((rule) => (rule.path === undefined ? rule : { ...rule, path: showPath(rule.path) })),
});

async function check(files: readonly string[], options: Options): Promise<void> {
  const reports: (Report & { file: string; warnings: readonly unknown[] })[] = [];
  const strokes: (readonly Stroke[])[] = [];
  const problems = [];
  for (const file of files) {
    const source = await readSource(file, 'job');
    const shop = await findShop(file, options.shop);
    const solved = await solveLoading(source.text, { file: source.file, ...defined({ shop }) });
    if (solved.ok) {
      const why = options.json === true ? { reasons: reasons(solved.value).map(reasonRecord) } : {};
      reports.push({ file: source.file, ...solved.value.report, ...why, warnings: solved.warnings });
      strokes.push(solved.value.strokes.filter((stroke) => stroke.cut !== true));
      if (options.json !== true) {
        if (options.quiet !== true) note(sizesInWords(solved.value.report).join('\n'));
        if (options.quiet !== true) warn(solved.warnings);
      }
    } else problems.push(...solved.problems);
  }
  if (problems.length > 0) return fail(problems, options.json === true);
  const shared = sharedSettings(strokes);
  if (options.json === true) printJson(rounded({ jobs: reports, shared }));
  else if (options.quiet !== true && reports.length > 1) note(sharedInWords(shared, reports).join('\n'));
}
