import { cp, mkdir, mkdtemp, readdir, readFile, realpath, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, extname, join } from 'node:path';
import { main } from '../../cli/main.ts';
import { type CommandLine, commandLines } from './command-line.ts';

/** What a block of commands said, output and errors in their order, and how its last command ended. */
export interface Said {
  readonly code: number;
  readonly text: string;
}

/** A folder of its own with the examples in it, where a page's commands are typed one after the other. */
export interface Terminal {
  run(block: string): Promise<Said>;
  write(file: string, text: string): Promise<void>;
  read(file: string): Promise<Buffer>;
  /** Of all files that lie there, with their folders and without. */
  names(): Promise<ReadonlySet<string>>;
  close(): Promise<void>;
}

/** How transcripts name the folder that they were made in. */
const HERE = '/home/me/mats';

/** What a reader does before the first page, and what is there already where the guide is made. */
const DONE: readonly string[] = [
  'npm init -y',
  'npm install ./matwright-0.1.0.tgz',
  'cp -r node_modules/matwright/examples .',
];

/** `top` holds the examples, `built` is the program's `cli.js`: what lies beside it is looked for there. */
export async function openTerminal(top: string, built: string): Promise<Terminal> {
  const folder = await realpath(await mkdtemp(join(tmpdir(), 'matwright-guide-')));
  await cp(join(top, 'examples'), join(folder, 'examples'), {
    recursive: true,
    filter: (file) => !/guide$/.test(file),
  });
  const run = async (block: string): Promise<Said> => {
    let said: Said = { code: 0, text: '' };
    for (const line of commandLines(block)) {
      const { code, text } = await inFolder(folder, built, () => typed(line));
      said = { code, text: said.text + text.replaceAll(folder, HERE) };
    }
    return said;
  };
  return {
    run,
    write: (file, text) => writeFile(join(folder, file), text),
    read: (file) => readFile(join(folder, file)),
    names: async () => new Set((await readdir(folder, { recursive: true })).flatMap((path) => [path, basename(path)])),
    close: () => rm(folder, { recursive: true, force: true }),
  };
}

async function typed({ words, into }: CommandLine): Promise<Said> {
  const line = words.join(' ');
  if (DONE.includes(line)) return { code: 0, text: '' };
  const [first, second, ...rest] = words;
  if (first === 'mkdir' && second !== undefined && rest.length === 0) {
    await mkdir(second);
    return { code: 0, text: '' };
  }
  if (first !== 'npx' || second !== 'matwright') throw new Error(`the guide knows no way to run: ${line}`);
  const { code, all, out, err } = await program(await expanded(rest));
  if (into === undefined) return { code, text: all };
  await writeFile(into, out);
  return { code, text: err };
}

/** Names that stand for several, as a shell gives them: `monday/*.yaml`. */
async function expanded(words: readonly string[]): Promise<readonly string[]> {
  const lists = words.map(async (word) => {
    const ending = extname(word);
    if (basename(word) !== `*${ending}`) return [word];
    const names = (await readdir(dirname(word))).filter((name) => name.endsWith(ending)).sort();
    return names.map((name) => `${dirname(word)}/${name}`);
  });
  return (await Promise.all(lists)).flat();
}

/** The program in this process, its words caught in the order in which they come. */
async function program(args: readonly string[]) {
  const words = { all: '', out: '', err: '' };
  const before = { out: process.stdout.write, err: process.stderr.write, code: process.exitCode };
  const into = (name: 'out' | 'err') => (chunk: string | Uint8Array) => {
    words.all += String(chunk);
    words[name] += String(chunk);
    return true;
  };
  process.stdout.write = into('out');
  process.stderr.write = into('err');
  process.exitCode = undefined;
  try {
    return { code: await main(args, 'guide'), ...words };
  } finally {
    process.stdout.write = before.out;
    process.stderr.write = before.err;
    process.exitCode = before.code;
  }
}

/** As if it were typed there, by the built program, where nobody can be asked anything. */
async function inFolder<T>(folder: string, built: string, work: () => Promise<T>): Promise<T> {
  const before = { folder: process.cwd(), program: process.argv[1], asks: process.stdin.isTTY };
  process.chdir(folder);
  process.argv[1] = built;
  process.stdin.isTTY = false;
  try {
    return await work();
  } finally {
    process.chdir(before.folder);
    process.argv[1] = before.program!;
    process.stdin.isTTY = before.asks;
  }
}
