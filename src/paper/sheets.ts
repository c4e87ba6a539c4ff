import { type Document, type Page, wholeFrame } from '../drawing/document.ts';
import type { Drawing } from '../drawing/model.ts';

export interface SheetsRequest {
  readonly title: string;
  readonly subject: string;
  /** Each as large as its paper; at least one. */
  readonly sheets: readonly Drawing[];
  /** Of the printer, where lengths on the sheets are to be measured. */
  readonly scale?: Page['scale'];
}

/** Drawings that are whole sheets, as the pages of one document; those of one title are one entry of its outline. */
export function sheetsDocument({ title, subject, sheets, scale = { x: 1, y: 1 } }: SheetsRequest): Document {
  const pages = sheets.map(
    (sheet, i): Page => ({
      paper: { width: sheet.width, height: sheet.height },
      scale,
      name: `${i + 1}`,
      label: `${i + 1}`,
      outline: [sheet.title],
      frames: [wholeFrame(sheet)],
    }),
  );
  return { title, subject, language: 'en', layers: [], pages };
}
