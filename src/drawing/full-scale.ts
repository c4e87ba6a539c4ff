import type { Box } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';
import type { Problem } from '../problems/problem.ts';
import type { Drawing } from './model.ts';

/** A drawing that is laid on paper at full scale, with what only paper needs to know of it. */
export interface FullScale {
  /** The whole of it, its words where they stand as long as no seam runs through them. */
  readonly drawing: Drawing;
  /** Its words by themselves, so that each stands whole on some sheet; left out where they may be cut. */
  readonly words?: Words;
  /** The board, where the drawing is laid on one. */
  readonly board?: Box;
  /** What lies on the board by itself: each is shown whole where its corners would take more sheets. */
  readonly parts?: readonly Box[];
  /** Where the seams of sheets had better not run, worst first. */
  readonly avoid: readonly AvoidBox[];
  /** What the assembly map states and its reader verifies with a tape measure. */
  readonly facts: readonly Fact[];
  /** What each kind of line means, for the first sheet. */
  readonly legend: readonly LegendEntry[];
  /** What the guide is set to, for the first sheet; left out where nothing is cut by it. */
  readonly readings?: Readings;
  /** Steps for the first sheet: how it is used, after those about printing and taping; the usual ones where left out. */
  readonly instructions?: readonly string[];
  /** What the first sheet warns of. */
  readonly warnings: readonly Problem[];
}

/** What is in sight of one sheet, and what of its own stands there, in the drawing's mm. */
export interface SheetArea {
  /** Up to its join lines, and to its own edges where it has no neighbour. */
  readonly kept: Box;
  /** Crosses with their names. */
  readonly taken: readonly Box[];
}

/** A drawing's words apart from its lines. */
export interface Words {
  /** The drawing without them. */
  readonly lines: Drawing;
  /** For sheets that are joined into the whole: what no seam runs through stays in its place. */
  joined(sheets: readonly SheetArea[]): WordsOnSheets;
  /** For sheets that are laid on a corner of the board by themselves: all that is needed of what they show. */
  onCorner(sheets: readonly SheetArea[]): WordsOnSheets;
}

export interface WordsOnSheets {
  /** As large as the whole, one for each of the sheets. */
  readonly sheets: readonly Drawing[];
  /** What found no room. */
  readonly warnings: readonly Problem[];
}

/** Whether anything is drawn with a pen. */
export const usesPen = (pen: string, { groups }: Drawing): boolean =>
  groups.some(({ items }) => items.some((item) => (item.kind === 'line' || item.kind === 'path') && item.pen === pen));

/** Only the groups of these names, all of them shown; the first sheet explains and checks no others. */
export function onlyGroups(work: FullScale, names: readonly string[]): FullScale {
  const only = (drawing: Drawing): Drawing => ({
    ...drawing,
    groups: drawing.groups.filter(({ name }) => names.includes(name)).map((group) => ({ ...group, shown: true })),
  });
  const set = ({ sheets, warnings }: WordsOnSheets): WordsOnSheets => ({ sheets: sheets.map(only), warnings });
  const { words } = work;
  const drawing = only(work.drawing);
  const facts = work.facts.filter(({ group }) => names.includes(group));
  const shown = { ...work, drawing, facts, legend: work.legend.filter(({ pen }) => usesPen(pen, drawing)) };
  if (words === undefined) return shown;
  return {
    ...shown,
    words: {
      lines: only(words.lines),
      joined: (sheets) => set(words.joined(sheets)),
      onCorner: (sheets) => set(words.onCorner(sheets)),
    },
  };
}

export interface AvoidBox {
  readonly box: Box;
  readonly why: 'corner' | 'tick' | 'reading' | 'text';
}

export interface Fact {
  readonly label: string;
  readonly from: Point;
  readonly to: Point;
  /** mm; the distance between the two. */
  readonly length: number;
  /** As the map prints it, in the job's units. */
  readonly shown: string;
  /** The group of the drawing that holds what it is measured between. */
  readonly group: string;
}

/** Settings of the guide, each with the strokes that it serves. */
export interface Readings {
  readonly rows: readonly (readonly [setting: string, strokes: string])[];
  /** What holds for all of them. */
  readonly caption: string;
}

export interface LegendEntry {
  readonly pen: string;
  readonly text: string;
}
