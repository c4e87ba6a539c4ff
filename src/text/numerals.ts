import { itemBox } from '../drawing/bounds.ts';
import type { PathItem, TextItem } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { polygon } from '../geometry/path.ts';
import { point } from '../geometry/point.ts';

/** What a digit looks like upside down; the others look like none. */
const UPSIDE_DOWN: Readonly<Record<string, string>> = { 0: '0', 1: '1', 6: '9', 8: '8', 9: '6' };

/** Whether a number that is read upside down is another number: 6, 9, 18, 66, 68, 86 …; not 8, 60 (09) or 69. */
export function turnsIntoAnother(text: string): boolean {
  if (!/^[1-9]\d*$/u.test(text)) return false;
  const turned = [...text].reverse().map((digit) => UPSIDE_DOWN[digit]);
  return turned.every((digit) => digit !== undefined) && turned[0] !== '0' && turned.join('') !== text;
}

/** Below the base line, within the depth of descenders, and as thick as that; em. */
const [BELOW, THICK] = [0.11, 0.09];

/** The bar under an upright number that tells which way up it is read; nothing under others. */
export function underline(item: TextItem, fonts: Fonts): readonly PathItem[] {
  if (!turnsIntoAnother(item.text)) return [];
  const { x, width } = itemBox(item, {}, fonts)!;
  const [top, foot] = [item.at.y + BELOW * item.size, item.at.y + (BELOW + THICK) * item.size];
  const corners = [point(x, top), point(x + width, top), point(x + width, foot), point(x, foot)];
  return [{ kind: 'path', fill: item.colour, paths: [polygon(corners)] }];
}
