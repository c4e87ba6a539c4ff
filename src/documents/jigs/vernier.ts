import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import { capHeight } from '../../text/line.ts';
import { BOLD, TEXT } from '../../text/styles.ts';
import { line, rectangle } from './jig.ts';
import { words } from './words.ts';

/**
 * A rule of millimetres and a slip that slides along its edge. Ten parts of the slip are nineteen millimetres, so that
 * its line k meets a line of the rule where its nought stands k tenths past a millimetre.
 */
const PARTS = 10;
const PART = 1.9;

/** Room around the scale, mm: beyond its ends, and from its edge to the far side of the piece. */
const END = 5;
const DEPTH = 15;

/** A figure whose nought is at 0 0 and whose edge lies along y = 0. */
export interface Scale {
  readonly items: readonly Item[];
  readonly left: number;
  readonly right: number;
  /** The rule's body lies below its edge, the slip's above. */
  readonly top: number;
  readonly bottom: number;
}

/** The rule from `from` to `to` (whole mm, nought between), its lines hanging down from its edge. */
export function rule(from: number, to: number, id: string, fonts: Fonts): Scale {
  const items: Item[] = [rectangle('snip', box(from - END, 0, to - from + 2 * END, DEPTH), `${id}-outline`)];
  for (let mm = from; mm <= to; mm++) {
    const length = mm % 10 === 0 ? 7.5 : mm % 5 === 0 ? 5.8 : 4.2;
    items.push(line(mm === 0 ? 'line' : 'fine', point(mm, 0), point(mm, length), `${id}-${mm}`));
    if (mm % 10 === 0 || mm === from) {
      const text = mm < 0 ? `−${-mm}` : `${mm}`;
      items.push(words(text, point(mm, 8.6 + capHeight(TEXT, fonts)), mm === 0 ? BOLD : TEXT, 'middle'));
    }
  }
  return { items, left: from - END, right: to + END, top: 0, bottom: DEPTH };
}

/** The slip, its lines standing up from its edge. */
export function slip(id: string): Scale {
  const long = PARTS * PART;
  const items: Item[] = [rectangle('snip', box(-END, -DEPTH, long + 2 * END, DEPTH), `${id}-outline`)];
  for (let k = 0; k <= PARTS; k++) {
    const x = k * PART;
    items.push(line(k === 0 ? 'line' : 'fine', point(x, 0), point(x, k % 5 === 0 ? -6.4 : -4.6), `${id}-${k}`));
    if (k % 2 === 0) items.push(words(`${k}`, point(x, -7.6), k === 0 ? BOLD : TEXT, 'middle'));
  }
  items.push(words('tenths', point(long / 2, -11.6), TEXT, 'middle'));
  return { items, left: -END, right: long + END, top: -DEPTH, bottom: 0 };
}

/** How a length is read off the two, as the sheets say it. */
export const READING_RULE =
  'The whole millimetres are the line of the rule at or left of the slip’s 0. The tenths are the number of that line of the slip which runs straight on into a line of the rule.';

/** What the two show where the slip's nought stands at a place: whole millimetres to its left, and the line that meets one. */
export function readingAt(place: number): { readonly whole: number; readonly tenths: number } {
  const tenths = Math.round(place * PARTS);
  const whole = Math.floor(tenths / PARTS);
  return { whole, tenths: tenths - whole * PARTS };
}
