import type { Stroke } from '../../bench/model.ts';
import type { Rotation } from '../../drawing/document.ts';
import type { Fonts } from '../../fonts/model.ts';
import { polygon } from '../../geometry/path.ts';
import { type Point, point } from '../../geometry/point.ts';
import { type Block, beside, labelBlock, stacked } from '../../text/block.ts';
import { underline } from '../../text/numerals.ts';
import { BOLD, CLEAR, FINE, HEAD, LARGE, NAME, NUMBER, READING, SIGN, type Style, TEXT } from '../../text/styles.ts';
import { backSide, sideWords } from '../words/back-side.ts';
import { restReading, senseWords, settingWords } from './reading-words.ts';

/** How large the words of one stroke are: its number, the guide's setting, and what else is said. */
export interface StrokeStyles {
  readonly number: Style;
  readonly reading: Style;
  readonly words: Style;
}

/** From full size down; the smallest is not read at arm's length, and only taken where nothing else fits. */
export const STROKE_STEPS: readonly StrokeStyles[] = [
  { number: NUMBER, reading: READING, words: CLEAR },
  { number: READING, reading: NAME, words: LARGE },
  { number: NAME, reading: SIGN, words: TEXT },
  { number: SIGN, reading: HEAD, words: FINE },
];

/** Labels stand upright for the one who cuts: the board is turned until the stroke runs towards the body. */
export function uprightFor(direction: Point): Rotation {
  if (Math.abs(direction.x) > Math.abs(direction.y)) return direction.x > 0 ? 270 : 90;
  return direction.y >= 0 ? 0 : 180;
}

/** A filled arrow down, or to the left. */
function arrow(size: number, way: 'down' | 'left'): Block {
  const [half, shaft, width] = [0.16 * size, 0.07 * size, 0.34 * size];
  const head = size - 0.42 * size;
  const x = width / 2;
  const corners = [
    point(x - shaft, 0),
    point(x + shaft, 0),
    point(x + shaft, head),
    point(x + half, head),
    point(x, size),
    point(x - half, head),
    point(x - shaft, head),
  ];
  const turned = way === 'down' ? corners : corners.map((p) => point(size - p.y, p.x));
  const [w, h] = way === 'down' ? [width, size] : [size, width];
  return {
    width: w,
    height: h,
    items: [{ kind: 'path', fill: 0, paths: [polygon(turned)] }],
    groups: ['strokes'],
  };
}

/** A stroke's number, underlined where it would be another one upside down. */
export function numeral(text: string, style: Style, group: string, fonts: Fonts): Block {
  const block = labelBlock([{ group, text, style }], fonts);
  const bars = block.items.flatMap((item) => (item.kind === 'text' ? underline(item, fonts) : []));
  const items = [...block.items, ...bars];
  return { ...block, items, groups: items.map(() => group) };
}

/** How a label is set for the one who cuts. */
export type Setting = 'standing' | 'stacked' | 'lying';

/**
 * Upright for the cutter, towards whom the travel runs: the arrow beside the number. Where words are small or stand alone
 * on a corner, and are turned beside a level side, such an arrow would seem to underline the number: it then follows
 * below it. Lying words are set along the side, the travel running to their left.
 */
export const standingFor = (upright: Rotation): Setting => (upright % 180 === 0 ? 'standing' : 'stacked');

export function arrowAndNumber(stroke: Stroke, style: Style, setting: Setting, fonts: Fonts): Block {
  const number = numeral(String(stroke.order), style, 'strokes', fonts);
  const em = style.size;
  switch (setting) {
    case 'standing':
      return beside(arrow(em, 'down'), number, 0.1 * em);
    case 'stacked':
      return stacked([number, arrow(em, 'down')], 0.1 * em, 'middle');
    case 'lying':
      return beside(arrow(em, 'left'), number, 0.1 * em);
    default: {
      const never: never = setting;
      throw new TypeError(`unknown setting ${String(never)}`);
    }
  }
}

/**
 * The arrow along the travel, the stroke's number, the guide's setting in large type, the side. Where the guide cannot be
 * set, what is measured by a rule instead stands in the size of a reading.
 */
export function strokeBlock(
  stroke: Stroke,
  { number, reading, words }: StrokeStyles,
  setting: Setting,
  view: 'face' | 'back',
  fonts: Fonts,
): Block {
  const where = [sideWords(stroke, view), ...stateWords(stroke)].join(', ');
  const far = stroke.guideFrom === 'far' && stroke.rest === undefined ? ['far edge on guide'] : [];
  const sense = senseWords(stroke);
  const { rest } = stroke;
  const lines = (texts: readonly string[], style: Style) => texts.map((text) => ({ group: 'readings', text, style }));
  const small = lines([...(sense === '' ? [] : [sense]), where, ...far], words);
  const said =
    rest === undefined
      ? labelBlock([...lines([settingWords(stroke)], reading), ...small], fonts)
      : stacked([labelBlock(lines(restReading(rest), reading), fonts), labelBlock(small, fonts)], 0.15 * words.size);
  return beside(arrowAndNumber(stroke, number, setting, fonts), said, 0.33 * number.size);
}

/** What is not as it was planned, or is done already. */
export const stateWords = ({ planned, cut }: Stroke): readonly string[] => [
  ...(planned === undefined ? [] : ['changed']),
  ...(cut === true ? ['cut already'] : []),
];

/** How small a side is called where there is no room for more. */
export const SMALL_STEPS: readonly Pick<StrokeStyles, 'number' | 'reading'>[] = [
  { number: SIGN, reading: CLEAR },
  { number: HEAD, reading: LARGE },
  { number: BOLD, reading: FINE },
];

/** Arrow, number, setting and side in one small line. */
export function smallBlock(
  stroke: Stroke,
  { number, reading }: (typeof SMALL_STEPS)[number],
  setting: Setting,
  view: 'face' | 'back',
  fonts: Fonts,
): Block {
  const { rest } = stroke;
  const what =
    rest === undefined
      ? `${stroke.setting.text}${SIGN_OF[stroke.setting.sense]}`
      : rest.distance < 0
        ? 'guide off'
        : rest.to === 'straightedge'
          ? `straightedge ${rest.setting.text}${SIGN_OF[rest.setting.sense]}`
          : `guide off, ${rest.setting.text}${SIGN_OF[rest.setting.sense]} to the ${rest.to}`;
  const side = view === 'back' ? backSide(stroke) : stroke.side;
  const far = stroke.guideFrom === 'far' ? [rest === undefined ? 'far edge' : 'from the far edge'] : [];
  const text = [what, side, ...far, ...stateWords(stroke)].join(', ');
  const said = labelBlock([{ group: 'readings', text, style: reading }], fonts);
  return beside(arrowAndNumber(stroke, number, setting, fonts), said, 0.5 * reading.size);
}

/** The stroke's number alone, for a side whose setting is read elsewhere. */
export const numberBlock = (stroke: Stroke, style: Style, fonts: Fonts): Block =>
  numeral(String(stroke.order), style, 'strokes', fonts);

/** A little less than the printed setting, or a little more. */
const SIGN_OF: Readonly<Record<Stroke['setting']['sense'], string>> = { exact: '', scant: ' −', full: ' +' };
