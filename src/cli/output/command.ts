import type { Command } from 'commander';
import type { OutputOptions, Step, Surroundings } from '../../outputs/options.ts';
import type { Output, Work } from '../../outputs/output.ts';
import { type Prepared, prepare } from '../../outputs/prepare.ts';
import type { OutputId } from '../../outputs/records.ts';
import { write } from '../../outputs/write.ts';
import { defined } from '../../problems/defined.ts';
import type { TextChange } from '../files/text-change.ts';
import type { SourceFile } from '../input.ts';
import { folderFor, shopOf, solveFiles } from '../jobs.ts';
import { progress } from '../progress.ts';
import { rounded } from '../rounded.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { unstopped } from '../unstopped.ts';
import { leftJson, tellLeft, writeOutputs } from './earlier.ts';
import type { Finished } from './finished.ts';
import { type Given, optionsFrom, outputOptions, type Shared } from './options.ts';
import { picturesBeside } from './picture.ts';
import { rendererBytes } from './renderer.ts';
import { againIfChanged } from './replace.ts';
import { jsonOf, wordsOf } from './words.ts';

const ARGUMENTS = {
  'a job': ['<job>', 'the job file, YAML or JSON'],
  jobs: ['<job...>', 'job files, YAML or JSON'],
  'a job or none': ['[job]', 'a job file, YAML or JSON'],
} as const;

/** A command that makes one output: all that it knows stands in the output's row. */
export function defineOutput(output: Output): (command: Command) => void {
  return (command) => {
    const [argument, help] = ARGUMENTS[output.needs];
    described(command.argument(argument, help), output).action((files: string | string[] | undefined, given: Given) =>
      runOutput(output, [files ?? []].flat(), given),
    );
  };
}

/** Options, notes and examples of an output. */
export function described(command: Command, output: Output): Command {
  const { options, formats, notes, examples, use } = output;
  const usual = use === undefined ? "the machine's own" : formats[0];
  const calls = examples.map((example) => `  matwright ${example}\n`).join('');
  const head = examples.length === 1 ? 'Example' : 'Examples';
  return outputOptions(command, options, formats, usual).addHelpText(
    'after',
    `\n${notes === undefined ? '' : `${notes}\n\n`}${head}:\n${calls}`,
  );
}

/** What one command adds to what all do. */
export interface More<Id extends OutputId> {
  readonly options?: OutputOptions;
  readonly folder?: (shop: SourceFile | undefined) => string;
  /** A text that is written with the files, and what is said of it. It is asked again where the text was changed meanwhile. */
  readonly beside?: (prepared: Prepared<Id>, shop: SourceFile | undefined) => Promise<Beside>;
}

export interface Beside {
  readonly change?: TextChange;
  readonly words: readonly string[];
}

/** Solves the jobs, all of their problems at once, makes the output, writes its files and says so. */
export async function runOutput<Id extends OutputId>(
  output: Output<Id>,
  given: readonly string[],
  flags: Given & Shared,
  more: More<Id> = {},
): Promise<void> {
  const json = flags.json === true;
  const options = { ...optionsFrom(output.options, flags), ...more.options };
  const { jobs, problems, warnings } = await solveFiles(given, flags.shop);
  if (problems.length > 0) return fail(problems, json);
  const shop = await shopOf(jobs, flags.shop, output.oneShop === true);
  const work: Work = { jobs: jobs.map(({ solved }) => solved), ...defined({ shop }) };
  const shown = progress(json || flags.quiet === true);
  const around = { ...surroundings(given, shop), progress: ({ done, of, file }: Step) => shown.step(done, of, file) };
  const prepared = await prepare(output.id, work, options, around);
  shown.end();
  if (!prepared.ok) return fail(prepared.problems, json);
  const made = await write(prepared.value, around);
  shown.end();
  if (!made.ok) return fail(made.problems, json);
  const folder = flags.out ?? more.folder?.(shop) ?? folderFor(given);
  const finished: Finished<Id> = {
    prepared: prepared.value,
    files: made.value,
    folder,
    jobs,
    ...defined({ shop }),
  };
  const outputs = { folder, files: made.value, families: familiesOf(prepared.value) };
  const { beside, left } = await againIfChanged(async () => {
    const beside = await more.beside?.(prepared.value, shop);
    const all = () => writeOutputs(output.id, [outputs], flags.prune === true, beside?.change);
    return { beside, left: await unstopped(all) };
  });
  const all = [...warnings, ...prepared.warnings];
  if (json) return printJson(rounded({ ...jsonOf(finished, all), ...leftJson(left) }));
  if (flags.quiet === true) return;
  warn(all);
  for (const line of wordsOf(finished)) note(line);
  tellLeft(left);
  note(`written to ${folder}`);
  for (const line of beside?.words ?? []) note(line);
}

/** What files of this output may be called, in this state of the job or another. */
function familiesOf({ drawn: { family, documents } }: Prepared): readonly string[] {
  if (family !== undefined) return [family];
  return documents.map(({ name }) => `^${name.replaceAll('.', '\\.')}(?:-\\d+)?\\.(?:pdf|svg|png)$`);
}

/** Pictures lie beside the one job that names them, the shop's own beside its file. */
function surroundings([file, ...others]: readonly string[], shop: SourceFile | undefined): Surroundings {
  const alone = file !== undefined && others.length === 0;
  return {
    renderer: rendererBytes,
    ...defined({
      pictures: alone ? picturesBeside(file) : undefined,
      shopPictures: shop && picturesBeside(shop.file, "shop's file"),
    }),
  };
}
