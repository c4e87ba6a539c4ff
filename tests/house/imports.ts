import { dirname, join } from 'node:path/posix';
import { type Import, importsOf } from './lexer.ts';
import { NEVER_IMPORTED, ORDER, PACKAGES } from './rules.ts';
import { type Finding, lineOf, type SourceFile } from './source.ts';

/** `src/job/model.ts` → `job`; files beside `src/index.ts`, which strings the folders together, count as it does. */
function partOf(path: string): string {
  const [, part = '', ...rest] = path.split('/');
  return rest.length === 0 ? 'index.ts' : part;
}

/** `@scope/name/deep` → `@scope/name`; `node:fs` → `node:`. */
function packageOf(specifier: string): string {
  if (specifier.startsWith('node:')) return 'node:';
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

const isRelative = (specifier: string): boolean => /^\.{1,2}\//.test(specifier);

function targetOf(path: string, specifier: string): string {
  return join(dirname(path), specifier);
}

function checkRelative(file: SourceFile, specifier: string): string | undefined {
  const target = targetOf(file.path, specifier);
  if (target.startsWith('shared/') && target.endsWith('.json')) return undefined;
  if (!target.startsWith('src/')) return `${specifier} lies outside src/ and shared/`;
  if (!/\.(?:ts|json)$/.test(target)) return `${specifier} lacks its ending`;
  const [from, to] = [partOf(file.path), partOf(target)];
  if (from === to) return undefined;
  if (NEVER_IMPORTED.includes(to)) return `${to} is imported by nothing`;
  if (!ORDER.includes(to)) return `${to} is not in the table of folders`;
  // Where the importing file is not in the table, that is said of the file.
  if (!ORDER.includes(from)) return undefined;
  return ORDER.indexOf(to) < ORDER.indexOf(from) ? undefined : `${from} stands above ${to} in the table of folders`;
}

function checkPackage(file: SourceFile, specifier: string): string | undefined {
  const name = packageOf(specifier);
  const allowed = PACKAGES.some(({ from, allowed }) => file.path.startsWith(from) && allowed.includes(name));
  return allowed ? undefined : `the package ${name} is not allowed here`;
}

function checkImport(file: SourceFile, { specifier }: Import): string | undefined {
  if (specifier === undefined) return 'a module named at run time cannot be checked';
  return isRelative(specifier) ? checkRelative(file, specifier) : checkPackage(file, specifier);
}

/** Imports run one way, and each folder keeps to its packages. */
export function checkImports(files: readonly SourceFile[]): Finding[] {
  const findings: Finding[] = [];
  for (const file of files) {
    const add = (line: number, message: string): void => {
      findings.push({ rule: 'imports', path: file.path, line, message });
    };
    if (!ORDER.includes(partOf(file.path))) add(0, `src/${partOf(file.path)} is not in the table of folders`);
    for (const found of importsOf(file.text)) {
      const message = checkImport(file, found);
      if (message !== undefined) add(lineOf(file.text, found.index), message);
    }
  }
  return findings;
}

/** No file reaches itself through its imports, types included. */
export function checkCycles(files: readonly SourceFile[]): Finding[] {
  const graph = new Map(
    files.map((file) => [
      file.path,
      importsOf(file.text).flatMap(({ specifier }) =>
        specifier !== undefined && isRelative(specifier) ? [targetOf(file.path, specifier)] : [],
      ),
    ]),
  );
  const done = new Set<string>();
  const findings: Finding[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    const at = trail.indexOf(path);
    if (at >= 0) {
      findings.push({ rule: 'cycles', path, line: 0, message: [...trail.slice(at), path].join(' → ') });
      return;
    }
    if (done.has(path)) return;
    for (const next of graph.get(path) ?? []) visit(next, [...trail, path]);
    done.add(path);
  };
  for (const path of graph.keys()) visit(path, []);
  return findings;
}

/** What package.json lists is imported, and what is imported is listed: engine and commands under `dependencies`. */
export function checkDependencies(
  files: readonly SourceFile[],
  manifest: { readonly dependencies: Readonly<Record<string, string>> },
): Finding[] {
  const used = new Set(
    files
      .filter((file) => !NEVER_IMPORTED.includes(partOf(file.path)))
      .flatMap((file) => importsOf(file.text))
      .flatMap(({ specifier }) => (specifier === undefined || isRelative(specifier) ? [] : [packageOf(specifier)])),
  );
  used.delete('node:');
  const listed = Object.keys(manifest.dependencies);
  const finding = (message: string): Finding => ({ rule: 'dependencies', path: 'package.json', line: 0, message });
  return [
    ...listed.filter((name) => !used.has(name)).map((name) => finding(`${name} is listed and never imported`)),
    ...[...used].filter((name) => !listed.includes(name)).map((name) => finding(`${name} is imported and not listed`)),
    ...Object.entries(manifest.dependencies)
      .filter(([, version]) => !/^\d/.test(version))
      .map(([name, version]) => finding(`${name} ${version} is not an exact version`)),
  ];
}
