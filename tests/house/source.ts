import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A file of the house; `path` counts from the top level and has forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

export interface Finding {
  readonly rule: string;
  readonly path: string;
  /** From 1; 0 where the whole file is meant. */
  readonly line: number;
  readonly message: string;
}

export const TOP = join(import.meta.dirname, '..', '..');

/** Every file below `folder` whose name matches, in the order of their paths; what lies in dot folders is not kept. */
export function readTree(folder: string, name: RegExp): SourceFile[] {
  const paths = readdirSync(join(TOP, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && name.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(TOP.length + 1))
    .filter((path) => !path.includes('/.'))
    .sort();
  return paths.map((path) => ({ path, text: readFileSync(join(TOP, path), 'utf8') }));
}

export function lineOf(text: string, index: number): number {
  return text.slice(0, index).split('\n').length;
}

/** One finding for each match of `pattern` in `text`, which has the lines of the file. */
export function findAll(rule: string, file: SourceFile, text: string, pattern: RegExp, why: string): Finding[] {
  return [...text.matchAll(pattern)].map((match) => ({
    rule,
    path: file.path,
    line: lineOf(text, match.index),
    message: `${match[0].trim()}: ${why}`,
  }));
}

export function showFindings(findings: readonly Finding[]): string {
  return findings.map((f) => `${f.path}:${f.line}  ${f.rule}  ${f.message}`).join('\n');
}
