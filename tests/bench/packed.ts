import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';

const TOP = join(import.meta.dirname, '../..');

export interface PackedOptions {
  /** Packages to be measured, from the one to be compared with on. */
  readonly packages: readonly string[];
  readonly nodes: readonly string[];
  readonly runs: number;
}

/** `[--package FILE.tgz …] [--node PROGRAM …] [--runs NUMBER]`; without a package, this checkout as it was built last. */
export function packedOptions(args: readonly string[], runs: number): PackedOptions {
  const { values } = parseArgs({
    args: [...args],
    options: {
      package: { type: 'string', multiple: true },
      node: { type: 'string', multiple: true },
      runs: { type: 'string' },
    },
  });
  return {
    packages: values.package ?? [],
    nodes: values.node ?? [process.execPath],
    runs: values.runs === undefined ? runs : Number(values.runs),
  };
}

export interface Installed {
  readonly name: string;
  /** An otherwise empty folder, in which the package is installed as a user does. */
  readonly folder: string;
  /** The package's own. */
  readonly inside: string;
}

/** Installs every package into a folder of its own below `top`. */
export function install(packages: readonly string[], top: string): readonly Installed[] {
  const files = packages.length > 0 ? packages : [pack(top)];
  return files.map((file, i) => {
    const folder = join(top, `installed-${i + 1}`);
    mkdirSync(folder);
    npm(['install', '--prefix', folder, '--no-audit', '--no-fund', '--ignore-scripts', resolve(file)], folder);
    return { name: basename(file, '.tgz'), folder, inside: join(folder, 'node_modules/matwright') };
  });
}

/** The checkout's package, made of what `npm run build` left. */
function pack(top: string): string {
  const said = npm(['pack', '--ignore-scripts', '--json', '--pack-destination', top], TOP);
  const [{ filename }] = JSON.parse(said) as [{ readonly filename: string }];
  return join(top, filename);
}

function npm(args: readonly string[], cwd: string): string {
  return execFileSync('npm', [...args], { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
}
