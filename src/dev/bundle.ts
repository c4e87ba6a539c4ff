import { readFile } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { type BuildOptions, build, type Plugin } from 'esbuild';

/** Text of each file to be written, by its path inside `dist/`. */
export type Files = Readonly<Record<string, string>>;

const SHARED: BuildOptions = {
  bundle: true,
  write: false,
  minify: true,
  // ASCII, so that the launcher may read a bundle as Latin 1, which V8 keeps in one byte a character.
  charset: 'ascii',
  legalComments: 'none',
  logLevel: 'warning',
};

/** Every bundle is one function expression, which the launcher calls. */
const WRAPPED: BuildOptions = {
  ...SHARED,
  format: 'cjs',
  platform: 'node',
  target: 'node20',
  mainFields: ['module', 'main'],
  banner: { js: '(function(exports,require,module){' },
  footer: { js: '})' },
  // A bundle runs in a `vm.Script`, which has no import of its own: it becomes a `require`.
  supported: { 'dynamic-import': false },
  // svgdom looks for its own fonts by it, which are never opened.
  define: { 'import.meta.url': '"file:///"' },
};

/** `src/writers/svg.ts` → `writers-svg`. */
function chunkName(top: string, file: string): string {
  return relative(join(top, 'src'), file)
    .replace(/\.[jt]s$/, '')
    .replace(/[^a-z0-9]+/gi, '-');
}

/** Prepared fonts weigh more than all code, so that the bundles share them. */
const HEAVY = /[\\/]src[\\/]fonts[\\/]prepared[\\/][a-z]+\.ts$/;

/**
 * Modules of our own that are imported at run time become bundles of their own, loaded only when they are wanted, and
 * so do heavy ones. They are added to `chunks`, name → file.
 */
function separateChunks(top: string, chunks: Map<string, string>): Plugin {
  return {
    name: 'separate-chunks',
    setup(build) {
      build.onResolve({ filter: /^\.\.?\// }, (args) => {
        if (args.kind === 'entry-point' || !args.importer.startsWith(join(top, 'src'))) return undefined;
        const file = resolve(args.resolveDir, args.path);
        if (args.kind !== 'dynamic-import' && !HEAVY.test(file)) return undefined;
        chunks.set(chunkName(top, file), file);
        return { path: `./${chunkName(top, file)}.js`, external: true };
      });
    },
  };
}

/**
 * In a bundle the table of commands has its one command already loaded, and none of the others: the launcher and
 * `main` take the same word for the command. Beside, esbuild wraps whatever is imported at run time, each module in a
 * function of its own, which would cost more than the whole table is worth.
 */
function loadedAlready(table: string, command: string | undefined): Plugin {
  return {
    name: 'loaded-already',
    setup(build) {
      build.onLoad({ filter: /[\\/]commands\.ts$/ }, async ({ path }) => {
        if (path !== table) return undefined;
        let found = command === undefined;
        const text = (await readFile(path, 'utf8')).replaceAll(/import\('\.\/commands\/([^']+)\.ts'\)/g, (_, name) => {
          found ||= name === command;
          return name === command ? 'Promise.resolve(loaded)' : `Promise.reject(new Error('another bundle has it'))`;
        });
        if (!found) throw new Error(`${path} does not load ${command}`);
        const loaded = command === undefined ? '' : `import * as loaded from './commands/${command}.ts';\n`;
        return { contents: `${loaded}${text}`, loader: 'ts' };
      });
    },
  };
}

/** Packages whose modules do nothing by being loaded, though their manifests do not say so: what is unused falls out. */
const WITHOUT_SIDE_EFFECTS = /[\\/]node_modules[\\/](?:pdf-lib|@pdf-lib[\\/]standard-fonts|yaml)[\\/]/;

const UNUSED_FALLS_OUT: Plugin = {
  name: 'unused-falls-out',
  setup(build) {
    build.onResolve({ filter: /.*/ }, async ({ path, kind, resolveDir, importer, pluginData }) => {
      if (pluginData === 'resolving' || kind !== 'import-statement') return undefined;
      const found = await build.resolve(path, { kind, resolveDir, importer, pluginData: 'resolving' });
      return WITHOUT_SIDE_EFFECTS.test(found.path) ? { path: found.path, sideEffects: false } : undefined;
    });
  },
};

/**
 * Left out of the bundles, since they cost time at the start and are never called. By svgdom text and pictures would be
 * measured, but text goes out as outlines and pictures with their sizes; commander would start other programs.
 */
const NEVER_CALLED: Plugin = {
  name: 'never-called',
  setup(build) {
    build.onResolve({ filter: /^(?:fontkit|image-size|node:child_process)$/ }, ({ path, importer }) =>
      /[\\/]node_modules[\\/](?:svgdom|commander)[\\/]/.test(importer)
        ? { path, namespace: 'never-called' }
        : undefined,
    );
    build.onLoad({ filter: /.*/, namespace: 'never-called' }, ({ path }) => ({
      contents: `exports.default = exports.openSync = exports.spawn = () => {
        throw new Error('${path} is left out of this bundle');
      };`,
    }));
  },
};

export interface BundleRequest {
  /** The folder that holds `src/`. */
  readonly top: string;
  readonly commands: readonly string[];
  readonly version: string;
}

/** One bundle for each command, one for everything else (help, mistakes), and one for each module imported at run time. */
export async function bundleCommands(
  request: BundleRequest,
): Promise<{ files: Files; byCommand: Record<string, string> }> {
  const { top, commands, version } = request;
  const cli = join(top, 'src/cli');
  const chunks = new Map<string, string>();
  const files: Record<string, string> = {};
  const make = async (name: string, source: BuildOptions, ...more: readonly Plugin[]): Promise<void> => {
    const plugins = [separateChunks(top, chunks), NEVER_CALLED, UNUSED_FALLS_OUT, ...more];
    // The ES modules of this package are kept for browsers.
    const alias = { yaml: join(top, 'node_modules/yaml/browser/dist/index.js') };
    const { outputFiles } = await build({ ...WRAPPED, ...source, alias, plugins, absWorkingDir: top });
    files[`${name}.js`] = outputFiles![0]!.text;
  };
  const start = `import { main } from './main.ts';
main(process.argv.slice(2), ${JSON.stringify(version)}).then((code) => { process.exitCode = code; });`;
  const entry: BuildOptions = { stdin: { contents: start, resolveDir: cli, loader: 'ts', sourcefile: 'start.ts' } };
  const table = join(cli, 'commands.ts');
  await Promise.all([
    make('other', entry, loadedAlready(table, undefined)),
    ...commands.map((command) => make(command, entry, loadedAlready(table, command))),
  ]);
  // A chunk may want further ones.
  for (let left = [...chunks]; left.length > 0; left = [...chunks].filter(([name]) => !(`${name}.js` in files)))
    await Promise.all(left.map(([name, file]) => make(name, { entryPoints: [file] })));
  const byCommand = Object.fromEntries([['', 'other.js'], ...commands.map((command) => [command, `${command}.js`])]);
  return { files, byCommand };
}

/** `dist/cli.js` itself, or the copy that makes the caches. */
export async function bundleLauncher(
  top: string,
  folder: string,
  byCommand: Readonly<Record<string, string>>,
  makesCaches: boolean,
): Promise<string> {
  const { outputFiles } = await build({
    ...SHARED,
    entryPoints: [join(top, 'src/dev/launcher.ts')],
    format: 'cjs',
    platform: 'node',
    // Old enough to say which Node it needs.
    target: 'node14',
    banner: { js: '#!/usr/bin/env node' },
    define: {
      FOLDER: JSON.stringify(folder),
      BUNDLES: JSON.stringify(byCommand),
      CACHES_OF: JSON.stringify(`${process.arch} ${process.versions.v8}`),
      MAKES_CACHES: String(makesCaches),
    },
    absWorkingDir: top,
  });
  return outputFiles![0]!.text;
}

/** The library's face as ES modules; packages stay imports, for a bundler or Node to find. */
export async function bundleLibrary(top: string, face: string): Promise<Files> {
  const outdir = join(top, 'dist');
  const { outputFiles } = await build({
    ...SHARED,
    entryPoints: { index: face },
    format: 'esm',
    platform: 'neutral',
    target: 'es2022',
    splitting: true,
    packages: 'external',
    outdir,
    chunkNames: 'chunks/[name]-[hash]',
    outExtension: { '.js': '.mjs' },
    absWorkingDir: top,
  });
  return Object.fromEntries(
    outputFiles!.map((file) => [join(relative(outdir, dirname(file.path)), basename(file.path)), file.text]),
  );
}
