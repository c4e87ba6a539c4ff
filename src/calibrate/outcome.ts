import { nearest } from '../problems/nearest.ts';
import { error, type Problem } from '../problems/problem.ts';
import { quoted } from '../problems/quoted.ts';
import type { Plain } from '../read/edit/yaml-print.ts';
import type { CalibrationState } from '../shop/calibrated.ts';
import type { Edit } from '../shop/edit-shop.ts';
import type { Shop } from '../shop/shop.ts';

/** What a calibration is made against. */
export interface Context {
  readonly shop: Shop | undefined;
  readonly state: CalibrationState;
  /** Of today, where the readings say none. */
  readonly date: string;
}

/** What comes of readings. */
export interface Outcome {
  /** In plain words, a line each. */
  readonly words: readonly string[];
  readonly edits: readonly Edit[];
  /** What is written only where somebody says so. */
  readonly offer?: Offer;
  /** Plain data, lengths in mm. */
  readonly result: { readonly [key: string]: unknown };
}

/** A result that may well be wrong, or that corrects nothing which can be read. */
export interface Offer {
  /** Answered by yes or no. */
  readonly question: string;
  readonly edits: readonly Edit[];
}

/** A length as a shop's file holds it, whatever its own unit is: to a hundredth of a millimetre. */
export const inMm = (mm: number): string => `${rounded(mm, 2)} mm`;

/** Never -0. */
export const rounded = (value: number, digits: number): number => Number(value.toFixed(digits)) + 0;

export const signed = (mm: number): string => `${mm < 0 ? '−' : '+'}${Math.abs(rounded(mm, 2)).toFixed(2)}`;

/** Readings as the shop's file keeps them: lengths with their unit, keys without a value left out. */
export function kept(readings: object, lengths: readonly string[]): { readonly [key: string]: Plain } {
  const one = (key: string, value: unknown): Plain => {
    if (Array.isArray(value)) return value.map((item) => one(key, item));
    if (typeof value === 'object' && value !== null) return kept(value, lengths);
    return typeof value === 'number' && lengths.includes(key) ? `${rounded(value, 4)} mm` : (value as Plain);
  };
  return Object.fromEntries(
    Object.entries(readings)
      .filter(([key, value]) => value !== undefined && key !== 'units')
      .map(([key, value]) => [key, one(key, value)]),
  );
}

/** A name that the shop does not know but that is nearly one it knows is a slip of the pen; another one is new. */
export function nameProblems(
  what: 'head' | 'printer' | 'machine',
  name: string,
  known: readonly string[],
): readonly Problem[] {
  if (known.includes(name)) return [];
  const near = nearest(name, known);
  if (near === undefined) return [];
  const message = `the shop has no ${what} ${quoted(name)}`;
  return [
    error(`${what}-unknown`, [what], message, `did you mean ${near}? a new one is described in the shop's file first`),
  ];
}
