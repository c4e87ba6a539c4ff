import { readFileSync } from 'node:fs';
import type { Drawing } from '../../src/drawing/model.ts';
import { type OutputFile, type OutputOptions, prepare, type Records, solveJob, write } from '../../src/index.ts';
import { type Result, succeed } from '../../src/problems/problem.ts';
import { showProblem } from '../../src/problems/show.ts';
import { sheetsIn } from '../outputs/sheets.ts';

/** Enough for small days, and soon done. */
export const LITTLE = 0.005;

export interface Day {
  readonly record: Records['stock'];
  readonly drawings: readonly Drawing[];
  readonly files: readonly OutputFile[];
}

export async function dayOf(
  jobs: Readonly<Record<string, string>>,
  shop: string | undefined,
  options: OutputOptions = {},
): Promise<Result<Day>> {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const solved = Object.entries(jobs).map(([file, text]) => {
    const one = solveJob(text, { file, ...source });
    if (!one.ok) throw new Error(one.problems.map(showProblem).join('\n'));
    return one.value;
  });
  const prepared = await prepare('stock', { jobs: solved, ...source }, { effort: LITTLE, ...options });
  if (!prepared.ok) return prepared;
  const files = await write(prepared.value);
  if (!files.ok) return files;
  const { record } = prepared.value.drawn;
  return succeed({ record, drawings: sheetsIn(prepared.value), files: files.value }, prepared.warnings);
}

export async function madeDay(...args: Parameters<typeof dayOf>): Promise<Day> {
  const made = await dayOf(...args);
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  return made.value;
}

const file = (name: string): string => readFileSync(new URL(`../../examples/monday/${name}`, import.meta.url), 'utf8');

export const MONDAY_SHOP = file('shop.yaml');
export const MONDAY = Object.fromEntries(
  ['curlew.yaml', 'samphire.yaml', 'sea-wall.yaml', 'tide-mill.yaml'].map((name) => [name, file(name)]),
);
