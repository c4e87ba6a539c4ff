import type { Drawing } from '../drawing/model.ts';
import type { Document, Page } from './model.ts';

export interface SheetsRequest {
  readonly title: string;
  readonly subject: string;
  /** Each as large as its paper; at least one. */
  readonly sheets: readonly Drawing[];
  /** Of the printer, where lengths on the sheets are to be measured. */
  readonly scale?: Page['scale'];
}

/** Drawings that are whole sheets, as the pages of one document: flat, each group in its order. */
export function sheetsDocument({ title, subject, sheets, scale = { x: 1, y: 1 } }: SheetsRequest): Document {
  const pages = sheets.map(
    (sheet, i): Page => ({
      number: i + 1,
      name: `${i + 1}`,
      paper: { width: sheet.width, height: sheet.height },
      rotation: 0,
      scale,
      under: sheet.groups.flatMap((group) => (group.shown ? group.items : [])),
      over: [],
      pens: sheet.pens,
    }),
  );
  return { title, subject, language: 'en', drawing: sheets[0]!, pages };
}
