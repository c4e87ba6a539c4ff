import { quoted } from '../problems/quoted.ts';
import { type LengthUnit, MM_PER_INCH, mmPer } from './units.ts';

/** A length in mm, or why the text is none and what to write instead. */
export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: string; readonly message: string; readonly hint: string };

/** Longer text is never a length; it bounds the work on hostile input. */
const LONGEST_TEXT = 64;

/** Unicode's ready-made fractions, as numerator and denominator (U+00BC–00BE, U+2150–215E). */
const READY_FRACTIONS: Readonly<Record<string, readonly [number, number]>> = {
  '¼': [1, 4],
  '½': [1, 2],
  '¾': [3, 4],
  '⅐': [1, 7],
  '⅑': [1, 9],
  '⅒': [1, 10],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};

const UNIT_WORDS: Readonly<Record<string, LengthUnit>> = {
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  '″': 'in',
  '”': 'in',
  '“': 'in',
  "''": 'in',
  '′′': 'in',
  mm: 'mm',
  cm: 'cm',
};

const NUMBER = String.raw`\d+(?:\.\d+)?|\.\d+`;
const READY = `[${Object.keys(READY_FRACTIONS).join('')}]`;
const FEET = /^(\d+(?:\.\d+)?) ?(?:'|′|’|ft|foot|feet)(?![′'’])(?: |-)?(.*)$/u;
const LENGTH = new RegExp(
  `^(-|−)?(?:(\\d+)[ -]?(${READY})|(${READY})|(?:(\\d+)(?: |-|\\+))?(\\d+) ?[/⁄] ?(\\d+)|(${NUMBER})) ?(in|inch|inches|mm|cm|"|″|”|“|''|′′)?$`,
  'u',
);

function refuse(code: string, message: string, hint: string): Parsed<never> {
  return { ok: false, code, message, hint };
}

const EXAMPLES = 'write for example 16 1/2, 16-1/2 in, 5/8", 41.9 cm or 419 mm';

/** Control and other invisible characters never belong in a length. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what it looks for.
const INVISIBLE = /[\u0000-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/;

/**
 * A length in mm. A text without a unit is in `unit`. Mixed fractions take a space or a hyphen between the whole
 * and the fraction, or a ready-made fraction (½); feet and inches go as 2' 6"; decimals take a point.
 */
export function parseLength(text: string, unit: LengthUnit): Parsed<number> {
  if (text.length > LONGEST_TEXT)
    return refuse('length-too-long', `a length of ${text.length} characters is none`, EXAMPLES);
  if (INVISIBLE.test(text)) return refuse('length-control', `${quoted(text)} holds an invisible character`, EXAMPLES);
  const [, near, exact] = /^(.*\S) ?\((\d+(?:\.\d+)? mm)\)$/u.exec(text.trim()) ?? [];
  if (near !== undefined && exact !== undefined)
    return sameLength(text, parseLength(near, unit), parseLength(exact, unit));
  const plain = text
    .replace(/[\u00a0\u2007\u2009\u202f ]+/gu, ' ')
    .replace(/[\u2010\u2011]/gu, '-')
    .trim()
    .toLowerCase();
  if (plain === '') return refuse('length-empty', 'a length is missing', EXAMPLES);
  if (/\d,\d/u.test(plain)) {
    return refuse(
      'length-decimal-comma',
      `${quoted(text)} has a decimal comma`,
      `write a decimal point: ${plain.replace(',', '.')}`,
    );
  }
  const feet = FEET.exec(plain);
  if (feet !== null) {
    const whole = Number(feet[1]) * 12 * MM_PER_INCH;
    const rest = feet[2]!.trim();
    if (rest === '') return { ok: true, value: whole };
    const inches = FEET.test(rest) || /^[-−]|[mc]m$/u.test(rest) ? undefined : parseLength(rest, 'in');
    if (inches?.ok !== true) return refuse('length-unreadable', `${quoted(text)} is not a length`, EXAMPLES);
    if (inches.value >= 12 * MM_PER_INCH) {
      return refuse('length-improper', `${quoted(text)} has twelve inches or more after the feet`, EXAMPLES);
    }
    return { ok: true, value: whole + inches.value };
  }
  const match = LENGTH.exec(plain);
  if (match === null) return refuse('length-unreadable', `${quoted(text)} is not a length`, EXAMPLES);
  const [, sign, readyWhole, readyAfter, readyAlone, whole, numerator, denominator, number, word] = match;
  let amount: number;
  if (number !== undefined) {
    amount = Number(number);
  } else {
    const ready = readyAfter ?? readyAlone;
    const [top, under] = ready === undefined ? [Number(numerator), Number(denominator)] : READY_FRACTIONS[ready]!;
    if (under === 0) return refuse('length-zero-denominator', `${quoted(text)} divides by zero`, EXAMPLES);
    const before = Number(readyWhole ?? whole ?? 0);
    if (before > 0 && top >= under) {
      return refuse('length-improper', `${quoted(text)} has a fraction of one or more after a whole number`, EXAMPLES);
    }
    amount = (before * under + top) / under;
  }
  const mm = amount * mmPer(word === undefined ? unit : UNIT_WORDS[word]!);
  if (!Number.isFinite(mm)) return refuse('length-unreadable', `${quoted(text)} is not a finite length`, EXAMPLES);
  return { ok: true, value: sign === undefined ? mm : -mm };
}

/** As lengths are printed that lie on no rule: `3 1/64 in (76.6 mm)`. The millimetres say it, unless they say another thing. */
function sameLength(text: string, near: Parsed<number>, exact: Parsed<number>): Parsed<number> {
  if (!near.ok || !exact.ok) return near.ok ? exact : near;
  if (Math.abs(near.value - exact.value) <= MM_PER_INCH / 64) return exact;
  return refuse('length-unreadable', `${quoted(text)} says two lengths`, EXAMPLES);
}

const SIZE_HINT = 'write width x height, for example 10 1/2 x 13 1/2 or 270 x 340 mm';

/**
 * Width × height, in mm, between `x`, `×`, `*` or `by`. A unit after the height serves a width that has none; the other
 * way round it is an error where it makes a difference.
 */
export function parseSize(text: string, unit: LengthUnit): Parsed<{ readonly width: number; readonly height: number }> {
  if (text.length > 2 * LONGEST_TEXT)
    return refuse('size-too-long', `a size of ${text.length} characters is none`, SIZE_HINT);
  if (INVISIBLE.test(text)) return refuse('length-control', `${quoted(text)} holds an invisible character`, SIZE_HINT);
  const parts = text.split(/\s*(?:[x×*✕]|\bby\b)\s*/iu);
  if (parts.length !== 2) return refuse('size-unreadable', `${quoted(text)} is not a size`, SIZE_HINT);
  const [first, second] = parts as [string, string];
  const width = parseLength(first, unitAfter(second) ?? unit);
  if (!width.ok) return width;
  const height = parseLength(second, unit);
  if (!height.ok) return height;
  const lone = unitAfter(second) === undefined && !FEET.test(second.trim()) ? unitAfter(first) : undefined;
  if (lone !== undefined && lone !== unit) {
    return refuse('size-unit', `${quoted(text)} has a unit after the width alone`, `write it after the height too`);
  }
  return { ok: true, value: { width: width.value, height: height.value } };
}

/** The unit that a length carries. */
function unitAfter(text: string): LengthUnit | undefined {
  const found = /(in|inch|inches|mm|cm|"|″|”|“|''|′′)\s*$/iu.exec(text);
  return found === null ? undefined : UNIT_WORDS[found[1]!.toLowerCase()];
}
