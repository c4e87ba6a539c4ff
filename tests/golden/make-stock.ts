import { prepare, solveJob, write } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';
import { sheetsIn } from '../outputs/sheets.ts';
import { canonicalDrawing, canonicalJson } from './canonical.ts';
import type { Case } from './cases.ts';
import type { Outputs } from './compare.ts';

type MakeFile = (file: { readonly name: string; readonly bytes: Uint8Array }) => Promise<Outputs>;

/** Found soon and the same on every machine; the best plan is for the planner's own tests. */
const EFFORT = 0.005;

/** A day's stock plan: what it says, its first page as a drawing, and the file as it is read back by `makeFile`. */
export async function makeStockCase({ day = {}, shop }: Case, makeFile: MakeFile): Promise<Outputs> {
  const source = { shop: { text: shop ?? '', file: 'shop.yaml' } };
  const solved = Object.entries(day).map(([file, text]) => solveJob(text, { fonts: FONTS, file, ...source }));
  const jobs = solved.flatMap((each) => (each.ok ? [each.value] : []));
  const made = await prepare('stock', { jobs, ...source }, { effort: EFFORT, fallouts: true });
  const written = made.ok ? await write(made.value) : made;
  if (!made.ok || !written.ok) throw new Error(`a golden case must make its plan: ${JSON.stringify([made, written])}`);
  const [first] = sheetsIn(made.value);
  const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
  const outputs = new Map([
    ['record.json', encode(`${canonicalJson(made.value.drawn.record)}\n`)],
    ['page-1.drawing.json', encode(canonicalDrawing(first!))],
  ]);
  for (const output of written.value) for (const [name, bytes] of await makeFile(output)) outputs.set(name, bytes);
  return outputs;
}
