import { readdirSync } from 'node:fs';
import { basename, isAbsolute, join, resolve } from 'node:path';
import { DISK } from '../files/disk.ts';
import { readPlain } from '../files/plain.ts';
import { remark } from '../say.ts';
import { UsageError } from '../usage.ts';

const JOB_FILE = /\.(?:ya?ml|json)$/iu;
/** Of ours, and no jobs. */
const OTHERS = ['shop.yaml', 'day.yaml', 'manifest.json'];
const PATTERN = /[*?[\]{}!]/u;
const DEEPEST = 8;
const MOST_BYTES = 4 * 1024 * 1024;

/**
 * The job files that were named: by themselves, by a pattern (`monday/*.yaml`), or by a folder, which stands for all jobs in it
 * and in the folders below. What a folder or a pattern brings along and is plainly no job is passed over, with a word where it may
 * be a surprise. The shop's file, day's lists and folders of outputs are passed over in silence. In the order in
 * which they were named, within a folder as people count: `2` before `10`. None comes twice.
 */
export async function findJobs(given: readonly string[]): Promise<readonly string[]> {
  const found: string[] = [];
  for (const name of given) {
    const kind = kindOf(name);
    if (kind === 'folder') found.push(...inFolder(name, 0));
    else if (kind === 'absent' && PATTERN.test(name)) found.push(...(await matching(name)));
    // A shell's pattern names the shop's file too; what holds a job is one, whatever it is called.
    else if (given.length === 1 || !OTHERS.includes(basename(name)) || holdsJob(name)) found.push(name);
  }
  if (found.length === 0)
    throw new UsageError(`${given.join(', ')}: there are no jobs in it; name files, or a folder of jobs`);
  return [...new Map(found.reverse().map((file) => [resolve(file), file])).values()].reverse();
}

function kindOf(name: string): 'folder' | 'file' | 'absent' {
  try {
    const kind = DISK.find(name)?.kind;
    return kind === 'folder' ? 'folder' : kind === undefined ? 'absent' : 'file';
  } catch {
    // Whoever reads it says why it cannot be.
    return 'file';
  }
}

async function matching(pattern: string): Promise<readonly string[]> {
  const { glob } = await import('tinyglobby');
  // Elsewhere a backslash keeps a sign from meaning something.
  const asked = process.platform === 'win32' ? pattern.replaceAll('\\', '/') : pattern;
  const names = await glob(asked, {
    dot: false,
    onlyFiles: true,
    expandDirectories: false,
    absolute: isAbsolute(pattern),
  });
  const jobs = names.filter((name) => isJobName(basename(name)) && looksLikeJob(name)).sort(asPeopleCount);
  if (jobs.length === 0) throw new UsageError(`${pattern}: no job is called so; check the pattern and the folder`);
  return jobs;
}

function inFolder(folder: string, depth: number): readonly string[] {
  const entries = listed(folder);
  // What was made is no source of what is to be made.
  if (depth > 0 && entries.some(({ name }) => name === 'manifest.json')) return [];
  return entries
    .filter(({ name }) => !/^[._]/u.test(name) && name !== 'node_modules')
    .sort((a, b) => asPeopleCount(a.name, b.name))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return depth < DEEPEST ? inFolder(path, depth + 1) : [];
      return isJobName(entry.name) && looksLikeJob(path) ? [path] : [];
    });
}

function listed(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    // A folder that is closed to whoever runs this holds none of their jobs.
    return [];
  }
}

const isJobName = (name: string): boolean => JOB_FILE.test(name) && !OTHERS.includes(name);

function looksLikeJob(path: string): boolean {
  if (holdsJob(path)) return true;
  remark(`${path} has neither openings nor a mat, so it is taken for no job and passed over`);
  return false;
}

/** A job has openings, and nothing else of ours has them at the top. One that cannot be read is told by whoever reads it. */
function holdsJob(path: string): boolean {
  let text = '';
  try {
    text = new TextDecoder().decode(readPlain(path, MOST_BYTES));
  } catch {
    return true;
  }
  return /^["']?(?:openings|mat)["']?[ \t]*:|["'](?:openings|mat)["'][ \t]*:/mu.test(text);
}

/** Figures by what they count, all else by its code points: the same order on every machine. */
export function asPeopleCount(a: string, b: string): number {
  const [left, right] = [a, b].map((name) => name.split(/(\d{1,15})/u));
  for (let i = 0; i < Math.min(left!.length, right!.length); i++) {
    const [x, y] = [left![i]!, right![i]!];
    if (i % 2 === 1 && Number(x) !== Number(y)) return Number(x) - Number(y);
    if (x !== y) return x < y ? -1 : 1;
  }
  return left!.length - right!.length;
}
