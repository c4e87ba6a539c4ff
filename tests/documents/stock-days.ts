import { readFileSync } from 'node:fs';
import { type MadeStock, makeStock, type StockDayWishes, solveJob } from '../../src/index.ts';
import type { Result } from '../../src/problems/problem.ts';
import { showProblem } from '../../src/problems/show.ts';
import { FONTS } from '../fonts/loaded.ts';

/** Enough for small days, and soon done. */
export const LITTLE = 0.005;

export async function dayOf(
  jobs: Readonly<Record<string, string>>,
  shop: string | undefined,
  wishes: StockDayWishes = {},
): Promise<Result<MadeStock>> {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const solved = Object.entries(jobs).map(([file, text]) => {
    const one = solveJob(text, { fonts: FONTS, file, ...source });
    if (!one.ok) throw new Error(one.problems.map(showProblem).join('\n'));
    return one.value;
  });
  return makeStock(solved, { effort: LITTLE, ...source, ...wishes });
}

export async function madeDay(...args: Parameters<typeof dayOf>): Promise<MadeStock> {
  const made = await dayOf(...args);
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  return made.value;
}

const file = (name: string): string => readFileSync(new URL(`../../examples/monday/${name}`, import.meta.url), 'utf8');

export const MONDAY_SHOP = file('shop.yaml');
export const MONDAY = Object.fromEntries(
  ['curlew.yaml', 'samphire.yaml', 'sea-wall.yaml', 'tide-mill.yaml'].map((name) => [name, file(name)]),
);
