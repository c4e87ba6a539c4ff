import { createContext, runInContext } from 'node:vm';
import { type BuildOptions, build, type Metafile } from 'esbuild';

/** One classic script for a browser, with nothing but the bundler's own ways: no plugins, nothing left out. */
export async function forBrowser(
  source: NonNullable<BuildOptions['stdin']>,
): Promise<{ readonly text: string; readonly meta: Metafile }> {
  const { outputFiles, metafile, warnings } = await build({
    stdin: source,
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    platform: 'browser',
    format: 'iife',
    globalName: 'matwright',
    target: 'es2022',
    logLevel: 'silent',
  });
  // Chunks name each other for their order; nothing in them acts by being loaded alone, as the package says of them.
  const serious = warnings.filter(({ id }) => id !== 'direct-eval' && id !== 'ignored-bare-import');
  if (serious.length > 0) throw new Error(serious.map(({ id, text }) => `${id}: ${text}`).join('\n'));
  return { text: outputFiles[0]!.text, meta: metafile };
}

/** What a worker in a browser has, and nothing of Node. */
const WORKER = {
  TextEncoder,
  TextDecoder,
  URL,
  Blob,
  structuredClone,
  atob,
  btoa,
  queueMicrotask,
  setTimeout,
  clearTimeout,
  DecompressionStream,
};

/** Runs the script as in a worker; gives back what its expression comes to, as plain data of this side. */
export async function inWorker(script: string, expression: string, given: object = {}): Promise<unknown> {
  const context = createContext({ ...WORKER, given: structuredClone(given) });
  runInContext(script, context);
  const made: unknown = await runInContext(`(async () => (${expression}))()`, context);
  return structuredClone(made);
}
