import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Failure, Outputs } from './compare.ts';

const TOP = join(import.meta.dirname, '../..');
const REFERENCES = join(TOP, 'golden');
const OUT = join(import.meta.dirname, '.out');

const listed = (folder: string): string[] => {
  try {
    return readdirSync(folder).filter((name) => !name.startsWith('.'));
  } catch {
    return [];
  }
};

export const referenceFolders = (references = REFERENCES): string[] => listed(references);

export function readReferences(name: string, references = REFERENCES): Outputs {
  const folder = join(references, name);
  return new Map(listed(folder).map((file) => [file, readFileSync(join(folder, file))]));
}

/** Makes the references agree with what was made: writes those that are missing or differ, removes orphans. */
export function writeReferences(failures: readonly Failure[], references = REFERENCES): void {
  for (const { case: name, file, kind, actual } of failures) {
    const path = join(references, name, file);
    if (kind === 'orphan') rmSync(path, { recursive: true });
    if (actual === undefined || kind === 'heavy') continue;
    mkdirSync(join(references, name), { recursive: true });
    writeFileSync(path, actual);
  }
}

const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);

/** Lays expected, actual and difference side by side in a page to look at; a case without failures leaves it. */
export function showFailures(name: string, failures: readonly Failure[], out = OUT): void {
  const folder = join(out, name);
  rmSync(folder, { recursive: true, force: true });
  if (failures.length > 0) mkdirSync(folder, { recursive: true });
  const rows = failures.map((failure) => {
    const cells = (['expected', 'actual', 'difference'] as const).map((kind) => {
      const bytes = failure[kind];
      if (bytes === undefined) return '<td></td>';
      const file = failure.file.replace(/(\.[a-z]+)$/, `.${kind}$1`);
      writeFileSync(join(folder, file), bytes);
      const link = `${escaped(name)}/${escaped(file)}`;
      const shown = /\.(?:png|svg)$/.test(file) ? `<img src="${link}" alt="${kind}">` : kind;
      return `<td><a href="${link}">${shown}</a></td>`;
    });
    const title = `${failure.case}/${failure.file}: ${failure.kind}, ${failure.detail}`;
    return `<tr><th colspan="3">${escaped(title)}</th></tr>\n<tr>${cells.join('')}</tr>`;
  });
  if (failures.length > 0) writeFileSync(join(folder, 'rows.html'), rows.join('\n'));
  writeIndex(out);
}

function writeIndex(out: string): void {
  const rows = listed(out)
    .filter((name) => !name.endsWith('.html'))
    .map((name) => readFileSync(join(out, name, 'rows.html'), 'utf8'));
  if (rows.length === 0) {
    rmSync(out, { recursive: true, force: true });
    return;
  }
  const page = `<!doctype html>
<meta charset="utf-8">
<title>Golden references that differ</title>
<style>
  body { font: 14px sans-serif } table { width: 100%; table-layout: fixed } th { text-align: left; padding-top: 2em }
  td { vertical-align: top } img { width: 100%; border: 1px solid #999 }
</style>
<table>
<tr><th>expected</th><th>actual</th><th>difference</th></tr>
${rows.join('\n')}
</table>
`;
  writeFileSync(join(out, 'index.html'), page);
}
