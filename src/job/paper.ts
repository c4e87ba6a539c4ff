import type { Size } from '../geometry/point.ts';
import { error, type Problem } from '../problems/problem.ts';
import { parseLength, parseSize } from '../units/parse.ts';
import { outOfRange } from './fields.ts';
import type { Units } from './model.ts';

/** Sides of a paper that a printer takes, mm. */
const RANGE = { least: 50 };

/** As the model holds it: an id in small letters, `fit`, `W x H mm` or `roll:W mm`. */
export function paperOf(given: string, own: ReadonlyMap<string, Size>, units: Units, problems: Problem[]): string {
  const custom = own.get(given);
  if (custom !== undefined) return sizeText(custom);
  const word = given.toLowerCase();
  const refuse = (code: string, message: string, hint: string): string => {
    problems.push(error(code, ['print', 'paper'], message, hint));
    return given;
  };
  const roll = /^roll *: *(.*)$/.exec(word);
  if (roll !== null) {
    const width = parseLength(roll[1]!, units);
    if (!width.ok)
      return refuse(width.code, width.message, 'write the width of the roll after roll:, for example roll:24 in');
    const wrong = outOfRange(width.value, RANGE, units);
    return wrong === undefined ? `roll:${width.value} mm` : refuse(wrong.code, wrong.message, wrong.hint);
  }
  if (/^[.\d½¼¾⅛⅜⅝⅞]/.test(word)) {
    const size = parseSize(word, units);
    if (!size.ok) return refuse(size.code, size.message, size.hint);
    const wrong = outOfRange(size.value.width, RANGE, units) ?? outOfRange(size.value.height, RANGE, units);
    return wrong === undefined ? sizeText(size.value) : refuse(wrong.code, wrong.message, wrong.hint);
  }
  return word;
}

const sizeText = (size: Size): string => `${size.width} x ${size.height} mm`;
