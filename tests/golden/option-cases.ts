import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { OutputId, OutputOptions } from '../../src/index.ts';
import type { Case } from './case.ts';
import { MONDAY } from './stock-cases.ts';

const FOLDER = join(import.meta.dirname, '../../examples/heron');
const HERON = {
  job: readFileSync(join(FOLDER, 'job.yaml'), 'utf8'),
  file: 'job.yaml',
  shop: readFileSync(join(FOLDER, 'shop.yaml'), 'utf8'),
  folder: FOLDER,
};

const [[firstFile, firstJob], ...others] = Object.entries(MONDAY.jobs) as [[string, string], ...[string, string][]];

/** The day's tickets, sorted, with the run list in front. */
const RUN_LIST: Case = {
  name: 'run-list',
  job: firstJob,
  file: firstFile,
  more: Object.fromEntries(others),
  shop: MONDAY.shop,
  output: 'ticket',
  options: { number: 'A-07' },
  pictures: { ticket: [1] },
};

/** What the same example looks like where something else is asked for: name, output, options, pages with a picture. */
const ASKED: readonly (readonly [string, OutputId, OutputOptions, Case['pictures']?])[] = [
  ['corners', 'pattern', { extent: 'corners' }, { 'pattern-1': [2] }],
  ['roll', 'pattern', { paper: 'roll:36in' }],
  ['fit', 'pattern', { paper: 'fit' }],
  ['show', 'pattern', { show: ['board', 'cut'] }, { 'pattern-2': [2] }],
  ['vary', 'proof', { vary: 'mat.layers[1].board=slate-4,bone-4' }, { proof: [1] }],
  ['labels', 'labels', { rows: 2, columns: 1, skip: 1 }],
];

export const OPTION_CASES: readonly Case[] = [
  ...ASKED.map(([name, output, options, pictures]) => ({
    name: `heron-${name}`,
    ...HERON,
    output,
    options,
    inFull: true,
    ...(pictures === undefined ? {} : { pictures }),
  })),
  RUN_LIST,
];
