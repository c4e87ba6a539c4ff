import { createHash } from 'node:crypto';
import { type Dirent, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { readPlain } from '../files/plain.ts';
import { ChangedMeanwhile } from '../files/plan.ts';
import { write, writeAll } from '../output/output.ts';
import { UsageError } from '../usage.ts';
import { pathInside } from './inside.ts';

/** Bytes of a text, and of a picture, that are read. */
const MOST_TEXT = 4 * 1024 * 1024;
const MOST_PICTURE = 200 * 1024 * 1024;
const MOST_FILES = 2_000;
const DEEPEST = 6;

const TEXT = /\.(?:ya?ml|json)$/iu;
const PICTURE = /\.(?:jpe?g|png|svg)$/iu;
const OUTPUT = /\.(?:pdf|svg|dxf|plt|png|zip)$/iu;

/** A refusal, with the status that says of which kind. */
export class Refused extends Error {
  constructor(
    readonly status: 400 | 404 | 409 | 413,
    message: string,
  ) {
    super(message);
  }
}

export interface Held {
  readonly bytes: Uint8Array;
  /** What its bytes are known by: who saves over them must name it. */
  readonly mark: string;
}

const markOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

function pathOf(folder: string, name: string, kinds: readonly RegExp[]): string {
  const path = kinds.some((kind) => kind.test(name)) ? pathInside(folder, name) : undefined;
  if (path === undefined) throw new Refused(404, `${JSON.stringify(name)} is no file of this folder`);
  return path;
}

/** Names of jobs, shops and pictures in the folder and those below it. */
export function filesIn(folder: string): readonly string[] {
  const found: string[] = [];
  const look = (at: string, before: string, depth: number): void => {
    for (const entry of entries(at)) {
      if (found.length >= MOST_FILES) return;
      const name = `${before}${entry.name}`;
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      if (entry.isDirectory() && depth < DEEPEST) look(join(at, entry.name), `${name}/`, depth + 1);
      else if (entry.isFile() && (TEXT.test(name) || PICTURE.test(name))) found.push(name);
    }
  };
  look(folder, '', 0);
  return found.sort();
}

/** A folder that cannot be looked into is passed over. */
function entries(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    return [];
  }
}

export function read(folder: string, name: string): Held {
  const path = pathOf(folder, name, [TEXT, PICTURE]);
  try {
    const bytes = readPlain(path, TEXT.test(name) ? MOST_TEXT : MOST_PICTURE);
    return { bytes, mark: markOf(bytes) };
  } catch (problem) {
    throw new Refused(404, problem instanceof Error ? problem.message : String(problem));
  }
}

/** Saves a text over the one of that mark, or where there is none yet (no mark); gives its new mark. */
export async function save(folder: string, name: string, bytes: Uint8Array, over: string | undefined): Promise<string> {
  const path = pathOf(folder, name, [TEXT]);
  const was = over === undefined ? null : read(folder, name);
  if (was !== null && was.mark !== over) throw new Refused(409, `${name} was changed by something else meanwhile`);
  await writing(() => write([{ file: path, bytes, was: was === null ? null : was.bytes }]));
  return markOf(bytes);
}

/** Writes outputs into a folder beside the jobs, all or none. */
export async function saveOutputs(
  folder: string,
  into: string,
  files: readonly { readonly name: string; readonly bytes: Uint8Array }[],
): Promise<void> {
  const paths = files.map(({ name }) => pathOf(folder, `${into}/${name}`, [OUTPUT]));
  const [first] = paths;
  if (first === undefined) throw new Refused(400, 'there is nothing to write');
  if (files.some(({ name }) => name.includes('/'))) throw new Refused(404, 'outputs lie in one folder');
  await writing(() => writeAll(dirname(first), files));
}

let before: Promise<unknown> = Promise.resolve();

/** One after the other: what is asked for at once is written in turn. */
function writing(work: () => Promise<void>): Promise<void> {
  const turn = before.then(work).catch((problem: unknown) => {
    if (problem instanceof ChangedMeanwhile) throw new Refused(409, problem.message);
    if (problem instanceof UsageError) throw new Refused(400, problem.message);
    throw problem;
  });
  before = turn.catch(() => undefined);
  return turn;
}
