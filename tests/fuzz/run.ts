/**
 * `npm run fuzz -- [COUNT] [SEED]`: random and mutated jobs through reading, solving and the strokes, every twentieth good
 * one through the whole pattern. Says what crashed, took more than a second of work or gave output for wrong input, and ends
 * with 1 if anything did. What it finds becomes a case in `found.ts`.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { build } from '../../src/node.ts';
import { grammarJob, mutated, random } from './generate.ts';
import { trial } from './trial.ts';

const count = Number(process.argv[2] ?? 2000);
const seed = Number(process.argv[3] ?? 1);
const next = random(seed);
const seeds = [
  readFileSync('examples/heron/job.yaml', 'utf8'),
  ...readdirSync('templates')
    .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
    .map((name) => readFileSync(`templates/${name}`, 'utf8')),
];

/** What the work itself takes, however busy the machine is. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

// What is loaded on first use counts for no job.
await build(seeds[0]!, { file: 'job.yaml' });

const found: string[] = [];
const tally = { solved: 0, refused: 0, patterns: 0, slowest: 0 };
for (let i = 0; i < count; i++) {
  const job = next() < 0.7 ? grammarJob(next) : mutated(seeds[Math.floor(next() * seeds.length)]!, next);
  const started = cpuMs();
  const tried = await trial(job, i % 50 === 0 || tally.solved % 20 === 19);
  if (tried.solved) tally.solved++;
  else tally.refused++;
  if (tried.patterns) tally.patterns++;
  found.push(...tried.found.map((what) => `${what}\n${job}`));
  const took = cpuMs() - started;
  if (took > tally.slowest) tally.slowest = took;
  if (took > 1000) found.push(`took ${Math.round(took)} ms\n${job}`);
}
process.stdout.write(
  `${count} jobs, seed ${seed}: ${tally.solved} solved, ${tally.refused} refused, ${tally.patterns} patterns made; slowest ${Math.round(tally.slowest)} ms; ${found.length} found\n`,
);
for (const one of found.slice(0, 20)) process.stdout.write(`\n${'-'.repeat(40)}\n${one}\n`);
process.exitCode = found.length > 0 ? 1 : 0;
