import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { MACHINE_KINDS } from '../../src/shop/machine.ts';
import type { Case } from './case.ts';

const FOLDER = join(import.meta.dirname, '../../examples/terns');

/** The example that is cut by machines, once for each of them. */
export const CUT_CASES: readonly Case[] = MACHINE_KINDS.map((machine) => ({
  name: `cut-${machine}`,
  machine,
  job: readFileSync(join(FOLDER, 'job.yaml'), 'utf8'),
  file: 'job.yaml',
  shop: readFileSync(join(FOLDER, 'shop.yaml'), 'utf8'),
}));
