import { type PlacedArtwork, placement } from './documents/placement/placement.ts';
import type { Drawing } from './drawing/model.ts';
import { loadFonts } from './fonts/load.ts';
import { notShown, userTexts } from './job/printed-texts.ts';
import { layOut } from './paper/layout.ts';
import { type DocumentRecord, documentRecord } from './paper/manifest.ts';
import { onPaper } from './paper/on-paper.ts';
import type { LayoutOptions } from './paper/options.ts';
import { type Result, succeed } from './problems/problem.ts';
import { settle } from './settle/settle.ts';
import type { Asked } from './settle/settled.ts';
import type { Solved } from './solve-job.ts';
import { writePdf } from './writers/pdf.ts';

export interface PlacementWishes extends Pick<Asked, 'paper' | 'printer'> {
  readonly extent?: LayoutOptions['extent'];
}

export interface MadePlacement {
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly record: DocumentRecord & {
    readonly artworks: readonly PlacedArtwork[];
    /** How it lies on paper; one sheet where it fits, else by the backing's corners. */
    readonly extent: 'whole' | 'corners';
    readonly summary: string;
    /** Which printer is corrected for, or that none is. */
    readonly printer: string;
  };
  readonly drawing: Drawing;
}

/**
 * `placement.pdf`: on one sheet where that holds the backing at full scale, else on sheets laid on by its corners.
 * Errors: those of the paper and of laying out, `placement-artwork-missing`.
 */
export async function makePlacement(
  { job, shop, mat }: Solved,
  wishes: PlacementWishes = {},
): Promise<Result<MadePlacement>> {
  const settled = settle({ job, shop, uses: ['full scale'], asked: wishes });
  if (!settled.ok) return settled;
  const texts = userTexts(job);
  const words = texts.map(({ text }) => text);
  const fonts = await loadFonts(words, { files: true });
  const made = placement(mat, job, fonts);
  if (!made.ok) return made;
  const { sheet, record } = made.value;
  const lay = (extent: 'whole' | 'corners') =>
    layOut(sheet, {
      ...onPaper(settled.value, job.print, extent),
      fonts,
      title: job.title,
      subject: 'Placement sheet',
    });
  const whole = wishes.extent === 'corners' ? undefined : lay('whole');
  const fits = whole !== undefined && (wishes.extent === 'whole' || !whole.ok || whole.value.sheets === 1);
  const extent = fits ? 'whole' : 'corners';
  const layout = fits ? whole : lay('corners');
  if (!layout.ok) return layout;
  const { summary } = layout.value;
  return succeed(
    {
      files: [{ name: 'placement.pdf', bytes: await writePdf(layout.value, { fonts }) }],
      record: {
        artworks: record,
        extent,
        summary,
        printer: settled.value.stamp,
        ...documentRecord('placement.pdf', layout.value),
      },
      drawing: sheet.drawing,
    },
    [...notShown(texts, fonts), ...layout.warnings],
  );
}
