import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Case } from './case.ts';

const FOLDER = join(import.meta.dirname, '../../examples/monday');
const read = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');

/** A day's jobs by their files, and the shop. */
export const MONDAY = {
  shop: read('shop.yaml'),
  jobs: Object.fromEntries(
    readdirSync(FOLDER)
      .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
      .sort()
      .map((name) => [name, read(name)]),
  ),
};

/** Found soon and the same on every machine; the best plan is for the planner's own tests. */
const EFFORT = 0.005;

const [[file, job], ...others] = Object.entries(MONDAY.jobs) as [[string, string], ...[string, string][]];

/** The day's jobs of the example, all on the shop's sheets. */
export const STOCK_CASES: readonly Case[] = [
  {
    name: 'stock-monday',
    file,
    job,
    more: Object.fromEntries(others),
    shop: MONDAY.shop,
    output: 'stock',
    options: { effort: EFFORT, fallouts: true },
    inFull: true,
    pictures: { stock: [1, 2] },
  },
];
