import type { Rest, Setting, Stroke } from '../../bench/model.ts';
import { printDecimal } from '../../units/print.ts';

/** `3 1/16 in`, or that the guide cannot be set, and what is measured instead. */
export const settingWords = ({ rest, setting }: Pick<Stroke, 'rest' | 'setting'>): string =>
  rest === undefined ? setting.text : restReading(rest).join(', ');

/** `guide off` and `13 7/16 in`, or `straightedge` and its distance; what would lie off the board has none on it. */
export const restReading = ({ to, distance, setting }: Rest): readonly string[] => [
  to === 'straightedge' ? to : 'guide off',
  ...(distance < 0 ? [] : [setting.text]),
];

const remainder = ({ sense, remainder: mm }: Setting): string =>
  sense === 'exact' ? '' : `${sense} by ${printDecimal(Math.abs(mm), 'mm', 1).text} mm`;

/** `scant by 0.4 mm`, or nothing where the setting is exact; with the guide off, to what is measured. */
export function senseWords({ rest, setting, guideFrom }: Pick<Stroke, 'rest' | 'setting' | 'guideFrom'>): string {
  if (rest === undefined) return remainder(setting);
  const more = remainder(rest.setting);
  return `${restWords(rest, guideFrom === 'far')}${rest.distance < 0 || more === '' ? '' : `, ${more}`}`;
}

const restWords = ({ to, from, distance }: Rest, far: boolean): string => {
  if (distance < 0) return `${to} off the board`;
  const where = from === 'edge' ? 'edge to' : "board's corner square to";
  return `${far ? 'far ' : ''}${where} ${to}`;
};
