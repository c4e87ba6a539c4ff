import { type Box, box, common, grown } from '../../geometry/box.ts';
import type { Side } from '../../geometry/sides.ts';
import { once } from '../../problems/once.ts';
import { type Block, joined } from '../../text/block.ts';
import type { Places } from '../../text/places.ts';
import { alongHinge, bands, chained, innerStrips, nearTop, scan } from './candidates.ts';
import type { Label } from './label.ts';
import type { View } from './words-on-sheets.ts';

/** Words that belong to no line: the same in several sizes, the best first. */
export interface Note {
  readonly name: string;
  readonly sizes: readonly (() => Block)[];
}

type Lists = readonly (() => Places)[];

/** The strips that words go to: the borders above and below all lines to follow, and what lies between. */
export interface Around {
  readonly paper: Box;
  readonly cutBox: Box;
  /** How deep words that stand inside an opening may go. */
  readonly depth: number;
}

/** Always upright: at the upper edge, else in the opening, smaller and smaller; it never goes. */
export function topLabel(note: Note, around: Around, view: View): Label {
  if (!view.whole) return cornerLabel(note, around, view, false);
  const { paper, cutBox, depth } = around;
  const { upper } = bands(paper, cutBox);
  const inner = grown(cutBox, -3);
  const [innerUpper] = innerStrips(inner, depth);
  const blocks = note.sizes.map(once);
  const places: Lists = [
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
  placesOf: (block: () => Block) => Lists,
  around: Around,
  view: View,
  optional = false,
): Label {
  if (!view.whole) return cornerLabel(note, around, view, optional);
  const places = note.sizes.map(once).flatMap(placesOf);
  return { what: note.name, why: 'text', tries: [{ places: () => chained(places) }], optional };
}

/** Anywhere in the borders, turned with those at the sides, else inside of the lines to follow. */
export function freePlaces({ paper, cutBox, depth }: Around): (block: () => Block) => Lists {
  const band = bands(paper, cutBox);
  const inner = grown(cutBox, -3);
  const [innerUpper, innerLower] = innerStrips(inner, depth);
  const small = Math.min(inner.width, inner.height) < 4 * depth;
  return (block) => [
    () => scan(block(), 0, band.upper),
    () => scan(block(), 0, band.lower),
    () => scan(block(), 90, band.right),
    () => scan(block(), 270, band.left),
    () => scan(block(), 0, innerUpper),
    () => scan(block(), 0, innerLower),
    ...(small ? [() => scan(block(), 0, inner)] : []),
  ];
}

/** Along the edge of a side as it is named from the face, seen from the back; along that edge alone: where that has no room the words go, and the list of lines says what the dashes mean. */
export function hingeLabel(note: Note, side: Side, { paper, cutBox }: Around, { area }: View): Label {
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
  const places: Lists = [
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
