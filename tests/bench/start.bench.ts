import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { install, packedOptions } from './packed.ts';

export const about =
  'commands of the packed package against bare Node, whole process; goal pattern 3 ×, aim 2.5 ×, check 1.6 ×';
export const light = false;

const EXAMPLE = join(import.meta.dirname, '../../examples/heron');

const commandsOf = (job: string, out: string): Readonly<Record<string, readonly string[]>> => ({
  '--help': ['--help'],
  check: ['check', job],
  pattern: ['pattern', job, '--out', out],
  'pattern --svg': ['pattern', job, '--svg', '--out', out],
  proof: ['proof', job, '--out', out],
  ticket: ['ticket', job, '--out', out],
});

interface Measured {
  readonly name: string;
  readonly args: readonly string[];
  readonly wall: number[];
  readonly cpu: number[];
}

/**
 * Several packages, the one to compare with first, and several Nodes may be named, as `packedOptions` says. All take
 * turns in each round, so that whatever else the machine does meets them alike.
 */
export function run(args: readonly string[]): void {
  const { packages, nodes, runs } = packedOptions(args, 20);
  const top = mkdtempSync(join(tmpdir(), 'matwright-'));
  try {
    // What the process took is told as it ends, bare Node's too.
    const tell = join(top, 'tell.cjs');
    writeFileSync(
      tell,
      "process.on('exit', () => { const { user, system } = process.cpuUsage(); require('node:fs').writeSync(3, String(user + system)); });",
    );
    cpSync(EXAMPLE, join(top, 'job'), { recursive: true });
    const commands = commandsOf(join(top, 'job/job.yaml'), join(top, 'out'));
    const installed = install(packages, top);
    for (const node of nodes) {
      const all: Measured[] = [{ name: 'bare Node', args: ['-e', '0'], wall: [], cpu: [] }];
      for (const [command, words] of Object.entries(commands))
        for (const { name, inside } of installed)
          all.push({ name: `${command}, ${name}`, args: [join(inside, 'dist/cli.js'), ...words], wall: [], cpu: [] });
      // The first rounds bring the files into the disk cache, and make what Node keeps by itself.
      for (let i = -2; i < runs; i++)
        for (const one of all) measure(node, ['--require', tell, ...one.args], one, i >= 0);
      show(node, all, runs);
    }
  } finally {
    rmSync(top, { recursive: true });
  }
}

function measure(node: string, args: readonly string[], into: Measured, counts: boolean): void {
  const start = process.hrtime.bigint();
  const { status, stderr, output } = spawnSync(node, args, { stdio: ['ignore', 'ignore', 'pipe', 'pipe'] });
  const taken = Number(process.hrtime.bigint() - start) / 1e6;
  if (status !== 0) throw new Error(`${node} ${args.join(' ')} ended with ${status}\n${stderr}`);
  if (!counts) return;
  into.wall.push(taken);
  into.cpu.push(Number(String(output[3])) / 1000);
}

function show(node: string, all: readonly Measured[], runs: number): void {
  const version = spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout.trim();
  const wide = Math.max(...all.map(({ name }) => name.length));
  const [bare] = all as [Measured];
  console.log(`  ${basename(node)} ${version}, medians of ${runs} rounds, and × bare Node`);
  for (const { name, wall, cpu } of all) {
    const of = (values: readonly number[], base: readonly number[]): string =>
      `${median(values).toFixed(1).padStart(7)} ms ${(median(values) / median(base)).toFixed(2).padStart(5)} ×`;
    console.log(`  ${name.padEnd(wide)}  wall ${of(wall, bare.wall)}   processor ${of(cpu, bare.cpu)}`);
  }
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1]!;
}
