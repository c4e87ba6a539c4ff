import { type Document, splitDocument } from '../../drawing/document.ts';
import type { OutputFile } from '../../outputs/write.ts';
import type { PdfOptions } from '../../writers/pdf/pdf.ts';

/** Printers' queues and readers' lists of pages bear so many in one file. */
export const MOST_PAGES = 500;

/** A file that is sent to the printer for some jobs together. */
export interface Paper extends OutputFile {
  readonly pages: number;
}

/** A document as one file, or numbered ones where it has more pages than a file may. */
export async function papersOf(
  name: string,
  document: Document,
  how: Pick<PdfOptions, 'fonts' | 'pictures'>,
): Promise<readonly Paper[]> {
  const { writePdf } = await import('../../writers/pdf/pdf.ts');
  const parts = splitDocument(document, MOST_PAGES);
  const papers: Paper[] = [];
  for (const [i, part] of parts.entries()) {
    const file = parts.length === 1 ? `${name}.pdf` : `${name}-${i + 1}.pdf`;
    papers.push({ name: file, bytes: await writePdf(part, how), pages: part.pages.length });
  }
  return papers;
}
