import { type OutputId, prepare, solveJob, write } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';
import { sheetsIn } from '../outputs/sheets.ts';
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
  const options = sheet === 'placement' ? {} : { number: '41' };
  const made = solved.ok ? await prepare(sheet! as OutputId, { jobs: [solved.value] }, options) : solved;
  const written = made.ok ? await write(made.value) : made;
  if (!made.ok || !written.ok) throw new Error(`a golden case must make its sheet: ${JSON.stringify([made, written])}`);
  // A placement sheet is one drawing that is laid on paper at full scale; all others are sheets by themselves.
  const wholes = made.value.drawn.documents.flatMap(({ whole }) => whole ?? []);
  const drawings = wholes.length > 0 ? wholes : sheetsIn(made.value);
  const outputs: Map<string, Uint8Array> = new Map(
    drawings.map((drawing, i) => [`sheet-${i + 1}.drawing.json`, new TextEncoder().encode(canonicalDrawing(drawing))]),
  );
  for (const output of written.value) for (const [name, bytes] of await makeFile(output)) outputs.set(name, bytes);
  return outputs;
}
