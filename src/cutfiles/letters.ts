import { textWidth } from '../fonts/measure.ts';
import type { Fonts } from '../fonts/model.ts';
import { textOutline } from '../fonts/outlines.ts';
import { type Path, placedPath, polygon } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { wrap } from '../text/wrap.ts';

/**
 * Letters of single strokes, as a draughtsman's: a tool runs along each once, and a file stays small. Drawn on a grid of
 * our own: a point is two digits, x and y; y 2 is the base line, 6 the height of small letters, 8 of capitals.
 */
const STROKES: Readonly<Record<string, string>> = {
  A: '022842 1535',
  B: '02083847463505 3544433202',
  C: '4738180703123243',
  D: '02082846442202',
  E: '48080242 0535',
  F: '480802 0535',
  G: '47381807031232434525',
  H: '0208 4248 0545',
  I: '0222 0828 1218',
  J: '0312324348',
  K: '0208 480542',
  L: '080242',
  M: '0208254842',
  N: '02084248',
  O: '180703123243473818',
  P: '02083847463505',
  Q: '180703123243473818 2442',
  R: '02083847463505 2542',
  S: '473818070615354443321203',
  T: '0848 2228',
  U: '080312324348',
  V: '082248',
  W: '0812253248',
  X: '0248 0842',
  Y: '082548 2225',
  Z: '08480242',
  a: '4642 4536160503123243',
  b: '0802 0516364543321203',
  c: '4536160503123243',
  d: '4842 4536160503123243',
  e: '04444536160503123243',
  f: '38281712 0636',
  g: '4641301001 4536160503123243',
  h: '0802 0516364542',
  i: '0502 0708',
  j: '151100 1718',
  k: '0802 360432',
  l: '080312',
  m: '0602 0516263532 3546566562',
  n: '0602 0516364542',
  o: '160503123243453616',
  p: '0600 0516364543321203',
  q: '4640 4536160503123243',
  r: '0602 05162636',
  s: '45361605143443321203',
  t: '18132232 0636',
  u: '0603123243 4642',
  v: '062246',
  w: '0612253246',
  x: '0246 0642',
  y: '0622 462210',
  z: '06460242',
  '0': '180703123243473818',
  '1': '071812',
  '2': '07183847460242',
  '3': '07183847463525 354443321203',
  '4': '32380444',
  '5': '480805354443321203',
  '6': '473818070312324344351504',
  '7': '084812',
  '8': '15060718384746351504031232434435',
  '9': '031232434738180706153546',
  '.': '0212130302',
  ',': '1301',
  ':': '0212130302 0515160605',
  ';': '1301 1516',
  '-': '0434',
  '+': '0444 2226',
  '=': '0343 0545',
  '/': '0138',
  '(': '18060412',
  ')': '08161402',
  "'": '0708',
  '"': '0708 1718',
  '!': '0203 0508',
  '?': '07183847462524 2223',
  '%': '0248 0818170708 3343423233',
  '&': '4206071827260403122244',
  '×': '0246 0642',
  '°': '0708181707',
  _: '0242',
  '’': '0708',
};

const BASE_LINE = 2;
const CAPITAL = 6;
/** Of capitals, em; that of the prepared fonts, so that both kinds of letters look alike. */
const CAPITAL_EM = 0.7;
const BETWEEN = 1.7;
const SPACE = 3;

export interface Lettering {
  /** Base line from 0 0 to the right, y down. */
  readonly paths: readonly Path[];
  readonly width: number;
}

/** A text in single strokes; in outlines where it has a character that none were drawn for. `size` is the em, mm. */
export function lettering(text: string, size: number, fonts: Fonts): Lettering {
  const unit = (CAPITAL_EM * size) / CAPITAL;
  const paths: Path[] = [];
  let x = 0;
  for (const character of text) {
    const strokes = STROKES[character];
    if (character !== ' ' && strokes === undefined)
      return { paths: textOutline(text, 'regular', size, fonts), width: textWidth(text, 'regular', size, fonts) };
    const points = (strokes ?? '').split(' ').map((stroke) => pointsOf(stroke));
    const start = x;
    const place = (p: Point): Point => ({ x: (start + p.x) * unit, y: (BASE_LINE - p.y) * unit });
    if (strokes !== undefined) paths.push(...points.map((stroke) => placedPath(strokePath(stroke), place)));
    x += (strokes === undefined ? SPACE : Math.max(...points.flat().map((p) => p.x))) + BETWEEN;
  }
  return { paths, width: Math.max(0, x - BETWEEN) * unit };
}

/** A stroke that comes back to where it began is closed. */
function strokePath(points: readonly Point[]): Path {
  const [first, last] = [points[0]!, points.at(-1)!];
  return first.x === last.x && first.y === last.y ? polygon(points.slice(0, -1)) : polygon(points, false);
}

function pointsOf(stroke: string): readonly Point[] {
  return Array.from({ length: stroke.length / 2 }, (_, i) => ({
    x: Number(stroke[2 * i]),
    y: Number(stroke[2 * i + 1]),
  }));
}

/** Lines no wider than `width`. */
export function brokenLines(text: string, size: number, width: number, fonts: Fonts): readonly string[] {
  // Letters stand apart, so that parts laid side by side take one gap more than each by itself.
  const gap = (BETWEEN * CAPITAL_EM * size) / CAPITAL;
  return wrap(text, width + gap, (part) => lettering(part, size, fonts).width + gap);
}
