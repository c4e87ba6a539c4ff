import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { BENCH_CASES } from './bench-cases.ts';
import type { Case } from './case.ts';
import { CUT_CASES } from './cut-cases.ts';
import { JIG_CASES } from './jig-cases.ts';
import { OPTION_CASES } from './option-cases.ts';
import { OWN_CASES } from './own-cases.ts';
import { STOCK_CASES } from './stock-cases.ts';

const TOP = join(import.meta.dirname, '../..');

/**
 * Pages that have a picture, for what text cannot tell: that fills lie over one another as they should, that pictures,
 * clips, dashes and outlines of letters look as they are meant to. Between them all kinds of item are seen.
 */
const PICTURES: Readonly<Record<string, NonNullable<Case['pictures']>>> = {
  'example-heron': { 'pattern-1': [1, 2], proof: [1] },
  'template-lettered': { 'pattern-1': [2], proof: [1] },
  'template-oval-portrait': { 'pattern-1': [2], proof: [1] },
  'template-roundels': { proof: [1] },
  'template-groove': { 'pattern-face': [2] },
};

/** Beside those of which every line is held, since they are small or have all kinds of furniture. */
const IN_FULL: readonly string[] = ['example-heron', 'template-hexagon'];

/** The job's text with the `shop.yaml` beside it. */
function fromFile(name: string, path: string): Case {
  const shop = join(dirname(path), 'shop.yaml');
  const job = readFileSync(path, 'utf8');
  return {
    name,
    job,
    file: basename(path),
    folder: dirname(path),
    inFull: IN_FULL.includes(name),
    pictures: PICTURES[name] ?? {},
    ...(existsSync(shop) && { shop: readFileSync(shop, 'utf8') }),
  };
}

const JOB = /^(?!shop\.).*\.(?:ya?ml|json)$/;

/** Days of several jobs, whose case is their stock plan. */
const DAYS = /^monday[/\\]/;

/** Every job file in a folder of the top level and in the folders in it. */
function jobsIn(folder: string): Case[] {
  if (!existsSync(join(TOP, folder))) return [];
  const kind = folder.replace(/s$/, '');
  return readdirSync(join(TOP, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => JOB.test(basename(path)) && !DAYS.test(path))
    .sort()
    .map((path) => {
      const steps = path.slice(0, -extname(path).length).split(/[/\\]/);
      const named = steps.length > 1 && steps.at(-1) === 'job' ? steps.slice(0, -1) : steps;
      return fromFile([kind, ...named].join('-'), join(TOP, folder, path));
    });
}

/** Every template, every example, and what neither of them has. */
export const CASES: readonly Case[] = [
  ...jobsIn('templates'),
  ...jobsIn('examples'),
  ...OWN_CASES,
  ...JIG_CASES,
  ...BENCH_CASES,
  ...OPTION_CASES,
  ...CUT_CASES,
  ...STOCK_CASES,
];
