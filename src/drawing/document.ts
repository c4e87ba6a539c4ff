import { type Box, box } from '../geometry/box.ts';
import type { Point, Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import type { Drawing } from './model.ts';

/** Degrees clockwise, as the eye sees it. */
export type Rotation = 0 | 90 | 180 | 270;

/**
 * A drawing on a page, or the part of it that `clip` holds. Tiles of a pattern, corner sheets, tickets, proofs and the
 * marks around them are all frames. Frames of one drawing hold the same object, so that a file can hold it once.
 */
export interface Frame {
  readonly drawing: Drawing;
  /** What of the drawing is seen, its own mm before turning; all of it where left out. */
  readonly clip?: Box;
  readonly turn: Rotation;
  /** Where the top left of what is seen lies once it is turned, page mm. */
  readonly at: Point;
}

/** One page: its paper and what lies on it, the frames that come later over those before. */
export interface Page {
  readonly paper: Size;
  /** The printer's measured length over nominal, in x and y: a writer multiplies by 1/scale about the page's top left. */
  readonly scale: { readonly x: number; readonly y: number };
  /** `B2`, `check`: what the page is called in lists of pages and in names of files. */
  readonly name: string;
  /** What a reader shows instead of the page's number. */
  readonly label: string;
  /** Its place in the table of contents, from the outermost title to its own; pages without one have no entry. */
  readonly outline?: readonly string[];
  readonly frames: readonly Frame[];
}

/** Groups of this name, in whatever drawing they stand, can be shown and hidden together by the one who reads. */
export interface Layer {
  readonly name: string;
  /** What a list of layers calls it. */
  readonly label: string;
  /** Whether it is shown unless asked otherwise. */
  readonly shown: boolean;
}

/** Finished pages: plain readonly data. Whoever writes it needs to know nothing else. */
export interface Document {
  readonly title: string;
  readonly subject: string;
  readonly language: string;
  readonly layers: readonly Layer[];
  readonly pages: readonly Page[];
}

/** What a frame shows, in its drawing's mm. */
export const shownPart = ({ drawing, clip }: Frame): Box => clip ?? box(0, 0, drawing.width, drawing.height);

/** A drawing whole and upright, its top left at the page's. */
export const wholeFrame = (drawing: Drawing): Frame => ({ drawing, turn: 0, at: { x: 0, y: 0 } });

/** The layers that a drawing's groups make. */
export const layersOf = ({ groups }: Drawing): readonly Layer[] =>
  groups.map(({ name, label, shown }) => ({ name, label, shown }));

/**
 * Several documents as one. Layers of one name are one, as the first document has it; frames share what they shared.
 * Pages that are labelled by their own number count on, and every document's pages stand below its title in the outline.
 */
export function joinDocuments(
  documents: readonly Document[],
  said: Pick<Document, 'title' | 'subject' | 'language'>,
): Document {
  const layers = new Map<string, Layer>();
  for (const layer of documents.flatMap((each) => each.layers)) {
    if (!layers.has(layer.name)) layers.set(layer.name, layer);
  }
  const pages: Page[] = [];
  for (const { title, pages: own } of documents) {
    const before = pages.length;
    own.forEach((page, i) => {
      const outline = page.outline === undefined ? (i === 0 ? [title] : undefined) : [title, ...page.outline];
      pages.push({
        ...page,
        label: page.label === `${i + 1}` ? `${before + i + 1}` : page.label,
        ...defined({ outline }),
      });
    });
  }
  return { ...said, layers: [...layers.values()], pages };
}

/**
 * A document as several of at most so many pages. The parts end where an entry of the outline's outermost titles does,
 * unless that one alone has more pages. One that is short enough is itself.
 */
export function splitDocument(document: Document, most: number): readonly Document[] {
  const { pages } = document;
  const parts: Page[][] = [[]];
  for (let from = 0; from < pages.length; ) {
    const title = pages[from]!.outline?.[0];
    let to = from + 1;
    while (to < pages.length && (pages[to]!.outline === undefined || pages[to]!.outline?.[0] === title)) to += 1;
    let last = parts.at(-1)!;
    if (last.length > 0 && last.length + to - from > most) {
      last = [];
      parts.push(last);
    }
    for (const page of pages.slice(from, to)) {
      if (last.length === most) {
        last = [];
        parts.push(last);
      }
      last.push(page);
    }
    from = to;
  }
  return parts.length === 1 ? [document] : parts.map((own) => ({ ...document, pages: own }));
}
