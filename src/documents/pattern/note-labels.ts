import { once } from '../../drawing/once.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, box, common, grown } from '../../geometry/box.ts';
import type { Side } from '../../geometry/sides.ts';
import { type Block, joined, labelBlock } from '../../text/block.ts';
import type { Candidate } from '../../text/room.ts';
import { BOLD, HEAD, LARGE_BOLD, LEAD_IN, NAME, READING, SIGN, stepsDown } from '../../text/styles.ts';
import { alongHinge, bands, chained, innerStrips, nearTop, scan } from '../full-scale/candidates.ts';
import type { Label } from '../full-scale/label.ts';
import type { View } from '../full-scale/words-on-sheets.ts';
import { REACH_INSIDE } from './stroke-words.ts';

/** Words that belong to no line: the same in several sizes, the best first. */
export interface Note {
  readonly name: string;
  readonly sizes: readonly (() => Block)[];
}

type Places = readonly (() => Iterable<Candidate>)[];

/** 11 mm where there is room for it; 9 pt at least. */
const TOP_STYLES = [READING, NAME, SIGN, HEAD, LARGE_BOLD, BOLD];

const topNote = (fonts: Fonts): Note => ({
  name: 'TOP',
  sizes: TOP_STYLES.map((style) => () => labelBlock([{ group: 'notes', text: '↑ TOP', style }], fonts)),
});

const hingeNote = (fonts: Fonts): Note => ({
  name: 'hinge edge',
  sizes: stepsDown(LEAD_IN).map(
    (style) => () => labelBlock([{ group: 'hinge', text: 'hinge along this edge (grey dashes)', style }], fonts),
  ),
});

/** The strips that words go to: the borders above and below all lines to follow, and what lies between. */
export interface Around {
  readonly paper: Box;
  readonly cutBox: Box;
  /** How deep words that stand inside an opening may go. */
  readonly depth: number;
}

export const aroundOf = (paper: Box, cutBox: Box, depth = REACH_INSIDE): Around => ({ paper, cutBox, depth });

/** Always upright: at the upper edge, else in the opening, smaller and smaller; it never goes. */
export function topLabel(around: Around, view: View, fonts: Fonts): Label {
  const note = topNote(fonts);
  if (!view.whole) return cornerLabel(note, around, view, false);
  const { paper, cutBox, depth } = around;
  const { upper } = bands(paper, cutBox);
  const inner = grown(cutBox, -3);
  const [innerUpper] = innerStrips(inner, depth);
  const blocks = note.sizes.map(once);
  const places: Places = [
    ...blocks.flatMap((block) => [
      () => nearTop(block(), upper),
      () => nearTop(block(), innerUpper),
      () => scan(block(), 0, upper),
      () => scan(block(), 0, innerUpper),
    ]),
    ...blocks.map((block) => () => scan(block(), 0, inner)),
    () => scan(blocks.at(-1)!(), 0, paper, false, 1),
  ];
  return { what: note.name, why: 'text', tries: [{ places: () => chained(places) }] };
}

/** Words that stand where there is room, by places of their own on the whole. */
export function noteLabel(
  note: Note,
  placesOf: (block: () => Block) => Places,
  around: Around,
  view: View,
  optional = false,
): Label {
  if (!view.whole) return cornerLabel(note, around, view, optional);
  const places = note.sizes.map(once).flatMap(placesOf);
  return { what: note.name, why: 'text', tries: [{ places: () => chained(places) }], optional };
}

/** Anywhere in the borders, turned with those at the sides, else inside of the lines to follow. */
export function freePlaces({ paper, cutBox, depth }: Around): (block: () => Block) => Places {
  const band = bands(paper, cutBox);
  const inner = grown(cutBox, -3);
  const [innerUpper, innerLower] = innerStrips(inner, depth);
  const small = Math.min(inner.width, inner.height) < 4 * depth;
  return (block) => [
    () => scan(block(), 0, band.upper),
    () => scan(block(), 0, band.lower),
    () => scan(block(), 1, band.right),
    () => scan(block(), 3, band.left),
    () => scan(block(), 0, innerUpper),
    () => scan(block(), 0, innerLower),
    ...(small ? [() => scan(block(), 0, inner)] : []),
  ];
}

/** Along its edge alone: where that has no room the words go, and the list of lines says what the dashes mean. */
export function hingeLabel(side: Side, { paper, cutBox }: Around, { area }: View, fonts: Fonts): Label {
  const note = hingeNote(fonts);
  const whole = bands(paper, cutBox);
  const seen = (strip: Box): Box => common(strip, area) ?? box(area.x, area.y, 0, 0);
  const band = {
    upper: seen(whole.upper),
    lower: seen(whole.lower),
    left: seen(whole.left),
    right: seen(whole.right),
  };
  const places = note.sizes.map(once).map((block) => () => alongHinge(block(), side, band));
  return { what: note.name, why: 'text', tries: [{ places: () => chained(places) }], optional: true };
}

/** On a corner sheet, always upright: in the border or the opening, whatever of them is seen. */
function cornerLabel({ name, sizes }: Note, { paper, cutBox }: Around, { area }: View, optional: boolean): Label {
  const { upper, lower } = bands(paper, cutBox);
  const regions = [upper, grown(cutBox, -3), lower, paper].flatMap((each) => common(each, area) ?? []);
  const blocks = sizes.map((make) => once(() => spaced(make())));
  const places: Places = [
    ...blocks.flatMap((block) => regions.map((region) => () => scan(block(), 0, region))),
    () => scan(blocks.at(-1)!(), 0, area, false, 1),
  ];
  return { what: name, why: 'text', tries: [{ places: () => chained(places) }], optional };
}

/** Room around words that share a corner with others. */
const APART = 3;

function spaced(block: Block): Block {
  const by = { x: APART, y: APART / 2 };
  return joined({ width: block.width + 2 * by.x, height: block.height + 2 * by.y }, [[block, by]]);
}
