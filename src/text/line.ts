import type { TextItem } from '../drawing/model.ts';
import * as measure from '../fonts/measure.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Style, stepsDown } from './styles.ts';

/** One line of words, its base line at `y`; turned clockwise about that point. */
export function set(
  text: string,
  x: number,
  y: number,
  { size, weight, colour }: Style,
  anchor: TextItem['anchor'] = 'start',
  turn = 0,
): TextItem {
  return { kind: 'text', text, at: { x, y }, anchor, size, weight, turn, colour };
}

export const widthOf = (text: string, { weight, size }: Style, fonts: Fonts): number =>
  measure.textWidth(text, weight, size, fonts);

/** From the base line up to the tops of capitals, mm. */
export const capHeight = ({ weight, size }: Style, fonts: Fonts): number =>
  measure.metrics(weight, fonts).capHeight * size;

/** How far a line reaches below its base line. */
export const depthOf = ({ weight, size }: Style, fonts: Fonts): number =>
  measure.metrics(weight, fonts).descender * size;

/** The style in which a line is no wider than `width`, as large as may be; the finest where none is. */
export function fitted(text: string, style: Style, width: number, fonts: Fonts): Style {
  const steps = stepsDown(style);
  return steps.find((each) => widthOf(text, each, fonts) <= width) ?? steps.at(-1)!;
}

/** As much of the beginning of a line as is no wider than `width`, with an ellipsis where it is not all. */
export const ellipsized = (text: string, { weight, size }: Style, width: number, fonts: Fonts): string =>
  measure.ellipsized(text, weight, size, width, fonts);
