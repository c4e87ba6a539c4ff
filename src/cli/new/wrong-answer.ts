import type { AnswerName } from '../../job/answers.ts';
import { nearest } from '../../problems/nearest.ts';
import { WIDEST_BOARD } from '../../shop/board.ts';
import { NO_HEAD } from '../../shop/head.ts';
import type { Shop } from '../../shop/shop.ts';
import { type Parsed, parseLength, parseSize } from '../../units/parse.ts';
import { showSize } from '../../units/print.ts';
import { LENGTH_UNITS, type LengthUnit } from '../../units/units.ts';

/** What is wrong with an answer by itself, whoever gave it. */
export type Wrong = (answer: string) => string | undefined;

const said = (parsed: Parsed<unknown>): string | undefined =>
  parsed.ok ? undefined : `${parsed.message}; ${parsed.hint}`;

/** A size; one without a unit that no board holds is taken for millimetres that want to be called so. */
export const wrongSize =
  (unit: LengthUnit): Wrong =>
  (answer) => {
    const parsed = parseSize(answer, unit);
    const mm = parseSize(answer, 'mm');
    if (!parsed.ok || !mm.ok || unit === 'mm') return said(parsed);
    const bare = Math.abs(parsed.value.width - mm.value.width) > 1e-9;
    if (!bare || Math.min(parsed.value.width, parsed.value.height) <= WIDEST_BOARD) return undefined;
    const large = { width: parsed.value.width / 1000, height: parsed.value.height / 1000 };
    const metres = `${large.width.toFixed(1)} × ${large.height.toFixed(1)} m`;
    return `${showSize(parsed.value, unit)} is ${metres}; did you mean mm? write ${answer.trim()} mm, or ${answer.trim()} ${unit} if it is so large`;
  };

export const wrongLength =
  (unit: LengthUnit): Wrong =>
  (answer) =>
    said(parseLength(answer, unit));

const wrongUnit: Wrong = (answer) =>
  LENGTH_UNITS.some((unit) => unit === answer) ? undefined : `${answer} is no unit here; write in, mm or cm`;

const wrongWeighting =
  (unit: LengthUnit): Wrong =>
  (answer) => {
    if (['none', 'diagonal'].includes(answer)) return undefined;
    const add = /^add\s+(.*)$/u.exec(answer)?.[1];
    if (add !== undefined) return wrongLength(unit)(add);
    return /^\d+(?:\.\d+)?(?:\s*[/:]\s*\d+(?:\.\d+)?)?$/u.test(answer)
      ? undefined
      : `${answer} is no weighting; write none, diagonal, "add 1/2" or a ratio such as 5/4`;
  };

const wrongName =
  (what: string, names: readonly string[]): Wrong =>
  (answer) => {
    if (names.includes(answer)) return undefined;
    const near = nearest(answer, names);
    const there = names.length === 0 ? `the shop has no ${what}s` : `the shop has ${names.join(', ')}`;
    return `there is no ${what} ${answer}; ${near === undefined ? '' : `did you mean ${near}? `}${there}`;
  };

const wrongHead = (shop: Shop | undefined): Wrong => {
  const wrong = wrongName('head', [...(shop?.heads.keys() ?? [])]);
  return (answer) => (answer === NO_HEAD ? undefined : wrong(answer));
};

/** What is wrong with each kind of answer; nothing where it may be any text. */
export function wrongAnswers(unit: LengthUnit, shop: Shop | undefined): Partial<Readonly<Record<AnswerName, Wrong>>> {
  const [size, length] = [wrongSize(unit), wrongLength(unit)];
  return {
    units: wrongUnit,
    artworks: size,
    outer: size,
    frame: size,
    border: length,
    weighting: wrongWeighting(unit),
    boards: wrongName('board', [...(shop?.boards.keys() ?? [])]),
    head: wrongHead(shop),
    reveal: length,
    overlap: length,
    float: length,
  };
}
