import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, common, contains, grown, overlaps } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import type { Artwork } from '../../mat/model.ts';
import { defined } from '../../problems/defined.ts';
import { once } from '../../problems/once.ts';
import { warning } from '../../problems/problem.ts';
import { type Block, labelBlock } from '../../text/block.ts';
import type { Places } from '../../text/places.ts';
import { SIGN, stepsDown, TEXT } from '../../text/styles.ts';
import { showNear } from '../../units/print.ts';
import { chained, closeTo, scan, unless } from '../full-scale/candidates.ts';
import type { Label } from '../full-scale/label.ts';
import type { Note } from '../full-scale/note-labels.ts';
import { TOP_STEPS, WORD_STEPS } from '../full-scale/word-steps.ts';
import type { Missing, View } from '../full-scale/words-on-sheets.ts';
import { sides, size } from '../proof/words.ts';

/** What is measured to lay an artwork, and how it is hinged: the first lines are read at arm's length. */
export interface ArtworkWords {
  readonly name: string;
  readonly large: readonly string[];
  readonly plain: readonly string[];
}

export function artworkWords(
  { name, fromLeft, fromTop }: { readonly name: string; readonly fromLeft: number; readonly fromTop: number },
  artwork: Artwork,
  job: Job,
  several: boolean,
): ArtworkWords {
  const show = (mm: number): string => fraction(showNear(mm, job.units));
  const { overlap, floated } = artwork;
  const shows = { top: -overlap.top, right: -overlap.right, bottom: -overlap.bottom, left: -overlap.left };
  return {
    name,
    large: [...(several ? [name] : []), `${show(fromLeft)} from the left edge`, `${show(fromTop)} from the top edge`],
    plain: [
      `artwork ${size(artwork.size, job.units)}`,
      floated ? `floated: ${sides(shows, job.units)} of backing shows` : `covered ${sides(overlap, job.units)}`,
      floated ? 'V-hinges behind its upper edge' : 'T-hinges at its upper edge, hidden by the mat',
    ],
  };
}

/** Between words and the edge of their artwork. */
const INSIDE = 4;

/** Of an artwork's width: what one of two joined sheets shows of it may hold the words in more lines. */
const NARROWED = [0.7, 0.45, 0.3];

/**
 * In the artwork, below its hinges, where it is large enough; else beside it, but in no other. A sheet that shows only
 * the far end of an artwork has its words inside of it or not at all.
 */
export function artworkLabel(
  words: ArtworkWords,
  art: Box,
  others: readonly Box[],
  board: Box,
  view: View,
  fonts: Fonts,
): Label {
  const setAs = (width?: number) =>
    WORD_STEPS.map(({ title, words: plain }) =>
      once(() =>
        labelBlock(
          [
            ...words.large.map((text) => ({ group: 'words', text, style: title, ...defined({ width }) })),
            ...words.plain.map((text) => ({ group: 'words', text, style: plain, ...defined({ width }) })),
          ],
          fonts,
        ),
      ),
    );
  const blocks = setAs();
  const inside = common(grown(art, -INSIDE), view.area);
  const usual = (block: Block): Places => ({
    block,
    rotation: 0,
    spots: (isTaken) => isTaken(art.x + 12, art.y + Math.min(26, art.height / 3)),
  });
  const begins = view.whole || contains(view.area, box(art.x, art.y, 0, 0));
  const seen = begins ? common(board, view.area) : undefined;
  const foot = point(art.x + art.width / 2, bottom(art));
  const places = [
    ...(inside === undefined ? [] : blocks.flatMap((block) => [() => usual(block()), () => scan(block(), 0, inside)])),
    ...(inside === undefined
      ? []
      : NARROWED.flatMap((share) => setAs(share * inside.width).map((block) => () => scan(block(), 0, inside)))),
    ...(seen === undefined ? [] : blocks.map((block) => () => outside(others, closeTo(block(), foot, seen, 60)))),
  ];
  const what = `what is measured to ${words.name}`;
  return { what, why: 'text', tries: [{ places: () => chained(places) }], optional: !begins };
}

const outside = (others: readonly Box[], places: Places): Places =>
  unless(places, (x, y, { width, height }) => {
    const area = box(x, y, width, height);
    return others.some((other) => overlaps(other, area));
  });

const SMALLER = TOP_STEPS.filter(({ size }) => size <= SIGN.size);

/** The side that lies up, at the upper edge of the backing. */
export const topNote = (fonts: Fonts): Note => ({
  name: 'TOP',
  sizes: [
    ...SMALLER.slice(0, 3).map((style) => ({ text: '↑ TOP, seen from the FACE', style })),
    ...SMALLER.map((style) => ({ text: '↑ TOP', style })),
  ].map(
    ({ text, style }) =>
      () =>
        labelBlock([{ group: 'words', text, style }], fonts),
  ),
});

/** Along the tape that joins window and backing. */
export const hingeNote = (fonts: Fonts): Note => ({
  name: 'hinge edge',
  sizes: stepsDown(TEXT).map(
    (style) => () => labelBlock([{ group: 'words', text: 'window and backing hinge along this edge', style }], fonts),
  ),
});

export const missing: Missing = (on, { unplaced }) =>
  unplaced.map(({ what }) =>
    warning(
      'label-without-room',
      ['openings'],
      `no room on the ${on === '' ? 'placement sheet' : on} for: ${what}`,
      'the distances stand in the record of the sheet (--json)',
    ),
  );
