import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type OutputFile } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import type { Case } from './cases.ts';

/** The customer's proof of a case, measured and dated; pictures come from the folder that the case lies in. */
export async function proofFiles({ job, file, shop, folder }: Case): Promise<readonly OutputFile[]> {
  const built = await build(job, {
    file,
    documents: ['proof'],
    dimensions: true,
    date: '12 March 2031',
    pictures: async (name) => {
      const path = join(folder ?? '', name);
      if (folder === undefined || !existsSync(path)) return { why: `there is no ${name}`, hint: '' };
      return { bytes: new Uint8Array(readFileSync(path)) };
    },
    ...(shop !== undefined && { shop: { text: shop, file: 'shop.yaml' } }),
  });
  if (!built.ok) throw new Error(`a golden case must have a proof:\n${built.problems.map(showProblem).join('\n')}`);
  return built.value.files;
}
