import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { measured } from './whole-process.ts';

export const about =
  'whole process of `pattern` for 10 to 300 openings on one board; goal 2 s and 300 MiB for 300, growth no worse than n log n';
export const light = false;

const COUNTS = [10, 30, 100, 300];

/** Every artwork of its own size, so that nothing is worked out once for all. */
function job(count: number): string {
  const openings = Array.from({ length: count }, (_, i) => {
    const [width, height] = [50 + ((i * 7) % 13), 60 + ((i * 5) % 11)];
    return `  - {name: print ${i + 1}, artwork: ${width} x ${height}}`;
  });
  const columns = Math.ceil(Math.sqrt(count * 1.2));
  return `units: mm\nmat: {border: 60}\nopenings:\n${openings.join('\n')}\narrange: {columns: ${columns}, gap: 15}\n`;
}

/** `[RUNS]`, 5 unless given: medians, and how the time above that of 10 openings grows against n log n. */
export function run([runs = '5']: readonly string[]): void {
  const out = mkdtempSync(join(tmpdir(), 'matwright-'));
  const bare: number[] = [];
  try {
    const taken = COUNTS.map((count) => {
      const file = join(out, `${count}.yaml`);
      writeFileSync(file, job(count));
      const all = Array.from({ length: Number(runs) }, () => {
        bare.push(measured(['-e', '0']).ms);
        return measured(['dist/cli.js', 'pattern', file, '--paper', 'fit', '--quiet', '--out', join(out, `${count}`)]);
      });
      const median = [...all].sort((a, b) => a.ms - b.ms)[Math.floor((all.length - 1) / 2)]!.ms;
      return { count, ms: median, mib: Math.max(...all.map((each) => each.mib)) };
    });
    const start = [...bare].sort((a, b) => a - b)[Math.floor(bare.length / 2)]!;
    console.log(`  bare Node ${start.toFixed(0)} ms`);
    const [first] = taken;
    for (const { count, ms, mib } of taken) {
      const measure = (n: number): number => n * Math.log2(n);
      const growth = (ms - start) / (first!.ms - start) / (measure(count) / measure(first!.count));
      console.log(
        `  ${String(count).padStart(3)} openings ${ms.toFixed(0).padStart(6)} ms ${mib.toFixed(0).padStart(5)} MiB   ${growth.toFixed(2)} × n log n`,
      );
    }
  } finally {
    rmSync(out, { recursive: true });
  }
}
