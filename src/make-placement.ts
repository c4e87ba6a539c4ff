import { type PlacedArtwork, placement } from './documents/placement/placement.ts';
import type { Drawing } from './drawing/model.ts';
import { needsRare } from './fonts/coverage.ts';
import { notShown, userTexts } from './job/printed-texts.ts';
import { layOut } from './paper/layout.ts';
import { type DocumentRecord, documentRecord } from './paper/manifest.ts';
import { onPaper, type PaperWishes } from './paper/on-paper.ts';
import { type Result, succeed } from './problems/problem.ts';
import type { Solved } from './solve-job.ts';
import { writePdf } from './writers/pdf.ts';

export interface MadePlacement {
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly record: DocumentRecord & {
    readonly artworks: readonly PlacedArtwork[];
    /** How it lies on paper; one sheet where it fits, else by the backing's corners. */
    readonly extent: 'whole' | 'corners';
    readonly summary: string;
  };
  readonly drawing: Drawing;
}

/**
 * `placement.pdf`: on one sheet where that holds the backing at full scale, else on sheets laid on by its corners.
 * Errors: those of the paper and of laying out, `placement-artwork-missing`.
 */
export async function makePlacement(
  { job, shop, mat }: Solved,
  wishes: PaperWishes = {},
): Promise<Result<MadePlacement>> {
  const printed = onPaper(job, shop, wishes);
  if (!printed.ok) return printed;
  const texts = userTexts(job);
  const words = texts.map(({ text }) => text);
  const rare = needsRare(words) ? await (await import('./fonts/rare.ts')).prepareRare(words) : undefined;
  const made = placement(mat, job, rare);
  if (!made.ok) return made;
  const { sheet, record } = made.value;
  const optional = rare === undefined ? {} : { rare };
  const lay = (extent: 'whole' | 'corners') =>
    layOut(sheet, {
      ...printed.value,
      ...optional,
      extent,
      title: job.title,
      subject: 'Placement sheet',
      units: job.units,
    });
  const whole = wishes.extent === 'corners' ? undefined : lay('whole');
  const fits = whole !== undefined && (wishes.extent === 'whole' || !whole.ok || whole.value.sheets === 1);
  const extent = fits ? 'whole' : 'corners';
  const layout = fits ? whole : lay('corners');
  if (!layout.ok) return layout;
  const { summary } = layout.value;
  return succeed(
    {
      files: [{ name: 'placement.pdf', bytes: await writePdf(layout.value, optional) }],
      record: { artworks: record, extent, summary, ...documentRecord('placement.pdf', layout.value) },
      drawing: sheet.drawing,
    },
    [...notShown(texts), ...layout.warnings],
  );
}
