import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Installed, install, packedOptions } from './packed.ts';

export const about =
  'ten whole jobs inside one process, by the packed library: processor time of the first ten and of ten more';
export const light = false;

const TEMPLATES = join(import.meta.dirname, '../../templates');

const JOBS = [
  'single',
  'double',
  'triple',
  'float',
  'row-three',
  'grid-four',
  'oval-portrait',
  'lettered',
  'groove',
  'seven-title',
];

/** Makes every job's pattern, proof, ticket and cut file twice over, and tells the milliseconds of each time. */
const script = (jobs: readonly string[]): string => `
  import { readFileSync } from 'node:fs';
  import * as library from 'matwright';
  // Packages from before the table of outputs ask for SVG by another name.
  const asked = 'OUTPUTS' in library ? { format: ['pdf', 'svg'] } : { svg: true };
  const jobs = ${JSON.stringify(jobs)}.map((file) => readFileSync(file, 'utf8'));
  const taken = [];
  for (let i = 0; i < 2; i++) {
    const before = process.cpuUsage();
    for (const text of jobs) {
      const made = await library.build(text, { documents: ['pattern', 'proof', 'ticket'], ...asked });
      if ('problems' in made) throw new Error(JSON.stringify(made.problems));
    }
    const { user, system } = process.cpuUsage(before);
    taken.push((user + system) / 1000);
  }
  console.log(JSON.stringify(taken));`;

/** `packedOptions`; the packages take turns. */
export function run(args: readonly string[]): void {
  const { packages, nodes, runs } = packedOptions(args, 5);
  const top = mkdtempSync(join(tmpdir(), 'matwright-'));
  try {
    cpSync(TEMPLATES, join(top, 'jobs'), { recursive: true });
    const jobs = JOBS.map((name) => join(top, 'jobs', `${name}.yaml`));
    const installed = install(packages, top);
    for (const { folder } of installed) writeFileSync(join(folder, 'whole.mjs'), script(jobs));
    for (const node of nodes) {
      const times = new Map(installed.map((one) => [one, [] as [number, number][]]));
      for (let i = -1; i < runs; i++)
        for (const [one, taken] of times) {
          const made = measured(node, one);
          if (i >= 0) taken.push(made);
        }
      for (const [{ name }, taken] of times) {
        const median = (which: 0 | 1): string =>
          taken
            .map((one) => one[which])
            .sort((a, b) => a - b)
            [taken.length >> 1]!.toFixed(0)
            .padStart(6);
        console.log(`  ${node}  ${name.padEnd(24)} first ten ${median(0)} ms, ten more ${median(1)} ms`);
      }
    }
  } finally {
    rmSync(top, { recursive: true });
  }
}

function measured(node: string, { folder }: Installed): [number, number] {
  const { status, stdout, stderr } = spawnSync(node, ['whole.mjs'], { cwd: folder, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${folder} ended with ${status}\n${stderr}`);
  return JSON.parse(stdout);
}
