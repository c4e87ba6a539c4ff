import type { Command } from 'commander';
import { type MadeStock, makeStock, type StockDayWishes } from '../../index.ts';
import { folderFor, type SheetOptions, type SolvedFile, sheetOptions, solveFiles } from '../bench-sheet.ts';
import type { SourceFile } from '../input.ts';
import { writeAll } from '../output.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { today } from '../today.ts';
import { UsageError } from '../usage.ts';

interface Options extends SheetOptions {
  readonly number?: string;
  readonly svg?: boolean;
  readonly fallouts?: boolean;
  readonly backing?: string;
  readonly cost?: boolean;
  readonly effort?: string;
  readonly seed?: string;
  readonly shelve?: boolean;
}

export function define(command: Command): void {
  sheetOptions(
    command
      .argument('<job...>', 'job files, YAML or JSON, all of one shop')
      .option('--fallouts', 'what drops out of openings is stock too, once the last mat over it is cut')
      .option('--backing <board>', 'another blank of this board for each piece, behind the artwork')
      .option('--cost', 'refuse boards without a price')
      .option('--effort <number>', 'how long to search for a better plan: 1 is about a second a board', '1')
      .option('--seed <number>', 'another search', '1')
      .option('--shelve', 'all is cut: write offcuts onto the shelf in shop.yaml, take off what was used')
      .option('--svg', 'each page as stock-1.svg, stock-2.svg … too')
      .option('--number <number>', 'of the first job, as the shop counts: 41, A-07; the others count on'),
  )
    .addHelpText(
      'after',
      `
The same jobs, shop and seed give the same plan on every machine. Offcuts on the shelf are used before a sheet is opened.
Give --shelve once, with the options of the plan that was cut.

Examples:
  matwright stock monday/*.yaml
  matwright stock monday/*.yaml --fallouts --effort 10
  matwright stock monday/*.yaml --shelve
`,
    )
    .action(run);
}

async function run(files: readonly string[], options: Options): Promise<void> {
  const json = options.json === true;
  const { jobs, problems, warnings } = await solveFiles(files, options.shop);
  if (problems.length > 0) return fail(problems, json);
  const shop = oneShop(jobs);
  if (options.shelve === true && shop === undefined) {
    throw new UsageError(
      'there is no shop.yaml to shelve offcuts in; make one with matwright new shop, or name it with --shop',
    );
  }
  const wishes = wishesOf(options, shop);
  const made = await makeStock(
    jobs.map(({ solved }) => solved),
    wishes,
  );
  if (!made.ok) return fail(made.problems, json);
  const folder = options.out ?? folderFor(files);
  const { shopText, record } = made.value;
  const shelve =
    shop === undefined || shopText === undefined ? undefined : { file: shop.file, before: shop.text, after: shopText };
  await writeAll(folder, made.value.files, shelve);
  const all = [...warnings, ...made.warnings];
  const names = made.value.files.map(({ name }) => name);
  const shelved = shelve === undefined ? {} : { shop: shop?.file };
  if (json) return printJson({ folder, files: names, stock: record, ...shelved, warnings: all });
  if (options.quiet === true) return;
  warn(all);
  say(made.value);
  note(`written to ${folder}`);
  if (shelve !== undefined) note(`${shop?.file}: shelf and counts brought up to date`);
}

/** Counts and shelf are those of one shop. */
function oneShop(jobs: readonly SolvedFile[]): SourceFile | undefined {
  const shops = [...new Map(jobs.map(({ shop }) => [shop?.file, shop])).values()];
  if (shops.length === 1) return shops[0];
  const said = jobs.map(({ file, shop }) => `${file}: ${shop?.file ?? 'none'}`).join('; ');
  throw new UsageError(`the jobs lie beside different shop files (${said}); name one with --shop`);
}

function wishesOf(options: Options, shop: SourceFile | undefined): StockDayWishes {
  const { paper, number, backing } = options;
  return {
    effort: numberIn(options.effort ?? '1', '--effort', 0, 1000),
    seed: numberIn(options.seed ?? '1', '--seed', 0, 2_147_483_647, true),
    fallouts: options.fallouts === true,
    cost: options.cost === true,
    svg: options.svg === true,
    ...(paper === undefined ? {} : { paper }),
    ...(number === undefined ? {} : { number }),
    ...(backing === undefined ? {} : { backing }),
    ...(shop === undefined ? {} : { shop }),
    ...(options.shelve === true ? { shelve: { date: today() } } : {}),
  };
}

function numberIn(text: string, option: string, least: number, most: number, whole = false): number {
  const value = /^\d{1,10}(?:\.\d{1,6})?$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= most && (!whole || Number.isInteger(value))) return value;
  throw new UsageError(`${option} ${text}: give a ${whole ? 'whole ' : ''}number from ${least} to ${most}`);
}

function say({ record, drawings }: MadeStock): void {
  for (const { name, sheets, shelf, fallouts, verdict, yield: share } of record.boards) {
    const parts = [
      sheets === 1 ? 'one sheet' : `${sheets} sheets`,
      ...(shelf.length === 0 ? [] : [`${shelf.join(', ')} from the shelf`]),
      ...(fallouts === 0 ? [] : [fallouts === 1 ? 'one fallout' : `${fallouts} fallouts`]),
    ];
    note(`${name}: ${parts.join(', ')}; ${verdict}; yield ${(100 * share).toFixed(1)} %`);
  }
  note(`stock.pdf  Stock plan, ${drawings.length === 1 ? 'one page' : `${drawings.length} pages`}`);
}
