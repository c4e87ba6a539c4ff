import { join } from 'node:path';
import { type CodeSplittingGroup, type InputOptions, type OutputOptions, type Plugin, rolldown } from 'rolldown';
import { loadedWhenCalled, type Seldom, STAND_IN } from './loaded-when-called.ts';
import { plainExports } from './plain-exports.ts';

/** Text of each file to be written, by its path inside `dist/`. */
export type Files = Readonly<Record<string, string>>;

/** The ending of CommonJS files, which load faster than ES modules where there are some dozens of them. */
const PROGRAM = 'cli/[name].js';
/** As the launcher finds it. */
const START = './cli/start.js';

/** Packages whose modules do nothing by being loaded, though their manifests do not say so: what is unused falls out. */
const WITHOUT_SIDE_EFFECTS = /[\\/]node_modules[\\/](?:pdf-lib|@pdf-lib[\\/]standard-fonts|yaml)[\\/]/;

const treeshake: NonNullable<InputOptions['treeshake']> = {
  moduleSideEffects: [
    { test: WITHOUT_SIDE_EFFECTS, sideEffects: false },
    { test: /[\\/]src[\\/](?:cli[\\/]start|node|worker)\.ts$/, sideEffects: true },
  ],
};

const neverCalled = (top: string): string => join(top, 'src/dev/never-called.ts');

/** svgdom without what reads fonts, pictures and markup. */
const withoutReaders = (top: string): Readonly<Record<string, string>> => ({
  fontkit: neverCalled(top),
  'image-size': neverCalled(top),
  sax: neverCalled(top),
});

/** pdf-lib without what deflates and inflates: neither is asked of it, and the program would read it for every PDF. */
const withoutDeflate = (top: string): Plugin => ({
  name: 'without-deflate',
  resolveId: (id, importer = '') =>
    id === 'pako' && /[\\/]node_modules[\\/](?:pdf-lib|@pdf-lib[\\/](?:standard-fonts|upng))[\\/]/.test(importer)
      ? neverCalled(top)
      : null,
});

/** Prepared fonts that lie in the package once, for the program and the library: CommonJS, which both can load. */
const FONT_FILES = ['files', 'full', 'outlines'];

const fontsBeside: Plugin = {
  name: 'fonts-beside',
  resolveId(id) {
    const name = FONT_FILES.find((each) => id === `./prepared/${each}.ts`);
    return name === undefined ? null : { id: `../fonts/${name}.js`, external: true };
  },
};

export function bundleFonts(top: string): Promise<Files> {
  const input = Object.fromEntries(FONT_FILES.map((name) => [name, join(top, `src/fonts/prepared/${name}.ts`)]));
  return bundled({ input, cwd: top, platform: 'neutral' }, { format: 'cjs', entryFileNames: 'fonts/[name].js' });
}

/** A selector of svgdom's does it, and none is used. */
const QUIET: NonNullable<InputOptions['checks']> = { eval: false };

/**
 * What is loaded together lies together: a few files that are used nearly whole load faster than dozens of small ones.
 * Each holds what these sources import that none before it holds; whatever else there is falls into files by itself.
 */
export const LOADED_TOGETHER: Readonly<Record<string, readonly string[]>> = {
  commands: ['src/cli/main.ts', 'src/writers/svg/window.ts'],
  solving: ['src/cli/commands/check.ts'],
  outputs: ['src/cli/output/command.ts'],
  pages: [
    'src/documents/bench-page.ts',
    'src/documents/pattern/labels.ts',
    'src/documents/pattern/lettering.ts',
    'src/documents/pattern/words.ts',
    'src/documents/words/back-side.ts',
    'src/documents/words/reverse-corners.ts',
    'src/outputs/rows/sheets.ts',
    'src/text/entries.ts',
    'src/text/signs.ts',
    'src/text/squares.ts',
    'src/text/table.ts',
    'src/writers/pdf/pdf.ts',
  ],
  sheets: ['src/outputs/rows/pattern.ts'],
};

const YAML = 'node_modules/yaml/browser/dist';
const ZOD = 'node_modules/zod/v4/core';

/** What most jobs never come to, by what brings them there; see `loaded-when-called.ts`. */
export const SELDOM: Seldom = {
  'json-schema': [`${ZOD}/json-schema-generator.js`, `${ZOD}/json-schema-processors.js`, `${ZOD}/to-json-schema.js`],
  'yaml-print': [
    `${YAML}/compose/resolve-block-scalar.js`,
    `${YAML}/doc/anchors.js`,
    `${YAML}/doc/applyReviver.js`,
    `${YAML}/doc/createNode.js`,
    `${YAML}/nodes/addPairToJSMap.js`,
    `${YAML}/nodes/toJS.js`,
    `${YAML}/public-api.js`,
    `${YAML}/stringify/stringify.js`,
    `${YAML}/stringify/stringifyCollection.js`,
    `${YAML}/stringify/stringifyComment.js`,
    `${YAML}/stringify/stringifyDocument.js`,
    `${YAML}/stringify/stringifyNumber.js`,
    `${YAML}/stringify/stringifyPair.js`,
    `${YAML}/stringify/stringifyString.js`,
    `${YAML}/visit.js`,
  ],
  problems: [
    'src/mat/sizes/missing.ts',
    'src/problems/nearest.ts',
    'src/read/text/json-slips.ts',
    'src/read/text/yaml-words.ts',
  ],
  reasons: ['src/mat/reasons/reasons.ts', 'src/mat/reasons/seen-sizes.ts', 'src/mat/reasons/size-names.ts'],
  curves: [
    'src/geometry/bridges.ts',
    'src/geometry/fit.ts',
    'src/geometry/loops.ts',
    'src/geometry/near.ts',
    'src/geometry/nearest-on-cubic.ts',
    'src/geometry/parallel.ts',
    'src/shapes/letter-windows.ts',
    'src/shapes/path-data.ts',
    'src/shapes/read-outline.ts',
  ],
  framed: ['src/job/frame.ts', 'src/job/lines.ts'],
  'as-cut': ['src/job/as-cut.ts', 'src/job/change.ts', 'src/mat/as-cut.ts', 'src/mat/snap/group.ts'],
  plans: ['src/stock/board-plans.ts', 'src/stock/layouts.ts', 'src/stock/quote.ts', 'src/stock/waits.ts'],
  'one-page': ['src/paper/one-page.ts', 'src/paper/search/leftover.ts'],
};

function together(top: string): CodeSplittingGroup[] {
  return Object.entries(LOADED_TOGETHER).map(([name, sources]) => {
    const waiting = sources.map((source) => join(top, source));
    const reached = new Set(waiting);
    return {
      name: (id, bundle) => {
        for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
          const imported = next.startsWith(STAND_IN) ? [] : (bundle.getModuleInfo(next)?.importedIds ?? []);
          const more = imported.filter((other) => !reached.has(other));
          waiting.push(...more);
          for (const other of more) reached.add(other);
        }
        return reached.has(id) ? name : null;
      },
      debugName: name,
    };
  });
}

/** The command line: one file for each command and for whatever else is loaded at run time, and what they share. */
export async function bundleProgram(top: string, version: string): Promise<Files> {
  const seldom = loadedWhenCalled(top, SELDOM);
  const files = await bundled(
    {
      input: {
        start: join(top, 'src/cli/start.ts'),
        'day-worker': join(top, 'src/cli/day/worker.ts'),
        ...seldom.input,
      },
      // Its threads load a file of its own, which a bundle would not have.
      external: ['piscina'],
      cwd: top,
      platform: 'node',
      plugins: [fontsBeside, withoutDeflate(top), seldom.plugin],
      // As the groups of files want it.
      preserveEntrySignatures: 'allow-extension',
      treeshake,
      resolve: {
        mainFields: ['module', 'main'],
        alias: {
          ...withoutReaders(top),
          'node:child_process': neverCalled(top),
          // The ES modules of this package are kept for browsers.
          yaml: join(top, 'node_modules/yaml/browser/dist/index.js'),
        },
      },
      transform: { define: { VERSION: JSON.stringify(version) } },
      checks: QUIET,
    },
    // As `var` whatever stands at the top is read without asking whether it is there yet.
    {
      format: 'cjs',
      dynamicImportInCjs: false,
      topLevelVar: true,
      entryFileNames: PROGRAM,
      chunkFileNames: PROGRAM,
      codeSplitting: { groups: together(top), includeDependenciesRecursively: false },
    },
  );
  return Object.fromEntries(Object.entries(files).map(([name, code]) => [name, plainExports(name, code)]));
}

/** `dist/cli.js` itself. */
export function bundleLauncher(top: string): Promise<Files> {
  return bundled(
    {
      input: { cli: join(top, 'src/dev/launcher.ts') },
      cwd: top,
      platform: 'node',
      transform: { target: 'node14', define: { PROGRAM: JSON.stringify(START) } },
    },
    { format: 'cjs', banner: '#!/usr/bin/env node', entryFileNames: '[name].js' },
  );
}

/**
 * The library for browsers, for Node and for workers as ES modules. Packages stay imports, for a bundler or Node to find,
 * but for svgdom in workers, since what it reads files with is no matter for a browser.
 */
export function bundleLibrary(top: string): Promise<Files> {
  const noFiles = join(top, 'src/dev/no-files.ts');
  const entry = (name: string): string => join(top, `src/${name}.ts`);
  return bundled(
    {
      input: { index: entry('index'), node: entry('node'), worker: entry('worker') },
      cwd: top,
      platform: 'neutral',
      plugins: [fontsBeside],
      treeshake,
      external: (id, importer = '') =>
        /^[^./]/.test(id) && importer !== entry('worker') && !/[\\/]node_modules[\\/]svgdom[\\/]/.test(importer),
      resolve: { alias: { ...withoutReaders(top), path: noFiles, 'node:path': noFiles, 'node:url': noFiles } },
      // Where svgdom's fonts would lie.
      transform: { define: { 'import.meta.url': '""' } },
      checks: QUIET,
    },
    { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: 'chunks/[name]-[hash].mjs' },
  );
}

async function bundled(source: InputOptions, wanted: OutputOptions): Promise<Files> {
  const bundle = await rolldown({ ...source, logLevel: 'warn' });
  try {
    const { output } = await bundle.generate({ ...wanted, minify: true, comments: false, charset: 'ascii' });
    return Object.fromEntries(output.flatMap((file) => (file.type === 'chunk' ? [[file.fileName, file.code]] : [])));
  } finally {
    await bundle.close();
  }
}
