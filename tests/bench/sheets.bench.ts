import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const about = 'time and peak memory of a pattern from 1 to about 1,000 sheets, on small paper';
export const light = false;

const CLI = join(import.meta.dirname, '../../dist/cli.js');

/** Widths of a square mat, mm, that come to about 1, 3, 10, 30 … sheets. */
const WIDTHS = [38, 70, 140, 320, 760, 1700, 3000, 4900];

const jobOf = (width: number): string => `
title: Sheets
units: mm
mat: {outer: ${width} x ${width}, layers: [{board: {name: grey, thickness: 1.4}}]}
openings: [{size: ${width * 0.9} x ${width * 0.9}}]
print: {paper: 51 x 51, margin: 4, lap: 6}
`;

/** `[WIDTHS…]` in mm instead of the usual row. */
export function run(args: readonly string[]): void {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  try {
    const peak = join(folder, 'peak.cjs');
    writeFileSync(peak, "process.on('exit', () => console.error('\\npeak', process.resourceUsage().maxRSS));");
    for (const width of args.length > 0 ? args.map(Number) : WIDTHS) {
      const job = join(folder, 'job.yaml');
      writeFileSync(job, jobOf(width));
      const start = process.hrtime.bigint();
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        ['--require', peak, CLI, 'pattern', job, '--out', folder, '--json'],
        { encoding: 'utf8', maxBuffer: 1 << 28 },
      );
      const seconds = Number(process.hrtime.bigint() - start) / 1e9;
      if (status !== 0) throw new Error(`${width} mm ended with ${status}\n${stdout}\n${stderr}`);
      const { patterns } = JSON.parse(stdout) as { patterns: readonly { sheets: number; skipped: number }[] };
      const { sheets, skipped } = patterns[0]!;
      const mebibytes = Number(/peak (\d+)/.exec(stderr)![1]) / 1024;
      console.log(
        `  ${String(sheets).padStart(5)} sheets (${skipped} blank ones skipped)  ${seconds.toFixed(2).padStart(6)} s  ${mebibytes.toFixed(0).padStart(4)} MiB`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}
