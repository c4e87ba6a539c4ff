import { buildJig } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import { canonicalDrawing } from './canonical.ts';
import type { Case } from './cases.ts';
import type { Outputs } from './compare.ts';

type MakeFile = (file: { readonly name: string; readonly bytes: Uint8Array }) => Promise<Outputs>;

/** The sheets of a jig as drawings, and its files as they are read back by `makeFile`. */
export async function makeJigCase({ jig, job, file, shop }: Case, makeFile: MakeFile): Promise<Outputs> {
  const made = await buildJig(jig!, {
    job: { text: job, file },
    cut: ['svg'],
    ...(shop !== undefined && { shop: { text: shop, file: 'shop.yaml' } }),
  });
  if (!made.ok) throw new Error(`a golden case must make its jig:\n${made.problems.map(showProblem).join('\n')}`);
  const { drawings, files } = made.value;
  const outputs: Map<string, Uint8Array> = new Map(
    drawings.map((drawing, i) => [`sheet-${i + 1}.drawing.json`, new TextEncoder().encode(canonicalDrawing(drawing))]),
  );
  for (const output of files) for (const [name, bytes] of await makeFile(output)) outputs.set(name, bytes);
  return outputs;
}
