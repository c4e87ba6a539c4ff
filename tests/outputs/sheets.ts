import type { Drawing } from '../../src/drawing/model.ts';
import type { Prepared } from '../../src/index.ts';

/** What stands first on each page of an output, where each page is one drawing. */
export const sheetsIn = ({ drawn }: Prepared): readonly Drawing[] =>
  drawn.documents.flatMap(({ document }) => document.pages.map(({ frames }) => frames[0]!.drawing));
