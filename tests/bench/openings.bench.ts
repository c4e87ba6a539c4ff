import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { measured } from './whole-process.ts';

export const about =
  'whole process of `pattern` for 10 to 300 openings on one board; goal 2 s and 300 MiB for 300, growth no worse than n log n; everything of 400, goal 5 s and 300 MB';
export const light = false;

const COUNTS = [10, 30, 100, 300];
/** Of these everything is made. */
const MOST = 400;

/** Every artwork of its own size, so that nothing is worked out once for all. */
function job(count: number, columns = Math.ceil(Math.sqrt(count * 1.2))): string {
  const openings = Array.from({ length: count }, (_, i) => {
    const [width, height] = [50 + ((i * 7) % 13), 60 + ((i * 5) % 11)];
    return `  - {name: print ${i + 1}, artwork: ${width} x ${height}}`;
  });
  return `units: mm\nmat: {border: 60}\nopenings:\n${openings.join('\n')}\narrange: {columns: ${columns}, gap: 15}\n`;
}

/** `[RUNS]`, 5 unless given: medians, and how the time above that of 10 openings grows against n log n. */
export function run([runs = '5']: readonly string[]): void {
  const out = mkdtempSync(join(tmpdir(), 'matwright-'));
  const ofRuns = (make: () => ReturnType<typeof measured>) => {
    const all = Array.from({ length: Number(runs) }, make).sort((a, b) => a.ms - b.ms);
    const { ms, cpuMs } = all[Math.floor((all.length - 1) / 2)]!;
    return { ms, cpuMs, mib: Math.max(...all.map((each) => each.mib)) };
  };
  const bare: number[] = [];
  try {
    const taken = COUNTS.map((count) => {
      const file = join(out, `${count}.yaml`);
      writeFileSync(file, job(count));
      const { ms, mib } = ofRuns(() => {
        bare.push(measured(['-e', '0']).ms);
        return measured(['dist/cli.js', 'pattern', file, '--paper', 'fit', '--quiet', '--out', join(out, `${count}`)]);
      });
      return { count, ms, mib };
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
    const file = join(out, 'everything.yaml');
    writeFileSync(file, job(MOST, 20));
    const { ms, cpuMs, mib } = ofRuns(() => measured(['dist/cli.js', 'make', file, '--force', '--quiet']));
    console.log(
      `  everything of ${MOST} ${ms.toFixed(0)} ms, ${cpuMs.toFixed(0)} of the processor, ${(mib * 1.048576).toFixed(0)} MB`,
    );
  } finally {
    rmSync(out, { recursive: true });
  }
}
