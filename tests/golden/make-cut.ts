import { type BuildOptions, build } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import { canonicalJson } from './canonical.ts';
import type { Case } from './case.ts';
import type { Outputs } from './compare.ts';

/** What is asked for, by the beginning of the names of its references. */
const ASKED: readonly (readonly [string, BuildOptions])[] = [
  ['', {}],
  ['coupon-', { coupon: true }],
  ['r12-', { format: ['dxf'], dialect: 'r12' }],
];

/** The files of a machine byte for byte, and what is said of them. */
export async function makeCutCase({ machine, job, file, shop }: Case): Promise<Outputs> {
  const outputs: Map<string, Uint8Array> = new Map();
  for (const [start, options] of ASKED) {
    const built = await build(job, {
      file,
      documents: ['cutfile'],
      ...options,
      machine: machine!,
      ...(shop !== undefined && { shop: { text: shop, file: 'shop.yaml' } }),
    });
    if (!built.ok)
      throw new Error(`a golden case must be cut by its machine:\n${built.problems.map(showProblem).join('\n')}`);
    const record = { cutfiles: built.value.report.cutfiles, warnings: built.warnings };
    outputs.set(`${start}files.json`, new TextEncoder().encode(`${canonicalJson(record)}\n`));
    for (const { name, bytes } of built.value.files) outputs.set(`${start}${name}`, bytes);
  }
  return outputs;
}
