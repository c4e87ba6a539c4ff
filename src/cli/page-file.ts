import { readFile, realpath } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { SourceFile } from './input.ts';

/** JSON that can stand in an element of a page: nothing in it ends the element. */
export const elementJson = (value: unknown): string => JSON.stringify(value).replaceAll('<', '\\u003c');

/** The page's file, beside the program or where the build puts it. */
async function emptyPage(): Promise<string> {
  const program = await realpath(process.argv[1] ?? '.').catch(() => '.');
  for (const folder of [dirname(program), 'dist']) {
    const text = await readFile(join(folder, 'matwright.html'), 'utf8').catch(() => undefined);
    if (text !== undefined) return text;
  }
  throw new Error('the page that belongs to the program is missing; install it anew');
}

export interface CarriedJob {
  /** As the page says it. */
  readonly name: string;
  readonly summary: string;
  readonly text: string;
}

/** The shop's file, and its mark where it names one. */
export interface CarriedShop extends SourceFile {
  readonly mark?: { readonly name: string; readonly base64: string };
}

/** The page with a shop and jobs in it. */
export const pageWith = (shop: CarriedShop | undefined, jobs: readonly CarriedJob[]): Promise<string> =>
  filled([
    ['shop', 'null', shop ?? null],
    ['pieces', '[]', jobs],
  ]);

/** The page as a server gives it: it may ask that server, below `base`, and nobody else. */
export async function servedPage(base: string, folder: string): Promise<string> {
  const html = await filled([['served', 'null', { base, folder }]]);
  const [before, after, ...more] = html.split("connect-src 'none'");
  if (before === undefined || after === undefined || more.length > 0)
    throw new Error('the page has no one rule of what it may ask');
  return `${before}connect-src 'self'${after}`;
}

async function filled(values: readonly (readonly [id: string, empty: string, value: unknown])[]): Promise<string> {
  let html = await emptyPage();
  for (const [id, empty, value] of values) {
    const element = (json: string): string => `<script type="application/json" id="${id}">${json}</script>`;
    const [before, after, ...more] = html.split(element(empty));
    if (before === undefined || after === undefined || more.length > 0)
      throw new Error(`the page has no one place for ${id}`);
    html = `${before}${element(elementJson(value))}${after}`;
  }
  return html;
}
