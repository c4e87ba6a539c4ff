import { join } from 'node:path';
import { type AnswerName, type Answers, answerAt, givenNames } from '../../job/answers.ts';
import { fillTemplate } from '../../job/from-template.ts';
import { type Places, placesOf } from '../../job/template-places.ts';
import { type Solved, solveLoading } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import type { Problem, Result } from '../../problems/problem.ts';
import { find, plain } from '../../read/text/node.ts';
import { readText } from '../../read/text/text.ts';
import { readShop } from '../../shop/read-shop.ts';
import type { Shop } from '../../shop/shop.ts';
import { unitsOf } from '../../shop/units.ts';
import { LENGTH_UNITS, type LengthUnit } from '../../units/units.ts';
import { findShop, type SourceFile } from '../input.ts';
import type { Template } from '../templates.ts';
import { UsageError } from '../usage.ts';
import { misfitWords, optionOf } from './options.ts';
import { wrongAnswers } from './wrong-answer.ts';

/** A template, and the shop in whose folder a job is to be made of it. */
export interface Starter {
  readonly template: Template;
  readonly places: Places;
  /** The template's own. */
  readonly units: LengthUnit;
  readonly source?: SourceFile;
  readonly shop?: Shop;
  /** The shop's, where its file says so. */
  readonly shopUnits?: LengthUnit;
}

export async function starterIn(folder: string, template: Template): Promise<Result<Starter>> {
  const read = readText(template.text, `${template.name}.yaml`);
  if (!read.ok) return read;
  const { root } = read.value.source;
  const starter = { template, places: placesOf(plain(root)), units: unitsOf(root) };
  const source = await findShop(join(folder, 'job.yaml'), undefined);
  if (source === undefined) return { ok: true, value: starter, warnings: [] };
  const shop = readShop(source);
  if (!shop.ok) return shop;
  const shopUnits = unitsIn(source);
  const known = { ...starter, source, shop: shop.value };
  return { ok: true, value: shopUnits === undefined ? known : { ...known, shopUnits }, warnings: shop.warnings };
}

function unitsIn({ text, file }: SourceFile): LengthUnit | undefined {
  const read = readText(text, file);
  const found = read.ok ? find(read.value.source.root, ['units']) : undefined;
  if (found?.whole !== true || found.node.kind !== 'scalar') return undefined;
  const { value } = found.node;
  return LENGTH_UNITS.find((unit) => unit === value);
}

/** What nobody is asked, the shop says: its unit, and its head where it has one. */
export function withShop(given: Answers, { shop, shopUnits }: Starter): Answers {
  const heads = [...(shop?.heads.keys() ?? [])];
  return {
    ...given,
    units: given.units ?? shopUnits,
    head: given.head ?? (heads.length === 1 ? heads[0] : undefined),
  };
}

/** Refuses options that are wrong by themselves, each by its name. */
export function refuseWrong(given: Answers, { shop, shopUnits, units }: Starter): void {
  const wrong = wrongAnswers(LENGTH_UNITS.find((unit) => unit === given.units) ?? shopUnits ?? units, shop);
  for (const name of givenNames(given)) {
    for (const answer of [given[name]].flat()) {
      const why = typeof answer === 'string' ? wrong[name]?.(answer) : undefined;
      if (why !== undefined) throw new UsageError(`${optionOf(name)} ${JSON.stringify(answer)}: ${why}`);
    }
  }
}

/** A job of its template and some answers, solved. Problems point to the answers that they come from. */
export interface Started {
  readonly text: string;
  readonly solved: Result<Solved>;
}

export async function start(starter: Starter, answers: Answers, file: string): Promise<Started> {
  const { template, source } = starter;
  const filled = fillTemplate(template.text, answers);
  if ('misfits' in filled) throw new UsageError(misfitWords(template.name, filled.misfits));
  const solved = await solveLoading(filled.text, { file, ...defined({ shop: source }) });
  return { text: filled.text, solved };
}

/** The answers that problems come from. */
export function answersIn(problems: readonly Problem[], answers: Answers): ReadonlySet<AnswerName> {
  const paths = problems.flatMap(({ path, clash = [] }) => [path, ...clash.map((each) => each.path)]);
  return new Set(paths.flatMap((path) => answerAt(path, answers) ?? []));
}

/** Nobody has the file that was never written: a problem stands at the answer, or in the template. */
export function whereAsked(
  problems: readonly Problem[],
  answers: Answers,
  template: string,
  file: string,
  said: (name: AnswerName) => string,
): readonly Problem[] {
  return problems.map((problem) => {
    if (problem.file !== file) return problem;
    const { line: _, column: __, ...rest } = problem;
    const name = answerAt(problem.path, answers);
    return { ...rest, file: name === undefined ? `template ${template}` : said(name) };
  });
}
