import { prepare, solveJob, write } from '../../src/index.ts';
import { sheetsIn } from '../outputs/sheets.ts';
import { canonicalDrawing } from './canonical.ts';
import type { Case } from './cases.ts';
import type { Outputs } from './compare.ts';

type MakeFile = (file: { readonly name: string; readonly bytes: Uint8Array }) => Promise<Outputs>;

/** The sheets of a jig as drawings, and its files as they are read back by `makeFile`. */
export async function makeJigCase({ jig, job, file, shop }: Case, makeFile: MakeFile): Promise<Outputs> {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const solved = solveJob(job, { file, ...source });
  const made = solved.ok
    ? await prepare('jig', { jobs: [solved.value], ...source }, { kind: jig!, cut: ['svg'] })
    : solved;
  const written = made.ok ? await write(made.value) : made;
  if (!made.ok || !written.ok) throw new Error(`a golden case must make its jig: ${JSON.stringify([made, written])}`);
  const drawings = sheetsIn(made.value);
  const outputs: Map<string, Uint8Array> = new Map(
    drawings.map((drawing, i) => [`sheet-${i + 1}.drawing.json`, new TextEncoder().encode(canonicalDrawing(drawing))]),
  );
  for (const output of written.value) for (const [name, bytes] of await makeFile(output)) outputs.set(name, bytes);
  return outputs;
}
