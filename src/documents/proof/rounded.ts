import { fraction } from '../../fonts/fractions.ts';
import type { Size } from '../../geometry/point.ts';
import type { BySide, Side } from '../../geometry/sides.ts';
import { printDecimal, printFraction } from '../../units/print.ts';
import { mmFromInches, type Units } from '../../units/units.ts';

/**
 * Lengths as a customer reads them: to the sixteenth of an inch or the millimetre, marked where that is not the whole
 * truth. Nobody cuts from a proof; papers of the bench have the exact ones.
 */
const GRAIN: Readonly<Record<Units, number>> = { in: mmFromInches(1 / 16), mm: 1, cm: 1 };

/** A length and what is printed for it, mm. */
export interface Rounded {
  readonly exact: number;
  readonly shown: number;
}

/** By itself. */
export const roundedLength = (exact: number, units: Units): Rounded => ({
  exact,
  shown: Math.round(exact / GRAIN[units]) * GRAIN[units],
});

/** Closer than this nobody calls it rounded. */
const EXACT = 0.002;

const isRounded = ({ exact, shown }: Rounded): boolean => Math.abs(exact - shown) > EXACT;
const ABOUT = '≈\u00a0';

const plain = ({ shown }: Rounded, units: Units): string =>
  units === 'in' ? fraction(printFraction(shown, 16).text) : printDecimal(shown, units, units === 'mm' ? 0 : 1).text;

/** Without its unit. */
export const roundedNumber = (length: Rounded, units: Units): string =>
  `${isRounded(length) ? ABOUT : ''}${plain(length, units)}`;

export const roundedWords = (length: number, units: Units): string =>
  `${roundedNumber(roundedLength(length, units), units)} ${units}`;

export function roundedSize(width: Rounded, height: Rounded, units: Units): string {
  const about = isRounded(width) || isRounded(height) ? ABOUT : '';
  return `${about}${plain(width, units)} × ${plain(height, units)} ${units}`;
}

export const aloneSize = ({ width, height }: Size, units: Units): string =>
  roundedSize(roundedLength(width, units), roundedLength(height, units), units);

/** `top 3, sides 2¾, bottom 3½ in`; what is the same all round is said once. */
export function roundedSides(by: BySide<Rounded>, units: Units): string {
  const say = (side: Side): string => roundedNumber(by[side], units);
  const [top, right, bottom, left] = [say('top'), say('right'), say('bottom'), say('left')];
  if (top === bottom && left === right)
    return top === left ? `${top} ${units} all round` : `top and bottom ${top}, sides ${left} ${units}`;
  const aside = left === right ? `sides ${left}` : `left ${left}, right ${right}`;
  return `top ${top}, ${aside}, bottom ${bottom} ${units}`;
}

type Span = readonly [from: number, to: number];

/** The distance between two places along an axis of the mat. */
export type Between = (from: number, to: number) => Rounded;

/**
 * Distances along an axis, rounded so that every chain of them from edge to edge adds up to the rounded whole. Openings
 * that lie one behind the other share the rounding out among equals; where some overlap, seen along the axis, each edge
 * is rounded where it lies.
 */
export function roundedAxis(spans: readonly Span[], whole: number, units: Units): Between {
  const grain = GRAIN[units];
  const sorted = [...new Map(spans.map((span) => [span.map(key).join(), span])).values()].sort((a, b) => a[0] - b[0]);
  const isChain = sorted.every(([from], i) => i === 0 || from >= sorted[i - 1]![1] - 1e-6);
  const places = [0, ...(isChain ? sorted.flat() : []), whole];
  const parts = shared(
    places.slice(1).map((place, i) => (place - places[i]!) / grain),
    Math.round(whole / grain),
  );
  const known = new Map<string, number>();
  let sum = 0;
  places.forEach((place, i) => {
    if (i > 0) sum += parts[i - 1]!;
    known.set(key(place), sum);
  });
  const at = (place: number): number => (known.get(key(place)) ?? Math.round(place / grain)) * grain;
  return (from, to) => ({ exact: to - from, shown: at(to) - at(from) });
}

const key = (place: number): string => (place + 0).toFixed(4);

/** Whole numbers near the given ones with the given sum; those that are alike stay alike where that can be. */
function shared(parts: readonly number[], sum: number): readonly number[] {
  const kinds = [...new Set(parts.map(key))].map((of) => {
    const members = parts.flatMap((part, i) => (key(part) === of ? [i] : []));
    return { members, exact: parts[members[0]!]! };
  });
  const made = parts.map((part) => Math.round(part));
  let left = sum - made.reduce((a, b) => a + b, 0);
  while (left !== 0) {
    const step = Math.sign(left);
    const cost = (kind: (typeof kinds)[number]): number => Math.abs(made[kind.members[0]!]! + step - kind.exact);
    const fitting = kinds.filter(({ members }) => members.length <= Math.abs(left));
    const pool = fitting.length > 0 ? fitting : kinds;
    const { members } = pool.reduce((best, each) => (cost(each) < cost(best) - 1e-9 ? each : best));
    for (const i of members.slice(0, Math.abs(left))) {
      made[i]! += step;
      left -= step;
    }
  }
  return made;
}
