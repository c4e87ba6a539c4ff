import { onOneLine, type Plain } from '../../read/edit/yaml-print.ts';
import type { LengthUnit } from '../../units/units.ts';

/** What stands in a text for a value, without the quotes that a file may need. */
export function plainText(value: Plain | undefined): string {
  if (value === undefined) return '';
  if (Array.isArray(value) && value.length === 2 && value.every((each) => typeof each !== 'object')) {
    return value.map(String).join(' x ');
  }
  return typeof value === 'object' ? onOneLine(value, 'yaml') : String(value);
}

/** A comma that can only be a decimal one: a digit before it, and one or two behind. */
const DECIMAL_COMMA = /(?<=\d),(?=\d{1,2}(?!\d))/gu;
const BARE = /^[\d\s./x×,+⁄¼½¾⅛⅜⅝⅞-]+$/u;

/**
 * A typed length as the job is to have it. A bare number is in the unit that is shown, so it gets that unit where the
 * job's own is another.
 */
export function lengthTyped(typed: string, shown: LengthUnit, own: LengthUnit): Plain {
  const text = typed.trim().replace(DECIMAL_COMMA, '.');
  if (text !== '' && shown !== own && BARE.test(text)) return `${text} ${shown}`;
  return /^\d+(?:\.\d+)?$/u.test(text) ? Number(text) : text;
}
