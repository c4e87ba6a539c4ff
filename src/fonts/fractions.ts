import { expression } from '../problems/expression.ts';

/** Fractions that Unicode has whole and the prepared fonts hold (Unicode Standard, chapter 22.3; blocks 2150 and 00A0). */
const WHOLE: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/3': '⅓',
  '2/3': '⅔',
  '1/4': '¼',
  '3/4': '¾',
  '1/5': '⅕',
  '2/5': '⅖',
  '3/5': '⅗',
  '4/5': '⅘',
  '1/6': '⅙',
  '5/6': '⅚',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED = '₀₁₂₃₄₅₆₇₈₉';
const FRACTION_SLASH = '\u2044';
const THIN_SPACE = '\u2009';

/** Digits over digits that stand alone or after a whole number; no date, ratio or path (`1/2/3`, `4.1/2`, `a/2`). */
const fractions = expression(
  String.raw`(?<![\p{L}\d/.,\u2044])(?:(\d+)[ \u00a0-])?(\d{1,3})/(\d{1,3})(?![\p{L}\d/]|[.,]\d)`,
  'gu',
);

/**
 * Sets the fractions of a text as fractions: `16 1/2″` and `16-1/2″` become `16½″`; `3 1/16` becomes `3 ¹⁄₁₆`, of
 * raised and lowered digits about the fraction slash, which look like the whole signs in the family. A thin space
 * keeps the whole number from reading as a power's base.
 */
export function fraction(text: string): string {
  // Most texts have none, and are asked about by the thousand.
  if (!text.includes('/')) return text;
  return text.replace(fractions(), (_, whole: string | undefined, above: string, below: string) => {
    const sign = WHOLE[`${above}/${below}`];
    if (sign !== undefined) return `${whole ?? ''}${sign}`;
    const built = digits(above, RAISED) + FRACTION_SLASH + digits(below, LOWERED);
    return whole === undefined ? built : `${whole}${THIN_SPACE}${built}`;
  });
}

const digits = (text: string, signs: string): string => Array.from(text, (digit) => signs[Number(digit)]).join('');
