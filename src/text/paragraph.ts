import type { Item } from '../drawing/model.ts';
import { fraction } from '../fonts/fractions.ts';
import { inkOf } from '../fonts/measure.ts';
import type { Fonts } from '../fonts/model.ts';
import { bottom } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import { once } from '../problems/once.ts';
import { type Block, composed, itemsAt } from './block.ts';
import { capHeight, depthOf, ellipsized, fitted, set, widthOf } from './line.ts';
import { pitch, type Style, stepsDown } from './styles.ts';
import { wrap } from './wrap.ts';

/** Lines of words; `base` is where the first of them stands. */
export interface TextBlock extends Block {
  readonly base: number;
}

/**
 * Lines no wider than `width`, fractions set as fractions; from the tops of capitals to the descenders, or further where
 * a character of the first or the last line reaches further.
 */
export function paragraph(text: string, width: number, style: Style, fonts: Fonts, indent = 0, hang = 0): TextBlock {
  return typed(fraction(text), width, style, fonts, indent, hang);
}

/** The same with every character as it stands, for what is to be typed; all lines but the first begin `hang` further in. */
export function typed(text: string, width: number, style: Style, fonts: Fonts, indent = 0, hang = 0): TextBlock {
  const lines = broken(text, style, width - indent - hang, fonts);
  return linesBlock(lines, width, style, fonts, indent, hang);
}

/** One line, never broken. */
export function line(text: string, style: Style, fonts: Fonts): TextBlock {
  return linesBlock([text], widthOf(text, style, fonts), style, fonts);
}

/** One line in a style in which it fits, cut off only where it is too wide in the finest. */
export function fittedLine(text: string, width: number, style: Style, fonts: Fonts): TextBlock {
  const own = fitted(text, style, width, fonts);
  return line(ellipsized(text, own, width, fonts), own, fonts);
}

/** A headline: as large as it may be in two lines, smaller in more, never cut. */
export function headline(text: string, width: number, style: Style, fonts: Fonts): TextBlock {
  const said = fraction(text);
  const made = stepsDown(style).map((own) => () => ({ own, lines: broken(said, own, width, fonts) }));
  let last = made[0]!();
  for (const make of made) {
    last = make();
    if (last.lines.length <= 2) break;
  }
  return linesBlock(last.lines, width, last.own, fonts);
}

function linesBlock(
  lines: readonly string[],
  width: number,
  style: Style,
  fonts: Fonts,
  indent = 0,
  hang = 0,
): TextBlock {
  const cap = capHeight(style, fonts);
  const last = cap + (lines.length - 1) * pitch(style);
  let above = 0;
  let height = last + depthOf(style, fonts);
  for (let i = 0; i < lines.length; i++) {
    const text = lines[i]!;
    if (text.trim() === '') continue;
    const ink = inkOf(text, style.weight, style.size, cap + i * pitch(style), fonts);
    above = Math.max(above, -ink.y);
    height = Math.max(height, bottom(ink));
  }
  const items = (): readonly Item[] => {
    return lines.map((line, i) => set(line, indent + (i === 0 ? 0 : hang), cap + i * pitch(style) + above, style));
  };
  return textBlock({ width, height: height + above }, cap + above, items);
}

function textBlock(size: Size, base: number, make: () => readonly Item[]): TextBlock {
  const items = once(make);
  return {
    width: size.width,
    height: size.height,
    base,
    get items() {
      return items();
    },
  };
}

const BROKEN = new WeakMap<Fonts, Map<string, readonly string[]>>();
const MOST_KNOWN = 1000;

/** The sheets of one job say much the same, and a text is tried in several columns more than once. */
function broken(text: string, style: Style, width: number, fonts: Fonts): readonly string[] {
  const all = BROKEN.get(fonts) ?? new Map<string, readonly string[]>();
  BROKEN.set(fonts, all);
  const key = `${style.weight} ${style.size} ${width} ${text}`;
  const known = all.get(key) ?? wrap(text, width, (part) => widthOf(part, style, fonts));
  if (all.size >= MOST_KNOWN) all.clear();
  all.set(key, known);
  return known;
}

/** Side by side at the given places, their first lines on one base line. */
export function level(parts: readonly (readonly [x: number, part: TextBlock])[]): TextBlock {
  let base = Number.NEGATIVE_INFINITY;
  for (const [, part] of parts) base = Math.max(base, part.base);
  let [width, height] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [x, part] of parts) {
    width = Math.max(width, x + part.width);
    height = Math.max(height, part.height + base - part.base);
  }
  return composed({ width, height, base }, (left, top) =>
    parts.flatMap(([x, part]) => itemsAt(part, left + x, top + (base - part.base))),
  );
}
