import { JIGS } from '../../src/documents/jigs/jigs.ts';
import { JOB, SHOP } from '../documents/jig-samples.ts';
import type { Case } from './case.ts';

/** Jigs of which a page has a picture: a sheet to measure, and a gauge with curves. */
const SEEN: readonly string[] = ['guide', 'protractor'];

/** One for each jig, all made for the same job and shop. */
export const JIG_CASES: readonly Case[] = JIGS.map(({ kind }) => ({
  name: `jig-${kind}`,
  job: JOB,
  file: 'heron.yaml',
  shop: SHOP,
  output: 'jig',
  options: { kind, cut: ['svg'] },
  inFull: true,
  pictures: SEEN.includes(kind) ? { [`jig-${kind}`]: [1] } : {},
}));
