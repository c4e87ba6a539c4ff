import { findBenchSheet } from './documents/bench-sheets.ts';
import type { SheetGrid } from './documents/lists/labels.ts';
import type { Drawing } from './drawing/model.ts';
import { loadFonts } from './fonts/load.ts';
import { notShown, userTexts } from './job/printed-texts.ts';
import { sheetsDocument } from './paper/sheets.ts';
import { type Result, succeed } from './problems/problem.ts';
import { settle } from './settle/settle.ts';
import type { Asked } from './settle/settled.ts';
import { NO_SHOP } from './shop/shop.ts';
import type { Solved } from './solve-job.ts';
import { writePdf } from './writers/pdf.ts';

/** Paper and printer instead of the first job's; the other jobs count on from the number; units where no job is given. */
export interface BenchSheetWishes extends Pick<Asked, 'paper' | 'printer' | 'number' | 'units'> {
  /** How labels lie on their sheet. */
  readonly grid?: Partial<SheetGrid>;
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
  const [first] = jobs;
  const settled = settle({
    shop: first?.shop ?? NO_SHOP,
    uses: ['readings'],
    asked: wishes,
    ...(first === undefined ? {} : { job: first.job }),
  });
  if (!settled.ok) return settled;
  const number = [{ text: wishes.number ?? '', path: ['number'] }];
  const texts = [...number, ...jobs.flatMap(({ job }) => userTexts(job))].map(({ text }) => text);
  const fonts = await loadFonts(texts, { files: true });
  const made = entry.value.make({
    jobs,
    paper: settled.value.sheet,
    units: settled.value.units,
    ...(wishes.number === undefined ? {} : { number: wishes.number }),
    ...(wishes.grid === undefined ? {} : { grid: wishes.grid }),
    fonts,
  });
  if (!made.ok) return made;
  const { title, sheets, record } = made.value;
  const document = sheetsDocument({ title, subject: entry.value.subject, sheets });
  const files = [{ name: `${kind}.pdf`, bytes: await writePdf(document, { fonts }) }];
  return succeed({ files, title, sheets: sheets.length, drawings: sheets, record }, [
    ...notShown(number, fonts),
    ...jobs.flatMap(({ job, locate }) => locate(notShown(userTexts(job), fonts))),
    ...made.warnings,
  ]);
}
