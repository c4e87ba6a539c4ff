import { dirname } from 'node:path';
import type { Command } from 'commander';
import { type Answers, givenNames } from '../../job/answers.ts';
import { fileStem } from '../../job/file-stem.ts';
import { isThere } from '../input.ts';
import { byQuestions, type Made } from '../new/by-questions.ts';
import { answerOptions, answersOf, type Options, optionOf } from '../new/options.ts';
import { refuseWrong, type Starter, start, starterIn, whereAsked, withShop } from '../new/starter.ts';
import { writeNew } from '../output/replace.ts';
import { rounded } from '../rounded.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { shellWord } from '../shell-word.ts';
import { sizesInWords } from '../sizes.ts';
import { chosen, shopTemplate, type Template, templates } from '../templates.ts';
import { UsageError } from '../usage.ts';

export function define(command: Command): void {
  answerOptions(
    command
      .argument('[template]', 'what to start from (--list shows them), or shop for a shop.yaml')
      .option('--list', 'list the templates, a line each')
      .option('--out <file>', 'the file to write (default: named after the title)'),
  )
    .option('--yes', 'ask nothing; what no option says stays as the template has it')
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
No size of the template changes that no answer speaks of, also where the unit becomes another. With a shop.yaml beside the
file or above it, its unit, its boards and its head are offered or taken.

Examples:
  matwright new double --title "Heron, linocut" --artwork "10 1/2 x 13 1/2" --outer "16 x 20"
  matwright new grid-four --artwork "5 x 7" --artwork "5 x 7" --artwork "5 x 7" --artwork "5 x 7" --yes
  matwright new shop
  matwright new
`,
    )
    .action(make);
}

async function make(name: string | undefined, options: Options): Promise<void> {
  const all = await templates();
  if (options.list === true) return list(all, options.json === true);
  const given = answersOf(options);
  if (name === 'shop') return makeShop(options, given);
  const asks = process.stdin.isTTY === true && options.yes !== true && options.json !== true;
  if (name === undefined && !asks) {
    throw new UsageError(`name a template: ${all.map((template) => template.name).join(', ')}, or shop`);
  }
  const terminal = asks ? await import('../asking/prompts.ts') : undefined;
  const template = chosen(name ?? (await terminal!.search('What is it to be?', all.map(asChoice))), all);
  if (options.out !== undefined) refuseThere(options.out);
  const starter = await starterIn(dirname(options.out ?? 'job.yaml'), template);
  if (!starter.ok) return fail(starter.problems, options.json === true);
  refuseWrong(given, starter.value);
  const made =
    terminal === undefined
      ? await byOptions(starter.value, given, options)
      : await byQuestions(starter.value, given, options, terminal.TERMINAL);
  if (made !== undefined) await write(made, template, options);
}

const asChoice = ({ name, summary }: Template) => ({ value: name, hint: summary });

function refuseThere(file: string): void {
  if (isThere(file))
    throw new UsageError(
      `${file} is there already; name another file with --out, or take that one away; nothing was written`,
    );
}

async function byOptions(starter: Starter, given: Answers, options: Options): Promise<Made | undefined> {
  const { name } = starter.template;
  const answers = withShop(given, starter);
  const file = options.out ?? `${fileStem(answers.title ?? name)}.yaml`;
  refuseThere(file);
  const started = await start(starter, answers, file);
  if (started.solved.ok) return { file, started };
  fail(whereAsked(started.solved.problems, answers, name, file, optionOf), options.json === true);
  return undefined;
}

async function write({ file, started: { text, solved } }: Made, template: Template, options: Options): Promise<void> {
  if (!solved.ok) return;
  await writeNew([[file, text]]);
  const next = `matwright pattern ${shellWord(file)}`;
  if (options.json === true) return printJson(rounded({ file, template: template.name, ...solved.value.report, next }));
  if (options.quiet === true) return;
  note(sizesInWords(solved.value.report).join('\n'));
  warn(solved.warnings);
  note(`\nwritten to ${file}; next: ${next}`);
}

async function makeShop(options: Options, given: Answers): Promise<void> {
  const names = givenNames(given).map(optionOf);
  if (names.length > 0)
    throw new UsageError(
      `${names.join(', ')} ${names.length === 1 ? 'belongs' : 'belong'} to a job, not to a shop; write it into the shop's file`,
    );
  const file = options.out ?? 'shop.yaml';
  refuseThere(file);
  await writeNew([[file, await shopTemplate()]]);
  if (options.json === true) return printJson({ file });
  if (options.quiet !== true) note(`written to ${file}; put in your own boards and heads, then: matwright new`);
}

function list(all: readonly Template[], json: boolean): void {
  if (json) {
    printJson(all.map(({ name, summary }) => ({ name, summary })));
    return;
  }
  const wide = Math.max(...all.map(({ name }) => name.length));
  note(all.map(({ name, summary }) => `${name.padEnd(wide)}  ${summary}`).join('\n'));
}
