import { type PDFContext, PDFHexString, type PDFObject, type PDFRef } from 'pdf-lib';
import type { Page } from '../../drawing/document.ts';

interface Entry {
  readonly title: string;
  /** The first page that it stands for. */
  readonly page: number;
  readonly below: Entry[];
}

/** Pages that follow each other and begin with the same titles stand below these together. */
function entriesOf(pages: readonly Page[]): readonly Entry[] {
  const top: Entry[] = [];
  // The entries that the page before stands below, outermost first.
  let open: Entry[] = [];
  pages.forEach(({ outline }, page) => {
    if (outline === undefined) return;
    const kept = outline.findIndex((title, depth) => open[depth]?.title !== title);
    if (kept < 0) return;
    open = open.slice(0, kept);
    for (const title of outline.slice(kept)) {
      const entry: Entry = { title, page, below: [] };
      (open.at(-1)?.below ?? top).push(entry);
      open.push(entry);
    }
  });
  return top;
}

/** The table of contents that readers show beside the pages (ISO 32000-1, 12.3.3); nothing where it has one entry or none. */
export function writeOutline(context: PDFContext, pages: readonly Page[], refs: readonly PDFRef[]): PDFRef | undefined {
  const entries = entriesOf(pages);
  if (entries.length === 0 || (entries.length === 1 && entries[0]!.below.length === 0)) return undefined;
  const root = context.nextRef();
  const kids = writeEntries(context, entries, root, refs);
  context.assign(root, context.obj({ Type: 'Outlines', ...kids, Count: entries.length }));
  return root;
}

function writeEntries(
  context: PDFContext,
  entries: readonly Entry[],
  parent: PDFRef,
  pages: readonly PDFRef[],
): { readonly First: PDFRef; readonly Last: PDFRef } {
  const own = entries.map(() => context.nextRef());
  entries.forEach(({ title, page, below }, i) => {
    context.assign(
      own[i]!,
      context.obj({
        Title: PDFHexString.fromText(title),
        Parent: parent,
        // The page as a whole, in the reader's window.
        Dest: [pages[page]!, 'Fit'],
        ...(i === 0 ? {} : { Prev: own[i - 1]! }),
        ...(i === entries.length - 1 ? {} : { Next: own[i + 1]! }),
        // Closed at first: as many as would be seen once it is opened, negative (table 153).
        ...(below.length === 0 ? {} : { ...writeEntries(context, below, own[i]!, pages), Count: -below.length }),
      }),
    );
  });
  return { First: own[0]!, Last: own.at(-1)! };
}

/**
 * What readers call the pages (ISO 32000-1, 12.4.2): a range for each label that is not the page's number, with the
 * label as its prefix and no number, and ranges that count between them. Nothing where every page is called by its number.
 */
export function pageLabels(context: PDFContext, pages: readonly Page[]): PDFObject | undefined {
  const counted = pages.map(({ label }, i) => label === `${i + 1}`);
  if (counted.every(Boolean)) return undefined;
  const ranges = pages.flatMap(({ label }, i) => {
    if (!counted[i]) return [i, context.obj({ P: PDFHexString.fromText(label) })];
    return counted[i - 1] === true ? [] : [i, context.obj({ S: 'D', St: i + 1 })];
  });
  return context.obj({ Nums: ranges });
}
