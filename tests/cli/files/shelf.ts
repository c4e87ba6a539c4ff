import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Piece } from '../../../src/cli/files/plan.ts';

export const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** What is in a folder and below it, hidden files too: path → text. */
export type Contents = Readonly<Record<string, string>>;

/**
 * Outputs and a file that people write in: two outputs that are there already, one that is not, in a folder of their own, and the
 * shop's file in another.
 */
export const OLD: Contents = {
  'out/stock.pdf': 'old plan',
  'out/stock-1.svg': 'old page',
  'shop/shop.yaml': 'old shop',
};
export const NEW: Contents = {
  'out/stock.pdf': 'new plan',
  // The same bytes again, as a plan of the same jobs often has.
  'out/stock-1.svg': 'old page',
  'out/stock-2.svg': 'another page',
  'shop/shop.yaml': 'new shop',
};

/** The shop's file first, though it has to be the last that is renamed. */
export function pieces(top: string): readonly Piece[] {
  const at = (path: string): Piece => ({ file: join(top, path), bytes: bytes(NEW[path]!) });
  const outputs = Object.keys(NEW).filter((path) => path !== 'shop/shop.yaml');
  return [{ ...at('shop/shop.yaml'), was: bytes(OLD['shop/shop.yaml']!) }, ...outputs.map(at)];
}

/** In memory where the system has such a folder: thousands of sets are written here. */
const TEMPORARY = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();

function folderWith(contents: Contents): string {
  const top = mkdtempSync(join(TEMPORARY, 'matwright-'));
  put(top, contents);
  return top;
}

export function put(top: string, contents: Contents): void {
  for (const [path, text] of Object.entries(contents)) {
    mkdirSync(dirname(join(top, path)), { recursive: true });
    writeFileSync(join(top, path), text);
  }
}

export function contents(top: string): Contents {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(top, { recursive: true, withFileTypes: true })) {
    if (entry.isDirectory()) continue;
    const path = join(entry.parentPath, entry.name);
    found[path.slice(top.length + 1)] = existsSync(path) ? readFileSync(path, 'utf8') : 'leads nowhere';
  }
  return found;
}

export async function inFolder<T>(given: Contents, work: (top: string) => T | Promise<T>): Promise<T> {
  const top = folderWith(given);
  try {
    return await work(top);
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
}
