import { dirname, join } from 'node:path';
import type { Command } from 'commander';
import { type Calibration, calibrate } from '../../calibrate/calibrate.ts';
import { defined } from '../../problems/defined.ts';
import { nearest } from '../../problems/nearest.ts';
import type { Result } from '../../problems/problem.ts';
import { readShop } from '../../shop/read-shop.ts';
import { CALIBRATED, type Calibrated } from '../../shop/readings/readings.ts';
import { askPapers, askReadings } from '../asking/readings.ts';
import { findShop, readSource, type SourceFile } from '../input.ts';
import { againIfChanged, replaceText } from '../output/replace.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { today } from '../today.ts';
import { UsageError } from '../usage.ts';

interface Options {
  readonly shop?: string;
  readonly dryRun?: boolean;
  readonly yes?: boolean;
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
    .option('--yes', 'write what is only offered: a correction that chance may have made, a printer at 94 or 97 %')
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
  const near = file ?? join('.', 'readings.yaml');
  const shop = await findShop(near, options.shop);
  const readings = file === undefined ? await answers(kind, shop) : await readSource(file, 'readings file');
  const date = today();
  const solve = (text: string, confirmed: boolean, known: SourceFile | undefined) =>
    calibrate({ kind, text, file: readings.file, date, confirmed, ...defined({ shop: known }) });
  const text = await withPapers(readings.text, (given) => solve(given, false, shop));
  const made = solve(text, options.yes === true, shop);
  if (!made.ok) return fail(made.problems, options.json === true);
  const { words, offer } = made.value;
  const told = options.quiet !== true && options.json !== true;
  if (told) {
    warn(made.warnings);
    for (const line of words) note(line);
  }
  const asks = told && options.dryRun !== true && options.yes !== true && offer !== undefined;
  const confirmed = options.yes === true || (asks && (await agreed(offer.question)));
  const left = offer !== undefined && !confirmed;
  // Several may be at it at once: each adds to what the one before has made of the shop's file.
  const { taken, written, writes, moved } = await againIfChanged(async () => {
    const now = await findShop(near, options.shop);
    const taken = solve(text, confirmed, now);
    const written = now?.file ?? join(dirname(readings.file), 'shop.yaml');
    const writes = options.dryRun !== true && taken.ok && taken.value.changed;
    if (writes) await replaceText(written, now?.text, taken.value.shopText);
    return { taken, written, writes, moved: now?.text !== shop?.text };
  });
  if (!taken.ok) return fail(taken.problems, options.json === true);
  if (options.json === true) {
    const offered = left ? { offered: offer.question } : {};
    return printJson({
      kind,
      ...taken.value.result,
      words: taken.value.words,
      warnings: taken.warnings,
      ...offered,
      ...defined({ shop: writes ? written : undefined }),
    });
  }
  if (!told) return;
  if (moved)
    for (const line of [`${written} had been changed meanwhile; by that it is:`, ...taken.value.words]) note(line);
  if (left) note('offered, not written: --yes takes it');
  note(writes ? `written to ${written}` : `not written to ${written}`);
}

/** Only a person can say so: where none can be asked, the answer is no. */
async function agreed(question: string): Promise<boolean> {
  if (process.stdin.isTTY !== true) return false;
  const { TERMINAL } = await import('../asking/prompts.ts');
  return TERMINAL.confirm(question, false);
}

function kindOf(word: string): Calibrated {
  const kind = CALIBRATED.find((each) => each === word);
  if (kind !== undefined) return kind;
  const near = nearest(word, CALIBRATED);
  throw new UsageError(
    `${JSON.stringify(word)} is nothing that is calibrated${near === undefined ? '' : `; did you mean ${near}?`} (${CALIBRATED.join(', ')})`,
  );
}

async function answers(kind: Calibrated, shop: SourceFile | undefined): Promise<SourceFile> {
  if (process.stdin.isTTY !== true) {
    throw new UsageError('name a file of readings; without one they are asked for, which takes a terminal');
  }
  const { TERMINAL } = await import('../asking/prompts.ts');
  const read = shop === undefined ? undefined : readShop(shop);
  const names = read?.ok === true ? read.value : undefined;
  const offered = {
    printers: [...(names?.printers.keys() ?? [])],
    heads: [...(names?.heads.keys() ?? [])],
    machines: [...(names?.machines.values() ?? [])],
  };
  return { file: 'answers', text: await askReadings(kind, TERMINAL, offered) };
}

/** The readings, and which paper is set where lengths look like a wrong one and nothing says so. */
async function withPapers(text: string, solve: (text: string) => Result<Calibration>): Promise<string> {
  if (process.stdin.isTTY !== true || text.trimStart().startsWith('{')) return text;
  if (/^(?:paper|madeFor):/mu.test(text)) return text;
  const made = solve(text);
  if (made.ok || !made.problems.every(({ code }) => code === 'calibrate-paper-unsaid')) return text;
  warn(made.problems);
  const { TERMINAL } = await import('../asking/prompts.ts');
  return `${text.trimEnd()}\n${await askPapers(TERMINAL)}`;
}
