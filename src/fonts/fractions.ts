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

/** Digits over digits that stand alone or after a whole number; no date, ratio or path (`1/2/3`, `4.1/2`, `a/2`). */
const FRACTION = /(?<![\p{L}\d/.,\u2044])(?:(\d+)[ \u00a0-])?(\d{1,3})\/(\d{1,3})(?![\p{L}\d/]|[.,]\d)/gu;

/**
 * Sets the fractions of a text as fractions: `16 1/2″` and `16-1/2″` become `16½″`, `3/16` becomes `³⁄₁₆`. With raised
 * and lowered digits about the fraction slash where Unicode has no whole sign, which look alike in the family.
 */
export function fraction(text: string): string {
  return text.replace(FRACTION, (_, whole: string | undefined, above: string, below: string) => {
    const sign = WHOLE[`${above}/${below}`] ?? digits(above, RAISED) + FRACTION_SLASH + digits(below, LOWERED);
    return `${whole ?? ''}${sign}`;
  });
}

const digits = (text: string, signs: string): string => Array.from(text, (digit) => signs[Number(digit)]).join('');
