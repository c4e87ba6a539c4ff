import { placement } from '../../documents/placement/placement.ts';
import { layOut } from '../../paper/layout.ts';
import { documentRecord } from '../../paper/manifest.ts';
import { onPaper } from '../../paper/on-paper.ts';
import { succeed } from '../../problems/problem.ts';
import type { Draw } from '../output.ts';
import type { Records } from '../records.ts';
import { laidDocument } from './laid-document.ts';

/**
 * On one sheet where that holds the backing at full scale, else on sheets laid on by its corners. Errors: those of laying
 * out, `placement-artwork-missing`.
 */
export const draw: Draw<Records['placement']> = async ({ work, settled }, options) => {
  const { job, mat } = work.jobs[0]!;
  const { fonts } = settled;
  const made = placement(mat, job, fonts);
  if (!made.ok) return made;
  const { sheet, record } = made.value;
  const lay = (extent: 'whole' | 'corners') =>
    // Corners are not joined: nothing is measured from one to another.
    layOut(extent === 'corners' ? { ...sheet, facts: [] } : sheet, {
      ...onPaper(settled, job, extent),
      fonts,
      title: job.title,
      subject: 'Placement sheet',
    });
  const whole = options.extent === 'corners' ? undefined : lay('whole');
  const fits = whole !== undefined && (options.extent === 'whole' || !whole.ok || whole.value.sheets === 1);
  const layout = fits ? whole : lay('corners');
  if (!layout.ok) return layout;
  const { summary } = layout.value;
  const said = { extent: fits ? 'whole' : 'corners', summary, printer: settled.stamp } as const;
  const drawn = {
    record: { artworks: record, ...said, ...documentRecord('placement.pdf', layout.value) },
    title: job.title,
    documents: [{ ...laidDocument('placement', summary, layout.value), more: [] }],
    drawings: [],
    drawingFormats: [],
    usual: ['pdf'],
    beds: [],
    notes: [settled.stamp],
  };
  return succeed(drawn, [...(fits ? made.warnings : []), ...layout.warnings]);
};
