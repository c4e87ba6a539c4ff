import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** One folder for each run of the tests, for what several of its workers share; it goes when the run ends. */
export default function setUp(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-run-'));
  // Tests run the program as other users too.
  chmodSync(folder, 0o755);
  process.env.MATWRIGHT_RUN_FOLDER = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
