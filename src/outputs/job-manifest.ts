import type { Report } from '../bench/report.ts';
import type { PageRecord } from '../paper/manifest.ts';
import { defined } from '../problems/defined.ts';
import type { Problem } from '../problems/problem.ts';
import type { Records } from './records.ts';
import type { OutputFile } from './write.ts';

/** What `manifest.json` says: the files, of every page what it shows and where, and what each output says of itself. */
export interface Manifest extends Partial<Omit<Records, 'pattern' | 'cutfile' | 'stock' | 'jig'>>, Report {
  readonly title: string;
  readonly number?: string;
  readonly due?: string;
  readonly files: readonly string[];
  /** So many pages come out of the printer. */
  readonly sheets: number;
  readonly pages: readonly PageRecord[];
  readonly board?: Records['pattern'][number]['board'];
  readonly patterns: Records['pattern'];
  readonly cutfiles: Records['cutfile'];
  readonly warnings: readonly Problem[];
}

export function manifestOf(
  report: Report,
  { number, due }: { readonly number: string | undefined; readonly due: string | undefined },
  files: readonly OutputFile[],
  sheets: number,
  { pattern = [], cutfile = [], ...records }: Partial<Records>,
  warnings: readonly Problem[],
): Manifest {
  const board = pattern[0]?.board;
  return {
    ...report,
    ...defined({ number, due }),
    files: files.map(({ name }) => name),
    sheets,
    pages: [...pattern.flatMap(({ pages }) => pages), ...(records.placement?.pages ?? [])],
    ...defined({ board }),
    patterns: pattern,
    ...records,
    cutfiles: cutfile,
    // The folder may be moved: what it says of itself holds no ways of this machine.
    warnings: warnings.map((problem) =>
      problem.file === undefined ? problem : { ...problem, file: lastPart(problem.file) },
    ),
  };
}

const lastPart = (file: string): string => file.slice(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);

export const MANIFEST = 'manifest.json';

/** With what its caller has to say beside. */
export const manifestFile = (manifest: object): OutputFile => ({
  name: MANIFEST,
  bytes: new TextEncoder().encode(`${JSON.stringify(manifest, null, 2)}\n`),
});
