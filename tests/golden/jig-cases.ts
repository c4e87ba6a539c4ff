import { JIGS } from '../../src/documents/jigs/jigs.ts';
import { JOB, SHOP } from '../documents/jig-samples.ts';

/** One for each jig, all made for the same job and shop. */
export const JIG_CASES = JIGS.map(({ kind }) => ({
  name: `jig-${kind}`,
  job: JOB,
  file: 'heron.yaml',
  shop: SHOP,
  jig: kind,
}));
