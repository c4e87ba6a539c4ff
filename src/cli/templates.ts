import { readdir, readFile, realpath } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { nearest } from '../problems/nearest.ts';
import { UsageError } from './usage.ts';

export interface Template {
  readonly name: string;
  /** When to use it, from the comment that it opens with. */
  readonly summary: string;
  readonly text: string;
}

/** Beside the program, or in the folder that it is run in while it is being worked on. */
async function folder(): Promise<string> {
  const program = await realpath(process.argv[1] ?? '.').catch(() => '.');
  for (const top of [join(dirname(program), '..'), '.']) {
    const names = await readdir(join(top, 'templates')).catch(() => [] as string[]);
    if (names.includes('single.yaml')) return join(top, 'templates');
  }
  throw new Error('the templates that belong to the program are missing; install it anew');
}

/** Starters of jobs, by name; `shop` is not among them. */
export async function templates(): Promise<readonly Template[]> {
  const from = await folder();
  const names = (await readdir(from)).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml').sort();
  return Promise.all(
    names.map(async (file) => {
      const text = await readFile(join(from, file), 'utf8');
      return { name: file.replace(/\.yaml$/u, ''), summary: summaryOf(text), text };
    }),
  );
}

export async function shopTemplate(): Promise<string> {
  return readFile(join(await folder(), 'shop.yaml'), 'utf8');
}

/** The first sentence of the comment. */
export function summaryOf(text: string): string {
  const comment: string[] = [];
  for (const line of text.split('\n')) {
    if (!line.startsWith('# ')) break;
    comment.push(line.slice(2));
  }
  return /^.*?\.(?= |$)/u.exec(comment.join(' '))?.[0] ?? comment.join(' ');
}

export function chosen(name: string, all: readonly Template[]): Template {
  const found = all.find((template) => template.name === name.toLowerCase());
  if (found !== undefined) return found;
  const near = nearest(
    name,
    all.map((template) => template.name),
  );
  const names = all.map((template) => template.name).join(', ');
  throw new UsageError(
    `there is no template ${JSON.stringify(name)}${near === undefined ? '' : `; did you mean ${near}?`} (${names})`,
  );
}
