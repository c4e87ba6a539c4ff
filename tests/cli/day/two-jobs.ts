import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { type Ran, run } from '../run.ts';

export const SHOP = `units: mm
boards: {bone: {thickness: 1.4}, slate: {thickness: 3.2}}
machines:
  laser: {kerf: 0.2, format: svg}
  knife: {offset: 0.25, thickest: 2, format: dxf}
`;
export const ONE =
  'title: One\nunits: mm\nmat: {outer: 200 x 250, layers: [{board: bone}]}\nopenings: [{artwork: 120 x 160}]\n';
/** Of a board that the knife does not cut. */
export const TWO =
  'title: Two\nunits: mm\nmat: {outer: 180 x 180, layers: [{board: slate}]}\nopenings: [{size: 90 x 90}]\n';

export interface TwoJobs {
  readonly at: (...names: readonly string[]) => string;
  /** What lies in a folder, without the list of what was made there. */
  readonly made: (...names: readonly string[]) => Promise<readonly string[]>;
  /** `make` of the whole folder, into `out` in it. */
  readonly out: (...more: readonly string[]) => Promise<Ran>;
  readonly edit: (name: string, from: string | RegExp, to: string) => Promise<void>;
}

/** A new folder with two jobs and a shop for each test of a file. */
export function twoJobs(): TwoJobs {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'matwright-'));
    for (const [name, text] of Object.entries({ 'shop.yaml': SHOP, 'one.yaml': ONE, 'two.yaml': TWO }))
      await writeFile(join(folder, name), text);
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));
  const at = (...names: readonly string[]): string => join(folder, ...names);
  return {
    at,
    made: async (...names) => (await readdir(at(...names))).filter((name) => name !== '.matwright.json').sort(),
    out: (...more) => run(['make', folder, '--out', at('out'), ...more]),
    edit: async (name, from, to) => {
      const text = await readFile(at(name), 'utf8');
      const edited = text.replace(from, to);
      if (edited === text) throw new Error(`${name} holds no ${from}`);
      await writeFile(at(name), edited);
    },
  };
}
