/**
 * `npm run fuzz -- [COUNT] [SEED]`: random, mutated and structured jobs through reading, solving and the strokes, every
 * twentieth good one through the whole pattern. Says what crashed, took more than a second of work, gave output for wrong
 * input or was accepted though a cut leaves its board, and ends with 1 if anything did. What it finds becomes a case in
 * `found.ts`.
 */
import { build } from '../../src/node.ts';
import { anyJob, random } from './generate.ts';
import { trial } from './trial.ts';

const count = Number(process.argv[2] ?? 2000);
const seed = Number(process.argv[3] ?? 1);
const next = random(seed);

/** What the work itself takes, however busy the machine is. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

// What is loaded on first use counts for no job.
await build('mat: {outer: 16 x 20}\nopenings: [{artwork: 10 x 13}]\n', { file: 'job.yaml' });

const found: string[] = [];
const tally = { solved: 0, refused: 0, patterns: 0, strokes: 0, slowest: 0 };
for (let i = 0; i < count; i++) {
  const job = anyJob(next);
  const documents = i % 50 === 0 || tally.solved % 20 === 19;
  const started = cpuMs();
  const tried = await trial(job, documents);
  const took = cpuMs() - started;
  if (tried.solved) tally.solved++;
  else tally.refused++;
  if (tried.patterns) tally.patterns++;
  tally.strokes += tried.strokes;
  found.push(...tried.found.map((what) => `${what}\n${job}`));
  // Drawing sheets is no solving.
  if (documents) continue;
  if (took > tally.slowest) tally.slowest = took;
  if (took > 1000) found.push(`took ${Math.round(took)} ms\n${job}`);
  if ((i + 1) % 10_000 === 0) process.stdout.write(`${i + 1} tried, ${found.length} found\n`);
}
process.stdout.write(
  `${count} jobs, seed ${seed}: ${tally.solved} solved (${tally.strokes} strokes on their boards), ${tally.refused} refused, ${tally.patterns} patterns made; slowest ${Math.round(tally.slowest)} ms; ${found.length} found\n`,
);
for (const one of found.slice(0, 40)) process.stdout.write(`\n${'-'.repeat(40)}\n${one}\n`);
process.exitCode = found.length > 0 ? 1 : 0;
