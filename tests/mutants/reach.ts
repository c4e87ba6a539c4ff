import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Mutant } from './sites.ts';
import { type Outcome, runTests } from './tests-in-copy.ts';

/** A file of tests: how long it takes, and which of the mutants stand in functions that it runs. */
export interface TestFile {
  readonly file: string;
  readonly seconds: number;
  readonly reaches: ReadonlySet<number>;
}

interface Insert {
  readonly at: number;
  readonly text: string;
}

const tell = (mark: string): string => `globalThis.__reached?.add(${JSON.stringify(mark)})`;

const markOf = ({ file, within }: Mutant): string => `${file}:${within?.start ?? 'file'}`;

/** The text of a file whose functions tell when they run, those alone that hold a mutant. */
export function telling(text: string, mutants: readonly Mutant[]): string {
  const inserts = new Map<string, readonly Insert[]>();
  for (const mutant of mutants) {
    const { within } = mutant;
    // What runs as a file is read in runs once for all.
    if (within === undefined) continue;
    const mark = tell(markOf(mutant));
    if (within.block) inserts.set(mark, [{ at: within.start + 1, text: `${mark};` }]);
    else
      inserts.set(mark, [
        { at: within.start, text: `(${mark}, ` },
        { at: within.end, text: ')' },
      ]);
  }
  return [...inserts.values()]
    .flat()
    .sort((a, b) => b.at - a.at)
    .reduce((now, { at, text: added }) => now.slice(0, at) + added + now.slice(at), text);
}

const AT_ONCE = 15;
const LIMIT_SECONDS = 900;

/**
 * Runs every file of tests once in the copy, and reads which mutants it comes by: those in functions that it runs, and of
 * what runs as a file is read in those whose file has a function that it runs, or none. Files that fail are left out.
 */
export async function reachOf(
  folder: string,
  mutants: readonly Mutant[],
  tests: readonly string[],
): Promise<readonly TestFile[]> {
  const kept = mkdtempSync(join(tmpdir(), 'reached-'));
  const told = join(kept, 'told');
  const files = [...new Set(mutants.map(({ file }) => file))];
  const texts = new Map(files.map((file) => [file, readFileSync(join(folder, 'src', file), 'utf8')]));
  try {
    writeFileSync(told, '');
    for (const [file, text] of texts) {
      const own = mutants.filter((mutant) => mutant.file === file);
      writeFileSync(join(folder, 'src', file), telling(text, own));
    }
    const ran: Outcome['files'][number][] = [];
    // Hundreds in one process take more memory than it has.
    for (let i = 0; i < tests.length; i += AT_ONCE) {
      const some = tests.slice(i, i + AT_ONCE);
      ran.push(...(await runTests(folder, some, { limit: LIMIT_SECONDS, reached: told })).files);
    }
    const marks = new Map(
      readFileSync(told, 'utf8')
        .split('\n')
        .filter((line) => line !== '')
        .map((line) => JSON.parse(line) as { readonly file: string; readonly marks: readonly string[] })
        .map((line) => [line.file.slice(folder.length + 1), new Set(line.marks)]),
    );
    const all = mutants.map(markOf);
    const known = new Set([...marks.values()].flatMap((each) => [...each]));
    return ran
      .filter(({ passed }) => passed)
      .map(({ file, seconds }) => {
        const own = marks.get(file) ?? new Set<string>();
        const cameBy = (mutant: Mutant, i: number): boolean => {
          if (mutant.within !== undefined) return own.has(all[i]!);
          const beside = [...known].filter((mark) => mark.startsWith(`${mutant.file}:`));
          return beside.length === 0 || beside.some((mark) => own.has(mark));
        };
        return { file, seconds, reaches: new Set(mutants.flatMap((mutant, i) => (cameBy(mutant, i) ? [i] : []))) };
      });
  } finally {
    for (const [file, text] of texts) writeFileSync(join(folder, 'src', file), text);
    rmSync(kept, { recursive: true, force: true });
  }
}
