import type { Drawing } from '../../drawing/model.ts';
import { sheetsDocument } from '../../paper/sheets.ts';
import type { Pictures } from '../../pictures/model.ts';
import { defined } from '../../problems/defined.ts';
import type { Drawn, PageNames } from '../output.ts';
import { countWords } from '../taken.ts';

/** Sheets that each are a drawing of their own, at the size that they are printed. */
export interface Sheets<R> {
  readonly name: string;
  readonly title: string;
  readonly subject: string;
  readonly sheets: readonly Drawing[];
  readonly record: R;
  readonly pictures?: Pictures;
  readonly pages?: PageNames;
  /** What a page of it is called. */
  readonly one?: string;
}

/** An output that is one document of such sheets. */
export function drawnSheets<R>(given: Sheets<R>): Drawn<R> {
  const { name, title, subject, sheets, record, pages, pictures, one = 'sheet' } = given;
  return {
    record,
    title,
    documents: [
      {
        name,
        document: sheetsDocument({ title, subject, sheets }),
        pages: pages ?? 'numbered where there are several',
        said: `${title}, ${countWords(sheets.length, one)}`,
        more: [],
      },
    ],
    drawings: [],
    drawingFormats: [],
    usual: ['pdf'],
    beds: [],
    notes: [],
    ...defined({ pictures }),
  };
}
