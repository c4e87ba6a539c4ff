import { findBenchSheet } from './documents/bench-sheets.ts';
import type { SheetGrid } from './documents/lists/labels.ts';
import type { Drawing } from './drawing/model.ts';
import { needsRare } from './fonts/coverage.ts';
import type { Size } from './geometry/point.ts';
import { usualPaper } from './job/print.ts';
import { notShown, userTexts } from './job/printed-texts.ts';
import { sheetsDocument } from './paper/sheets.ts';
import { findPaper } from './papers/find.ts';
import { error, fail, type Problem, type Result, succeed } from './problems/problem.ts';
import { UNITS } from './shop/units.ts';
import type { Solved } from './solve-job.ts';
import type { Units } from './units/units.ts';
import { writePdf } from './writers/pdf.ts';

export interface BenchSheetWishes {
  /** Instead of the first job's. */
  readonly paper?: string;
  /** Of the first job, as the shop counts; the others count on. */
  readonly number?: string;
  /** How labels lie on their sheet. */
  readonly grid?: Partial<SheetGrid>;
  /** Where no job is given. */
  readonly units?: Units;
}

export interface MadeBenchSheets {
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly title: string;
  readonly sheets: number;
  readonly drawings: readonly Drawing[];
  /** What the sheets say, as data. */
  readonly record: unknown;
}

/** `ticket.pdf`, `blanks.pdf` and their like for some jobs. Errors: `sheet-unknown`, `sheet-paper`, and the sheet's own. */
export async function makeBenchSheets(
  kind: string,
  jobs: readonly Solved[],
  wishes: BenchSheetWishes = {},
): Promise<Result<MadeBenchSheets>> {
  const entry = findBenchSheet(kind);
  if (!entry.ok) return entry;
  const paper = sheetFor(wishes, jobs[0]);
  if (!paper.ok) return paper;
  const number = [{ text: wishes.number ?? '', path: ['number'] }];
  const texts = [...number, ...jobs.flatMap(({ job }) => userTexts(job))].map(({ text }) => text);
  const rare = needsRare(texts) ? await (await import('./fonts/rare.ts')).prepareRare(texts) : undefined;
  const made = entry.value.make({
    jobs,
    paper: paper.value,
    units: jobs[0]?.job.units ?? wishes.units ?? UNITS,
    ...(wishes.number === undefined ? {} : { number: wishes.number }),
    ...(wishes.grid === undefined ? {} : { grid: wishes.grid }),
    ...(rare === undefined ? {} : { rare }),
  });
  if (!made.ok) return made;
  const { title, sheets, record } = made.value;
  const document = sheetsDocument({ title, subject: entry.value.subject, sheets });
  const files = [{ name: `${kind}.pdf`, bytes: await writePdf(document, rare === undefined ? {} : { rare }) }];
  return succeed({ files, title, sheets: sheets.length, drawings: sheets, record }, [
    ...notShown(number),
    ...jobs.flatMap(({ job, locate }) => locate(notShown(userTexts(job)))),
    ...made.warnings,
  ]);
}

/** A sheet; where the job's own paper is none (a roll, one page), the usual one. */
export function sheetFor(
  { paper, units }: Pick<BenchSheetWishes, 'paper' | 'units'>,
  first: Solved | undefined,
): Result<Size> {
  const unit = first?.job.units ?? units ?? UNITS;
  const path: Problem['path'] = ['print', 'paper'];
  const custom = [...(first?.shop.papers ?? new Map<string, Size>())].map(([id, size]) => ({ id, name: id, ...size }));
  const found = findPaper(paper ?? first?.job.print.paper ?? usualPaper(unit), { custom, unit, path });
  if (!found.ok) return fail(found.problems);
  if (found.value.kind === 'sheet') return large(found.value, path);
  if (paper !== undefined) {
    return fail([error('sheet-paper', path, 'these sheets go on single sheets of paper', 'name one: letter, a4 …')]);
  }
  const usual = findPaper(usualPaper(unit));
  return usual.ok && usual.value.kind === 'sheet' ? succeed(usual.value) : fail([]);
}

/** Readings that are seen at arm's length, two columns of them, take that much. */
const LEAST = { width: 180, height: 200 };

function large({ width, height, name }: Size & { readonly name: string }, path: Problem['path']): Result<Size> {
  if (width >= LEAST.width && height >= LEAST.height) return succeed({ width, height });
  return fail([error('sheet-paper', path, `${name} is too small for readings at arm’s length`, 'take letter or a4')]);
}
