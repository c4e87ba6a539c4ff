import { readFileSync, realpathSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

/** The bytes of the program that renders a PNG, from the package that Matwright was installed with. */
export async function rendererBytes(): Promise<Uint8Array> {
  const beside = createRequire(started());
  return readFileSync(beside.resolve('@resvg/resvg-wasm/index_bg.wasm'));
}

/** The program's own file; where it was started in an odd way, the folder it was started in. */
function started(): string {
  try {
    return realpathSync(process.argv[1] ?? '');
  } catch {
    return join(process.cwd(), 'matwright');
  }
}
