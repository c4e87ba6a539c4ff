/**
 * `npm run mutants -- [FOLDER…] [--sample N] [--seed S] [--budget SECONDS] [--keep FOLDER] [--quick] [--codes] [--list]`: changes one operator, sign, constant
 * or branch at a time in the folders of `src/` where a wrong number spoils a board, and runs the tests that come by it:
 * first those of the folder itself, then those of what stands on it, then the golden references. Which tests come by which
 * place is found first, by running all of them once. Each is told with the test that noticed it, and where none did the run
 * ends with 1. Each run has a process group and a time limit of its own; one that hangs counts as found. A FOLDER may be a
 * file, or a line of it: `bench/offsets.ts:40`. With `--keep` what was found is kept in that folder, and the same run started
 * once more goes on from there. With `--quick` the golden references, which take as long as ten mutants, are left out: what
 * survives it is tried again by the same run without it. With `--codes` the codes of problems are changed instead, anywhere in `src/`:
 * whether a test brings each about.
 */
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { random } from '../fuzz/generate.ts';
import { reachOf, type TestFile } from './reach.ts';
import { FOLDERS, inOrder, type Verdict, verdictOf } from './related.ts';
import { type Mutant, mutantsOf } from './sites.ts';
import { prepareCopy, Standing } from './tests-in-copy.ts';

const TOP = join(import.meta.dirname, '../..');

/** Running these says nothing of a number, or takes the packed program, which is not built of the mutant. */
const LEFT_OUT =
  /^tests\/(?:house|fuzz|mutants|tasks|dev|page|pictures|fonts|guide|cli\/(?:files|as-shipped|page|complete|serve|day\/(?:stopped|apart)))\b/;

interface Options {
  readonly folders: readonly string[];
  readonly sample: number;
  readonly seed: number;
  readonly budget: number;
  readonly keep: string | undefined;
  readonly quick: boolean;
  readonly list: boolean;
  readonly codes: boolean;
}

function optionsOf(args: readonly string[]): Options {
  const numberAfter = (name: string, otherwise: number): number => {
    const at = args.indexOf(name);
    return at < 0 ? otherwise : Number(args[at + 1]);
  };
  const folders = args.filter(
    (arg, i) => !arg.startsWith('--') && !/^--(?:sample|seed|budget|keep)$/.test(args[i - 1] ?? ''),
  );
  const codes = args.includes('--codes');
  const unknown = codes ? [] : folders.filter((folder) => !FOLDERS.some((known) => within(folder, known)));
  if (unknown.length > 0) throw new Error(`${unknown.join(', ')} is none of the folders: ${FOLDERS.join(', ')}`);
  return {
    folders: folders.length > 0 ? folders : codes ? [''] : FOLDERS,
    sample: numberAfter('--sample', 300),
    seed: numberAfter('--seed', 1),
    budget: numberAfter('--budget', 60),
    keep: args.includes('--keep') ? args[args.indexOf('--keep') + 1] : undefined,
    quick: args.includes('--quick'),
    list: args.includes('--list'),
    codes,
  };
}

/** `paper/search` lies within `paper`, and `bench/offsets.ts` within `bench`. */
const within = (path: string, folder: string): boolean => path === folder || path.startsWith(`${folder}/`);

function mutantsIn(folder: string): readonly Mutant[] {
  const [path = '', line] = folder.split(':');
  const names = path.endsWith('.ts')
    ? [path]
    : readdirSync(join(TOP, 'src', path), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts') && !/(?:^|\/)codes\.ts$/.test(name) && !/^fonts\/prepared/.test(name))
        .map((name) => join(path, name))
        .sort();
  return names
    .flatMap((file) => mutantsOf(file, readFileSync(join(TOP, 'src', file), 'utf8')))
    .filter((mutant) => line === undefined || mutant.line === Number(line));
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
  prepareCopy(folder);
  return folder;
}

const testFiles = (): readonly string[] =>
  readdirSync(join(TOP, 'tests'), { recursive: true, encoding: 'utf8' })
    .map((name) => `tests/${name}`)
    .filter((name) => name.endsWith('.test.ts') && !LEFT_OUT.test(name));

interface Found {
  readonly verdict: Verdict;
  /** The first that noticed. */
  readonly by: string | undefined;
  /** Not all were asked. */
  readonly quick?: true;
}

const MOST_SECONDS = 180;

/** Whose text was put back since anything ran. */
let last: string | undefined;

async function verdictOn(
  mutant: Mutant,
  i: number,
  folder: string,
  tests: readonly TestFile[],
  standing: Standing,
): Promise<Found> {
  const own = mutant.file.split('/')[0]!;
  const related = inOrder(i, own, tests, options.budget).filter(
    ({ file }) => !options.quick || verdictOf(file, own) !== 'golden',
  );
  const none: Found = { verdict: 'nothing', by: undefined, ...(options.quick ? { quick: true } : {}) };
  if (related.length === 0) return none;
  const path = join(folder, 'src', mutant.file);
  const text = readFileSync(path, 'utf8');
  writeFileSync(path, text.slice(0, mutant.start) + mutant.to + text.slice(mutant.end));
  try {
    // What goes on for ever is waited for in vain: most of these are in tests that take no time.
    const limit = Math.min(MOST_SECONDS, 40 + 2.5 * related.reduce((sum, { seconds }) => sum + seconds, 0));
    const changed = [...new Set([`src/${last ?? mutant.file}`, `src/${mutant.file}`])];
    last = mutant.file;
    const { files, ended } = await standing.run({ changed, files: related.map(({ file }) => file) }, limit);
    if (!ended) return { verdict: 'own', by: 'it goes on for ever' };
    const by = files.find(({ passed }) => !passed)?.file;
    return by === undefined ? none : { verdict: verdictOf(by, own), by };
  } finally {
    writeFileSync(path, text);
  }
}

const shown = ({ file, line, from, to }: Mutant): string =>
  `src/${file}:${line}  ${from.trim()} → ${to.trim() || '(nothing)'}`;

/** What an earlier part of the same run has found, and where this one notes what it finds. */
interface Kept {
  readonly reach: string | undefined;
  readonly found: ReadonlyMap<string, Found>;
  readonly note: (mutant: Mutant, found: Found) => void;
}

const keyOf = ({ file, start, to }: Mutant): string => `${file} ${start} ${to}`;

function keptIn(keep: string | undefined): Kept {
  if (keep === undefined) return { reach: undefined, found: new Map(), note: () => undefined };
  mkdirSync(keep, { recursive: true });
  const path = join(keep, 'found');
  const lines = existsSync(path)
    ? readFileSync(path, 'utf8')
        .split('\n')
        .filter((line) => line !== '')
    : [];
  return {
    reach: join(keep, 'reach.json'),
    found: new Map(lines.map((line) => JSON.parse(line) as readonly [string, Found])),
    note: (mutant, found) => appendFileSync(path, `${JSON.stringify([keyOf(mutant), found])}\n`),
  };
}

async function reached(
  folder: string,
  chosen: readonly Mutant[],
  path: string | undefined,
): Promise<readonly TestFile[]> {
  if (path !== undefined && existsSync(path))
    return (JSON.parse(readFileSync(path, 'utf8')) as (Omit<TestFile, 'reaches'> & { reaches: number[] })[]).map(
      (each) => ({ ...each, reaches: new Set(each.reaches) }),
    );
  const tests = await reachOf(folder, chosen, testFiles());
  if (path !== undefined)
    writeFileSync(path, JSON.stringify(tests.map((each) => ({ ...each, reaches: [...each.reaches] }))));
  return tests;
}

const options = optionsOf(process.argv.slice(2));
const say = (line: string): void => void process.stdout.write(`${line}\n`);
const all = options.folders.flatMap(mutantsIn).filter(({ kind }) => (kind === 'code') === options.codes);
const chosen = sampled(all, options);
say(`${all.length} places, ${chosen.length} tried, seed ${options.seed}`);
if (options.list) for (const mutant of chosen) say(shown(mutant));
else {
  const tally: Record<Verdict, number> = { own: 0, other: 0, golden: 0, nothing: 0 };
  const kept = keptIn(options.keep);
  const folder = copied();
  const standing = new Standing(folder);
  try {
    const tests = await reached(folder, chosen, kept.reach);
    say(`${tests.length} files of tests come by ${new Set(tests.flatMap(({ reaches }) => [...reaches])).size} of them`);
    for (const [i, mutant] of chosen.entries()) {
      const known = kept.found.get(keyOf(mutant));
      const before = known?.quick === true && !options.quick ? undefined : known;
      const began = Date.now();
      const found = before ?? (await verdictOn(mutant, i, folder, tests, standing));
      if (before === undefined) kept.note(mutant, found);
      const { verdict, by } = found;
      tally[verdict]++;
      const seconds = before === undefined ? `  ${((Date.now() - began) / 1000).toFixed(1)} s` : '';
      say(
        `${i + 1}  ${verdict === 'nothing' ? 'SURVIVES' : verdict}  ${shown(mutant)}${by === undefined ? '' : `  ${by}`}${seconds}`,
      );
    }
  } finally {
    standing.stop();
    rmSync(folder, { recursive: true, force: true });
  }
  const found = chosen.length - tally.nothing;
  say(
    `found ${found} of ${chosen.length} (${((100 * found) / chosen.length).toFixed(1)} %): by the folder's own tests ${tally.own}, by others ${tally.other}, by golden references alone ${tally.golden}`,
  );
  process.exitCode = tally.nothing > 0 ? 1 : 0;
}
