import type { Layout } from '../../paper/layout.ts';
import type { DrawnDocument } from '../output.ts';

/** One drawing over several pages, as a document. */
export const laidDocument = (name: string, said: string, layout: Layout): DrawnDocument => ({
  name,
  document: layout,
  pages: 'by name',
  tiles: layout.pages.flatMap((page, i) => (page.part === undefined ? [] : [i])),
  whole: layout.drawing,
  said,
  more: layout.advice,
});
