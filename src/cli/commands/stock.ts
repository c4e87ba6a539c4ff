import { access, constants } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';
import type { Command } from 'commander';
import type { Prepared } from '../../outputs/prepare.ts';
import { findOutput } from '../../outputs/table.ts';
import type { Result } from '../../problems/problem.ts';
import { showProblem } from '../../problems/show.ts';
import { readShop } from '../../shop/read-shop.ts';
import type { NewPlan } from '../../stock/booking/plan-note.ts';
import { type BookedPlan, cutPlan, notePlan, plansFile, readPlans, undoPlan } from '../../stock/booking/plans-file.ts';
import { changeWords } from '../../stock/booking/words.ts';
import { findShop, isThere, nearestShop, readSource, type SourceFile, STANDARD_INPUT } from '../input.ts';
import { type Beside, described, runOutput } from '../output/command.ts';
import type { Given, Shared } from '../output/options.ts';
import { againIfChanged, replaceTexts } from '../output/replace.ts';
import { rounded } from '../rounded.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { shellWord } from '../shell-word.ts';
import { today } from '../today.ts';
import { UsageError } from '../usage.ts';

interface Booking {
  readonly cut?: string;
  readonly undo?: string | true;
}

/** A plan is made of jobs; or one that was made is booked by its number, or taken back. */
export function define(command: Command): void {
  const output = findOutput('stock');
  if (!output.ok) throw new UsageError('there are no stock plans');
  described(
    command
      .argument('[job...]', 'job files, YAML or JSON; none with --cut and --undo')
      .option(
        '--cut <number>',
        'all of that plan is cut: offcuts onto the shelf in shop.yaml, off it what was used, fewer sheets',
      )
      .option('--undo [number]', 'take back what --cut wrote: of that plan, else of the last one'),
    output.value,
  ).action(async (files: readonly string[], flags: Given & Shared & Booking): Promise<void> => {
    const { cut, undo } = flags;
    if (cut === undefined && undo === undefined) {
      if (files.length === 0) throw new UsageError('which jobs? name their files, or a plan with --cut NUMBER');
      return runOutput(output.value, files, flags, { beside: beside(flags) });
    }
    if (cut !== undefined && undo !== undefined) throw new UsageError('--cut and --undo exclude each other');
    if (files.length > 0)
      throw new UsageError(`${cut === undefined ? '--undo' : '--cut'} takes a plan by its number, no jobs`);
    return book(flags, (shop, plans) =>
      cut === undefined ? undoPlan(shop, plans, undo === true ? undefined : undo) : cutPlan(shop, plans, cut, today()),
    );
  });
}

async function book(
  flags: Shared & Booking,
  work: (shop: SourceFile, plans: SourceFile | undefined) => Result<BookedPlan>,
): Promise<void> {
  const json = flags.json === true;
  // Another may book at the same time: what it wrote counts.
  const done = await againIfChanged(async () => {
    const shop = await findShop(join('.', 'job.yaml'), flags.shop);
    if (shop === undefined) throw new UsageError('there is no shop.yaml here or above; name the shop with --shop');
    const plans = await plansOf(shop);
    const made = work(shop, plans);
    if (made.ok) {
      const { shopText, plansText } = made.value;
      await replaceTexts([
        { file: plansFile(shop.file), before: plans?.text, after: plansText },
        { file: shop.file, before: shop.text, after: shopText },
      ]);
    }
    return { shop, made };
  });
  if (!done.made.ok) return fail(done.made.problems, json);
  const { number, change, shopText } = done.made.value;
  const back = flags.undo !== undefined;
  const { file } = done.shop;
  if (json)
    return printJson(
      rounded({ plan: number, [back ? 'undone' : 'booked']: change, shop: file, warnings: done.made.warnings }),
    );
  if (flags.quiet === true) return;
  warn(done.made.warnings);
  note(`plan ${number} ${back ? 'taken back from' : 'booked in'} ${file}`);
  const shop = readShop({ text: shopText, file });
  for (const line of shop.ok ? changeWords(change, shop.value, back) : []) note(`  ${line}`);
}

async function plansOf(shop: SourceFile): Promise<SourceFile | undefined> {
  const file = plansFile(shop.file);
  return isThere(file) ? readSource(file, 'journal of plans') : undefined;
}

/** The plan goes into the journal beside the shop's file, so that exactly it can be booked. */
const beside =
  ({ shop: named }: Shared) =>
  async ({ drawn }: Prepared<'stock'>, shop: SourceFile | undefined): Promise<Beside> => {
    const { plan } = drawn.record;
    if (plan === undefined || shop === undefined) return { words: [] };
    if (plan.idle)
      return { words: [`plan ${plan.number}: nothing to book, no sheet of it is counted and no offcut kept`] };
    const unnoted = (why: string): Beside => ({ words: [`plan ${plan.number} cannot be booked: ${why}`] });
    if (named === STANDARD_INPUT) return unnoted('the shop was read from standard input');
    if (!(await isWritable(dirname(shop.file)))) return unnoted(`nothing can be written beside ${shop.file}`);
    const plans = await plansOf(shop);
    const noted = notePlan(plans, plan, today());
    if (!noted.ok) return unnoted(noted.problems.map(showProblem).join('; '));
    const change = { file: plansFile(shop.file), before: plans?.text, after: noted.value };
    const words = [
      bookedBefore(plans, plan) ?? `plan ${plan.number}; when all of it is cut: ${callFor(plan, shop, named)}`,
    ];
    return plans?.text === noted.value ? { words } : { change, words };
  };

const isWritable = (folder: string): Promise<boolean> =>
  access(folder, constants.W_OK).then(
    () => true,
    () => false,
  );

function bookedBefore(plans: SourceFile | undefined, { number }: NewPlan): string | undefined {
  const known = readPlans(plans);
  const booked = known.ok ? known.value.find((plan) => plan.number === number)?.booked : undefined;
  return booked === undefined ? undefined : `plan ${number} was booked on ${booked.date}`;
}

function callFor({ number }: NewPlan, { file }: SourceFile, named: string | undefined): string {
  const near = named === undefined && nearestShop('job.yaml') === file;
  return `matwright stock --cut ${number}${near ? '' : ` --shop ${shellWord(relative('.', file))}`}`;
}
