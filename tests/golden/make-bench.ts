import type { Drawing } from '../../src/drawing/model.ts';
import { makeBenchSheets, makePlacement, type Result, type Solved, solveJob } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import { FONTS } from '../fonts/loaded.ts';
import { canonicalDrawing } from './canonical.ts';
import type { Case } from './cases.ts';
import type { Outputs } from './compare.ts';

type MakeFile = (file: { readonly name: string; readonly bytes: Uint8Array }) => Promise<Outputs>;

/** A sheet for the bench as drawings, and its file as it is read back by `makeFile`. */
export async function makeBenchCase({ sheet, job, file, shop }: Case, makeFile: MakeFile): Promise<Outputs> {
  const solved = solveJob(job, {
    fonts: FONTS,
    file,
    ...(shop !== undefined && { shop: { text: shop, file: 'shop.yaml' } }),
  });
  const made = solved.ok ? await sheetsOf(sheet!, solved.value) : solved;
  if (!made.ok) throw new Error(`a golden case must make its sheet:\n${made.problems.map(showProblem).join('\n')}`);
  const { drawings, files } = made.value;
  const outputs: Map<string, Uint8Array> = new Map(
    drawings.map((drawing, i) => [`sheet-${i + 1}.drawing.json`, new TextEncoder().encode(canonicalDrawing(drawing))]),
  );
  for (const output of files) for (const [name, bytes] of await makeFile(output)) outputs.set(name, bytes);
  return outputs;
}

type Made = Result<{
  readonly drawings: readonly Drawing[];
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}>;

/** A placement sheet is laid on paper by itself, at full scale; all others are sheets of a table. */
async function sheetsOf(sheet: string, solved: Solved): Promise<Made> {
  if (sheet !== 'placement') return makeBenchSheets(sheet, [solved], { number: '41' });
  const made = await makePlacement(solved);
  return made.ok ? { ...made, value: { drawings: [made.value.drawing], files: made.value.files } } : made;
}
