import { makeBenchSheets, solveJob } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import { canonicalDrawing } from './canonical.ts';
import type { Case } from './cases.ts';
import type { Outputs } from './compare.ts';

type MakeFile = (file: { readonly name: string; readonly bytes: Uint8Array }) => Promise<Outputs>;

/** A sheet for the bench as drawings, and its file as it is read back by `makeFile`. */
export async function makeBenchCase({ sheet, job, file, shop }: Case, makeFile: MakeFile): Promise<Outputs> {
  const solved = solveJob(job, { file, ...(shop !== undefined && { shop: { text: shop, file: 'shop.yaml' } }) });
  const made = solved.ok ? await makeBenchSheets(sheet!, [solved.value], { number: '41' }) : solved;
  if (!made.ok) throw new Error(`a golden case must make its sheet:\n${made.problems.map(showProblem).join('\n')}`);
  const { drawings, files } = made.value;
  const outputs: Map<string, Uint8Array> = new Map(
    drawings.map((drawing, i) => [`sheet-${i + 1}.drawing.json`, new TextEncoder().encode(canonicalDrawing(drawing))]),
  );
  for (const output of files) for (const [name, bytes] of await makeFile(output)) outputs.set(name, bytes);
  return outputs;
}
