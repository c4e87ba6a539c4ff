import type { Rest, Setting, Stroke } from '../../bench/model.ts';
import { printDecimal } from '../../units/print.ts';

/** `3 1/16 in`, or that the guide cannot be set, and what is measured instead. */
export const settingWords = ({ rest, setting }: Pick<Stroke, 'rest' | 'setting'>): string =>
  rest === undefined ? setting.text : restReading(rest).join(', ');

/** `guide off` and `13 7/16 in`; a bar that would lie off the board has no distance on it. */
export const restReading = ({ distance, setting }: Rest): readonly string[] =>
  distance < 0 ? ['guide off'] : ['guide off', setting.text];

const remainder = ({ sense, remainder: mm }: Setting): string =>
  sense === 'exact' ? '' : `${sense} by ${printDecimal(Math.abs(mm), 'mm', 1).text} mm`;

/** `scant by 0.4 mm`, or nothing where the setting is exact; with the guide off, to what is measured. */
export function senseWords({ rest, setting }: Pick<Stroke, 'rest' | 'setting'>): string {
  if (rest === undefined) return remainder(setting);
  const more = remainder(rest.setting);
  return `${restWords(rest)}${rest.distance < 0 || more === '' ? '' : `, ${more}`}`;
}

const restWords = ({ to, from, distance }: Rest): string =>
  distance < 0 ? `${to} off the board` : from === 'edge' ? `edge to ${to}` : `board's corner square to ${to}`;
