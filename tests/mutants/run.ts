/**
 * `npm run mutants -- [FOLDER…] [--sample N] [--seed S] [--list]`: changes one operator, sign, constant or branch at a
 * time in the folders of `src/` where a wrong number spoils a board, and runs the tests that relate: first those of the
 * folder itself, then those of what stands on it, then the golden references. What no test notices is named, and the run
 * ends with 1. Each run has a process group and a time limit of its own; one that hangs counts as found.
 */
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { random } from '../fuzz/generate.ts';
import { GOLDEN, RELATED } from './related.ts';
import { type Mutant, mutantsOf } from './sites.ts';

const TOP = join(import.meta.dirname, '../..');
const LIMIT_MS = 180_000;

type Verdict = 'own' | 'other' | 'golden' | 'nothing';

interface Options {
  readonly folders: readonly string[];
  readonly sample: number;
  readonly seed: number;
  readonly list: boolean;
}

function optionsOf(args: readonly string[]): Options {
  const numberAfter = (name: string, otherwise: number): number => {
    const at = args.indexOf(name);
    return at < 0 ? otherwise : Number(args[at + 1]);
  };
  const folders = args.filter((arg, i) => !arg.startsWith('--') && !/^--(?:sample|seed)$/.test(args[i - 1] ?? ''));
  const unknown = folders.filter((folder) => !Object.keys(RELATED).some((known) => within(folder, known)));
  if (unknown.length > 0)
    throw new Error(`no tests are known for ${unknown.join(', ')}: ${Object.keys(RELATED).join(', ')}`);
  return {
    folders: folders.length > 0 ? folders : Object.keys(RELATED),
    sample: numberAfter('--sample', 300),
    seed: numberAfter('--seed', 1),
    list: args.includes('--list'),
  };
}

/** `paper/search` lies within `paper`, and `bench/offsets.ts` within `bench`. */
const within = (path: string, folder: string): boolean => path === folder || path.startsWith(`${folder}/`);

function sourcesOf(folder: string): readonly string[] {
  if (folder.endsWith('.ts')) return [folder];
  return readdirSync(join(TOP, 'src', folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !/(?:^|\/)codes\.ts$/.test(name))
    .map((name) => `${folder}/${name}`)
    .sort();
}

/** So many of all, each as likely as any other. */
function sampled(all: readonly Mutant[], { sample, seed }: Options): readonly Mutant[] {
  const next = random(seed);
  const left = [...all];
  const taken: Mutant[] = [];
  while (taken.length < sample && left.length > 0) taken.push(...left.splice(Math.floor(next() * left.length), 1));
  return taken;
}

/** A copy of the house in which mutants live, with the packages of this one. */
function copied(): string {
  const folder = mkdtempSync(join(tmpdir(), 'mutants-'));
  for (const name of readdirSync(TOP)) {
    if (['node_modules', 'dist', '.git', 'coverage'].includes(name)) continue;
    cpSync(join(TOP, name), join(folder, name), { recursive: true });
  }
  symlinkSync(join(TOP, 'node_modules'), join(folder, 'node_modules'));
  return folder;
}

/** Whether the tests pass; one that goes on for too long is stopped with all that it started, and does not. */
function pass(folder: string, tests: readonly string[]): Promise<boolean> {
  return new Promise((done) => {
    const args = [
      'node_modules/vitest/vitest.mjs',
      'run',
      '--config',
      'tests/vitest.config.ts',
      '--bail',
      '1',
      '--reporter',
      'dot',
      ...tests,
    ];
    const child = spawn(process.execPath, args, {
      cwd: folder,
      stdio: 'ignore',
      detached: true,
      env: { ...process.env, CI: '' },
    });
    const stop = (): void => {
      try {
        process.kill(-child.pid!, 'SIGKILL');
      } catch {
        // It is gone already.
      }
    };
    const timer = setTimeout(stop, LIMIT_MS);
    child.on('exit', (code) => {
      clearTimeout(timer);
      stop();
      done(code === 0);
    });
  });
}

async function verdictOn(mutant: Mutant, folder: string): Promise<Verdict> {
  const path = join(folder, 'src', mutant.file);
  const text = readFileSync(path, 'utf8');
  const related = Object.entries(RELATED).find(([known]) => within(mutant.file, known))![1];
  writeFileSync(path, text.slice(0, mutant.start) + mutant.to + text.slice(mutant.end));
  try {
    if (!(await pass(folder, related.own))) return 'own';
    if (related.other.length > 0 && !(await pass(folder, related.other))) return 'other';
    return (await pass(folder, GOLDEN)) ? 'nothing' : 'golden';
  } finally {
    writeFileSync(path, text);
  }
}

const shown = ({ file, line, from, to }: Mutant): string =>
  `src/${file}:${line}  ${from.trim()} → ${to.trim() || '(nothing)'}`;

const options = optionsOf(process.argv.slice(2));
const all = options.folders
  .flatMap(sourcesOf)
  .flatMap((file) => mutantsOf(file, readFileSync(join(TOP, 'src', file), 'utf8')));
const chosen = sampled(all, options);
process.stdout.write(`${all.length} places, ${chosen.length} tried, seed ${options.seed}\n`);
if (options.list) for (const mutant of chosen) process.stdout.write(`${shown(mutant)}\n`);
else {
  const tally: Record<Verdict, number> = { own: 0, other: 0, golden: 0, nothing: 0 };
  const folder = copied();
  try {
    for (const [i, mutant] of chosen.entries()) {
      const verdict = await verdictOn(mutant, folder);
      tally[verdict]++;
      if (verdict === 'nothing' || verdict === 'golden')
        process.stdout.write(`${verdict === 'nothing' ? 'SURVIVES' : 'golden only'}  ${shown(mutant)}\n`);
      else if (i % 20 === 19) process.stdout.write(`${i + 1} tried\n`);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  const found = chosen.length - tally.nothing;
  process.stdout.write(
    `found ${found} of ${chosen.length} (${((100 * found) / chosen.length).toFixed(1)} %): by the folder's own tests ${tally.own}, by others ${tally.other}, by golden references alone ${tally.golden}\n`,
  );
  process.exitCode = tally.nothing > 0 ? 1 : 0;
}
