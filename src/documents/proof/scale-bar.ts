import type { Item } from '../../drawing/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { type Block, joined } from '../../text/block.ts';
import { boxItem } from '../../text/figures.ts';
import { line } from '../../text/paragraph.ts';
import { SMALL } from '../../text/styles.ts';
import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { mmFromInches } from '../../units/units.ts';

/** Lengths that a scale bar may stand for, and into how many parts each is cut. */
const INCHES: readonly (readonly [number, number])[] = [
  [1, 4],
  [2, 2],
  [3, 3],
  [4, 4],
  [6, 3],
  [8, 4],
  [12, 4],
  [24, 4],
  [48, 4],
  [96, 4],
];
const MILLIMETRES: readonly (readonly [number, number])[] = [
  [10, 2],
  [20, 2],
  [40, 4],
  [50, 5],
  [100, 4],
  [200, 4],
  [400, 4],
  [500, 5],
  [1000, 4],
  [2000, 4],
];
const LONGEST_BAR = 42;
/** The bar's outline stays within its width. */
const HALF_PEN = 0.07;

/** A bar of dark and light parts, with what its ends stand for and the scale; as wide as `width`, at its right. */
export function scaleBar(scale: number, units: Units, width: number, fonts: Fonts): Block {
  const inches = units === 'in';
  const known = (inches ? INCHES : MILLIMETRES).map(([n, parts]) => [inches ? mmFromInches(n) : n, parts] as const);
  const [stands, parts] = known.findLast(([mm]) => mm * scale <= LONGEST_BAR) ?? known[0]!;
  const long = stands * scale;
  const height = 1.1;
  const cells = Array.from({ length: parts }, (_, i): Item => {
    return boxItem(box((i * long) / parts, 0, long / parts, height), i % 2 === 0 ? 0.15 : 1, 'bar');
  });
  const end = `${printDecimal(stands, units, 2).text} ${units}`;
  const said = line(`Scale 1 : ${printDecimal(1 / scale, 'mm', 2).text}`, SMALL, fonts);
  const [zero, last] = [line('0', SMALL, fonts), line(fraction(end), SMALL, fonts)];
  const below = said.height + height + 1.6;
  return joined({ width, height: below + last.height }, [
    [said, { x: width - said.width, y: 0 }],
    [
      { items: cells, width: long, height },
      { x: width - long - HALF_PEN, y: said.height + 0.6 },
    ],
    [zero, { x: width - long, y: below }],
    [last, { x: width - last.width, y: below }],
  ]);
}
