import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { measured } from './whole-process.ts';

export const about =
  'whole process of `cutfile` by machine, format and number of openings; goal 3.5 × bare Node for one opening, growth no worse than n log n';
export const light = false;

const SHOP = `units: mm
machines:
  laser: {kerf: {x: 0.2, y: 0.18}}
  knife: {offset: 0.25, lead: 2}
  bevel: {start: 1.2, stop: -0.4, outside: false}
`;

/** Every other one an oval, each of its own size. */
function job(count: number): string {
  const openings = Array.from({ length: count }, (_, i) => {
    const [width, height] = [50 + ((i * 7) % 13), 60 + ((i * 5) % 11)];
    return `  - {name: print ${i + 1}, artwork: ${width} x ${height}${i % 2 === 0 ? '' : ', shape: oval'}}`;
  });
  const columns = Math.ceil(Math.sqrt(count * 1.2));
  const layers = 'layers: [{board: {thickness: 1.4}}, {board: {thickness: 1.4}, reveal: 6}]';
  return `units: mm\nmat: {border: 60, ${layers}}\nopenings:\n${openings.join('\n')}\narrange: {columns: ${columns}, gap: 30}\n`;
}

const median = (all: readonly number[]): number => [...all].sort((a, b) => a - b)[Math.floor((all.length - 1) / 2)]!;

/** `[RUNS]`, 5 unless given: medians, as ms and as a multiple of bare Node, with the peak of memory and the size of the files. */
export function run([runs = '5']: readonly string[]): void {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  try {
    writeFileSync(join(folder, 'shop.yaml'), SHOP);
    const rounds = Array.from({ length: Number(runs) });
    const bare = median(rounds.map(() => measured(['-e', '0']).ms));
    console.log(`  bare Node ${bare.toFixed(0)} ms`);
    for (const count of [1, 20, 200]) {
      const file = join(folder, `${count}.yaml`);
      writeFileSync(file, job(count));
      for (const machine of ['laser', 'knife', 'bevel']) {
        for (const format of ['svg', 'dxf', 'hpgl']) {
          const out = join(folder, `${count}-${machine}-${format}`);
          const args = [
            'dist/cli.js',
            'cutfile',
            file,
            '--machine',
            machine,
            '--format',
            format,
            '--quiet',
            '--out',
            out,
          ];
          const all = rounds.map(() => measured(args));
          const ms = median(all.map((each) => each.ms));
          const mib = Math.max(...all.map((each) => each.mib));
          const kib = readdirSync(out).reduce((sum, name) => sum + statSync(join(out, name)).size, 0) / 1024;
          console.log(
            `  ${String(count).padStart(3)} openings  ${machine.padEnd(5)} ${format.padEnd(4)} ${ms.toFixed(0).padStart(6)} ms ${(ms / bare).toFixed(2).padStart(6)} × ${mib.toFixed(0).padStart(5)} MiB ${kib.toFixed(0).padStart(6)} KiB`,
          );
        }
      }
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}
