import { dirname, join } from 'node:path';
import type { Command } from 'commander';
import { type Calibration, calibrate, readShop } from '../../index.ts';
import { nearest } from '../../problems/nearest.ts';
import type { Result } from '../../problems/problem.ts';
import { CALIBRATED, type Calibrated } from '../../shop/readings/readings.ts';
import { askPapers, askReadings } from '../ask-readings.ts';
import { findShop, readSource, type SourceFile } from '../input.ts';
import { replaceText } from '../replace.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { today } from '../today.ts';
import { UsageError } from '../usage.ts';

interface Options {
  readonly shop?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

export function define(command: Command): void {
  command
    .argument('<kind>', `what was measured: ${CALIBRATED.join(', ')}`)
    .argument(
      '[file]',
      'the readings, YAML or JSON, as the jig or the reference shows them; asked for where it is left out',
    )
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the readings or in a folder above them)")
    .option('--dry-run', 'say what comes out and write nothing')
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
The order is printer, guide, head: each is read with the ones before. laser, knife and bevel-coupon are read from the
coupon of a machine (matwright cutfile JOB --machine laser --coupon).

Examples:
  matwright calibrate printer readings.yaml
  matwright calibrate head readings.yaml --dry-run
  matwright calibrate guide
  matwright calibrate laser readings.yaml
`,
    )
    .action(run);
}

async function run(word: string, file: string | undefined, options: Options): Promise<void> {
  const kind = kindOf(word);
  const shop = await findShop(file ?? join('.', 'readings.yaml'), options.shop);
  const readings = file === undefined ? await asked(kind, shop) : await readSource(file, 'readings file');
  const made = await believed(kind, readings, shop);
  if (!made.ok) return fail(made.problems, options.json === true);
  const { words, result, shopText } = made.value;
  const written = shop?.file ?? join(dirname(readings.file), 'shop.yaml');
  if (options.dryRun !== true) await replaceText(written, shop?.text, shopText);
  if (options.json === true) {
    const done = options.dryRun === true ? {} : { shop: written };
    return printJson({ kind, ...result, words, warnings: made.warnings, ...done });
  }
  if (options.quiet === true) return;
  warn(made.warnings);
  for (const line of words) note(line);
  note(options.dryRun === true ? `not written to ${written}` : `written to ${written}`);
}

function kindOf(word: string): Calibrated {
  const kind = CALIBRATED.find((each) => each === word);
  if (kind !== undefined) return kind;
  const near = nearest(word, CALIBRATED);
  throw new UsageError(
    `${JSON.stringify(word)} is nothing that is calibrated${near === undefined ? '' : `; did you mean ${near}?`} (${CALIBRATED.join(', ')})`,
  );
}

async function asked(kind: Calibrated, shop: SourceFile | undefined): Promise<SourceFile> {
  if (process.stdin.isTTY !== true) {
    throw new UsageError('name a file of readings; without one they are asked for, which takes a terminal');
  }
  const { TERMINAL } = await import('../prompts.ts');
  const read = shop === undefined ? undefined : readShop(shop);
  const names = read?.ok === true ? read.value : undefined;
  const offered = {
    printers: [...(names?.printers.keys() ?? [])],
    heads: [...(names?.heads.keys() ?? [])],
    machines: [...(names?.machines.values() ?? [])],
  };
  return { file: 'answers', text: await askReadings(kind, TERMINAL, offered) };
}

/** Where lengths look like a wrong paper, which paper is set is asked before they are believed. */
async function believed(
  kind: Calibrated,
  readings: SourceFile,
  shop: SourceFile | undefined,
): Promise<Result<Calibration>> {
  const date = today();
  const solve = (text: string) =>
    calibrate({
      kind,
      text,
      file: readings.file,
      date,
      ...(shop === undefined ? {} : { shop }),
    });
  const made = solve(readings.text);
  const unsaid = !made.ok && made.problems.every(({ code }) => code === 'calibrate-paper-unsaid');
  if (!unsaid || process.stdin.isTTY !== true || readings.text.trimStart().startsWith('{')) return made;
  if (/^(?:paper|madeFor):/mu.test(readings.text)) return made;
  warn(made.problems);
  const { TERMINAL } = await import('../prompts.ts');
  return solve(`${readings.text.trimEnd()}\n${await askPapers(TERMINAL)}`);
}
