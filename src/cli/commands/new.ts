import { dirname, join } from 'node:path';
import type { Command } from 'commander';
import { type Answers, fillTemplate } from '../../job/from-template.ts';
import { jsonSchema, type SchemaKind } from '../../job/json-schema.ts';
import { solveLoading } from '../../outputs/solve-job.ts';
import { parseLength, parseSize } from '../../units/parse.ts';
import type { Asker } from '../ask-readings.ts';
import { findShop, isThere } from '../input.ts';
import { writeNew } from '../replace.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { sizesInWords } from '../sizes.ts';
import { chosen, shopTemplate, type Template, templates } from '../templates.ts';
import { UsageError } from '../usage.ts';

interface Options extends Answers {
  readonly out?: string;
  readonly list?: boolean;
  readonly yes?: boolean;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

export function define(command: Command): void {
  command
    .argument('[template]', 'what to start from (--list shows them), or shop for a shop.yaml')
    .option('--list', 'list the templates, a line each')
    .option('--out <file>', 'the file to write (default: named after the title)')
    .option('--title <text>', 'what the piece is called')
    .option('--customer <text>', 'whom it is for')
    .option('--units <unit>', 'the unit of bare numbers: in, mm or cm')
    .option('--artwork <size>', 'width x height of the artwork')
    .option('--outer <size>', 'width x height of the whole mat')
    .option('--frame <size>', "width x height inside the frame's rebate, instead of the outer size")
    .option('--border <length>', 'border of the mat; without an outer size that one follows from it')
    .option('--reveal <length>', 'reveal of every under mat')
    .option('--overlap <length>', 'mat over the artwork on each side')
    .option('--float <length>', 'paper shown around the artwork on each side, instead of an overlap')
    .option('--yes', 'ask nothing; what no option says stays as the template has it')
    .option('--json', 'one JSON document on standard output, every length in mm')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
Examples:
  matwright new double --title "Heron, linocut" --artwork "10 1/2 x 13 1/2" --outer "16 x 20"
  matwright new shop
  matwright new
`,
    )
    .action(make);
}

async function make(name: string | undefined, options: Options): Promise<void> {
  const all = await templates();
  if (options.list === true) return list(all, options.json === true);
  if (name === 'shop') return makeShop(options);
  const asks = process.stdin.isTTY === true && options.yes !== true && options.json !== true;
  if (name === undefined && !asks) {
    throw new UsageError(`name a template: ${all.map((template) => template.name).join(', ')}, or shop`);
  }
  const template = name === undefined ? await choose(all) : chosen(name, all);
  const answers = asks ? await ask(options, template, (await import('../prompts.ts')).TERMINAL) : options;
  const title = answers.title;
  const file = options.out ?? `${fileStem(title ?? template.name)}.yaml`;
  const text = fillTemplate(template.text, answers);

  const shop = await findShop(file, undefined);
  const solved = await solveLoading(text, { file, ...(shop === undefined ? {} : { shop }) });
  if (!solved.ok) return fail(solved.problems, options.json === true);
  await writeNew([[file, text], ...schemaBeside(file, 'job')]);
  const next = `matwright pattern ${quoted(file)}`;
  if (options.json === true) return printJson({ file, template: template.name, ...solved.value.report, next });
  if (options.quiet === true) return;
  note(sizesInWords(solved.value.report).join('\n'));
  warn(solved.warnings);
  note(`\nwritten to ${file}; next: ${next}`);
}

async function makeShop(options: Options): Promise<void> {
  const file = options.out ?? 'shop.yaml';
  await writeNew([[file, await shopTemplate()], ...schemaBeside(file, 'shop')]);
  if (options.json === true) return printJson({ file });
  if (options.quiet !== true) note(`written to ${file}; put in your own boards and heads, then: matwright new`);
}

/** The schema that the first line names, where there is none yet. */
function schemaBeside(file: string, kind: SchemaKind): readonly (readonly [file: string, text: string])[] {
  const schema = join(dirname(file), `${kind}.schema.json`);
  return isThere(schema) ? [] : [[schema, `${JSON.stringify(jsonSchema(kind), null, 2)}\n`]];
}

function list(all: readonly Template[], json: boolean): void {
  if (json) {
    printJson(all.map(({ name, summary }) => ({ name, summary })));
    return;
  }
  const wide = Math.max(...all.map(({ name }) => name.length));
  note(all.map(({ name, summary }) => `${name.padEnd(wide)}  ${summary}`).join('\n'));
}

async function choose(all: readonly Template[]): Promise<Template> {
  const { pick } = await import('../prompts.ts');
  return chosen(
    await pick(
      'What is it to be?',
      all.map(({ name, summary }) => ({ value: name, hint: summary })),
    ),
    all,
  );
}

/** A few questions; what an option has said is not asked. */
async function ask(given: Answers, template: Template, asker: Asker): Promise<Answers> {
  const units = (given.units ?? 'in') as 'in' | 'mm' | 'cm';
  const size = (answer: string): string | undefined => wrong(parseSize(answer, units));
  const length = (answer: string): string | undefined => wrong(parseLength(answer, units));
  const floats = /^ +float:/mu.test(template.text);
  const answers: { -readonly [K in keyof Answers]: Answers[K] | undefined } = { ...given };
  answers.title ??= await asker.text('What is the piece called?', { example: 'Heron, linocut' });
  answers.artwork ??= await asker.text(`Artwork, width x height (${units})?`, {
    example: '10 1/2 x 13 1/2',
    wrong: size,
  });
  if (answers.outer === undefined && answers.frame === undefined && answers.border === undefined) {
    answers.outer = await asker.text(
      `Outer size of the mat, width x height (${units})? Leave it empty to give the border`,
      {
        example: '16 x 20',
        optional: true,
        wrong: size,
      },
    );
    if (answers.outer === undefined)
      answers.border = await asker.text(`Border (${units})?`, { example: '3', wrong: length });
  }
  if (floats)
    answers.float ??= await asker.text(`Paper shown around it (${units})? Empty keeps the template's`, {
      optional: true,
      wrong: length,
    });
  else
    answers.overlap ??= await asker.text(`Overlap of the mat on each side (${units})? Empty keeps the template's`, {
      optional: true,
      wrong: length,
    });
  return answers;
}

const wrong = (parsed: { ok: true } | { ok: false; message: string; hint: string }): string | undefined =>
  parsed.ok ? undefined : `${parsed.message}; ${parsed.hint}`;

/** A file's name from a title: letters, digits and hyphens. */
function fileStem(title: string): string {
  const stem = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .slice(0, 60);
  return stem === '' || stem === 'shop' ? 'job' : stem;
}

const quoted = (file: string): string => (/^[\w./-]+$/u.test(file) ? file : JSON.stringify(file));
