import { median } from '../../src/calibrate/statistics.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';

export const about =
  'solving outlines of many corners, curves and hairpins in one process; goal 1 s each, growth no worse than n log n';
export const light = true;

const point = (x: number, y: number): string => `${x.toFixed(4)} ${y.toFixed(4)}`;

/** A wheel with teeth of 3 mm. */
function corners(count: number): string {
  return `M${Array.from({ length: count }, (_, i) => {
    const [angle, radius] = [(2 * Math.PI * i) / count, i % 2 === 0 ? 200 : 203];
    return point(radius * Math.cos(angle), radius * Math.sin(angle));
  }).join(' L')} Z`;
}

/** A smooth outline with five lobes. */
function curves(count: number): string {
  const at = (i: number) => {
    const a = (2 * Math.PI * i) / count;
    const [r, slope] = [100 + 5 * Math.sin(5 * a), 25 * Math.cos(5 * a)];
    const k = (2 * Math.PI) / count / 3;
    const [x, y] = [r * Math.cos(a), r * Math.sin(a)];
    return { x, y, dx: k * (slope * Math.cos(a) - y), dy: k * (slope * Math.sin(a) + x) };
  };
  const parts = Array.from({ length: count }, (_, i) => {
    const [p, q] = [at(i), at(i + 1)];
    return `C${point(p.x + p.dx, p.y + p.dy)} ${point(q.x - q.dx, q.y - q.dy)} ${point(q.x, q.y)}`;
  });
  return `M${point(at(0).x, at(0).y)} ${parts.join(' ')} Z`;
}

/** A comb of long narrow teeth. */
function hairpins(count: number): string {
  const teeth = Array.from({ length: count }, (_, i) => {
    const x = 4 * i;
    return `L${x + 1} 0 C${x + 1} 100 ${x + 3} 100 ${x + 3} 0 L${x + 4} 0`;
  });
  return `M0 0 ${teeth.join(' ')} L${4 * count} -60 L0 -60 Z`;
}

const KINDS = { corners, curves, hairpins } as const;
const SIZES = { corners: [125, 500, 1900], curves: [62, 250, 1000], hairpins: [50, 200, 600] } as const;

/** `[RUNS]`, 3 unless given. */
export function run([runs = '3']: readonly string[]): void {
  for (const [kind, outline] of Object.entries(KINDS)) {
    const sizes = SIZES[kind as keyof typeof KINDS];
    let first: number | undefined;
    for (const count of sizes) {
      const text = `units: mm\nmat: {border: 60}\nopenings: [{outline: "${outline(count)}"}]\n`;
      const taken = Array.from({ length: Number(runs) }, () => {
        const begin = performance.now();
        const made = solveJob(text);
        if (!made.ok) throw new Error(JSON.stringify(made.problems));
        return performance.now() - begin;
      });
      const ms = median(taken);
      first ??= ms / (count * Math.log2(count));
      const growth = ms / (count * Math.log2(count)) / first;
      console.log(
        `  ${kind.padEnd(9)} ${String(count).padStart(5)} ${ms.toFixed(0).padStart(6)} ms   ${growth.toFixed(2)} × n log n`,
      );
    }
  }
}
