import type { Document } from '../drawing/document.ts';
import type { Size } from '../geometry/point.ts';
import type { Settled } from '../settle/settled.ts';
import { showSize } from '../units/print.ts';

/** So many pages of one paper. */
export interface PaperTaken extends Size {
  /** `Letter`; of a roll or a page of its own size, how large it is. */
  readonly name: string;
  readonly count: number;
}

/** What an output will take before it is made: pages that come out of the printer, the first sheet among them, and room on a machine's bed. */
export interface Taken {
  readonly papers: readonly PaperTaken[];
  readonly beds: readonly (Size & { readonly machine: string })[];
}

/** `7 pages of Letter`, for lists. */
export const countWords = (count: number, one: string): string => (count === 1 ? `one ${one}` : `${count} ${one}s`);

/** Counted on the pages themselves, so that no other number can be told. Sheets on their side are the same paper. */
function papersTaken(documents: readonly Document[], { sheet, paper, units }: Settled): readonly PaperTaken[] {
  const found = new Map<string, PaperTaken>();
  const named = paper.kind === 'sheet' ? [paper, sheet] : [sheet];
  for (const { paper: page } of documents.flatMap(({ pages }) => pages)) {
    const known = named.find((each) => isSame(each, page));
    const { width, height } = known ?? page;
    const name = known?.name ?? showSize(page, units);
    const key = `${name} ${width} ${height}`;
    found.set(key, { name, width, height, count: (found.get(key)?.count ?? 0) + 1 });
  }
  return [...found.values()];
}

const isSame = (a: Size, b: Size): boolean =>
  (near(a.width, b.width) && near(a.height, b.height)) || (near(a.width, b.height) && near(a.height, b.width));

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

export const taken = (documents: readonly Document[], beds: Taken['beds'], settled: Settled): Taken => ({
  papers: papersTaken(documents, settled),
  beds,
});
