import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

export const about =
  'writing a PDF of 1 to 1,000 sheets: time in the writer, peak memory of the whole process; goal under 200 MiB';
export const light = true;

/** `[RUNS]`, 5 unless given. Each run is a process of its own, of the minified writer. */
export async function run([runs = '5']: readonly string[]): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'pdf-bench-'));
  try {
    const script = join(folder, 'pages.cjs');
    await build({
      entryPoints: [join(import.meta.dirname, 'pdf-pages.ts')],
      outfile: script,
      bundle: true,
      minify: true,
      platform: 'node',
      mainFields: ['module', 'main'],
      format: 'cjs',
      logLevel: 'warning',
    });
    for (const sheets of [1, 10, 100, 1000]) {
      const all = Array.from({ length: Number(runs) }, () => measured(script, sheets));
      const median = (key: keyof Measured): number =>
        all.map((one) => one[key]).sort((a, b) => a - b)[all.length >> 1]!;
      console.log(
        `  ${String(sheets).padStart(5)} sheets ${median('milliseconds').toFixed(0).padStart(6)} ms ${median('peakMiB').toFixed(0).padStart(5)} MiB ${median('kilobytes').toFixed(0).padStart(6)} kB`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}

interface Measured {
  readonly milliseconds: number;
  readonly peakMiB: number;
  readonly kilobytes: number;
}

function measured(script: string, sheets: number): Measured {
  return JSON.parse(execFileSync(process.execPath, [script, String(sheets)], { encoding: 'utf8' }));
}
