import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as styles from '../../src/text/styles.ts';
import {
  FINE,
  inBold,
  LEADINGS,
  READING,
  SIZES,
  type Style,
  smaller,
  stepsDown,
  tight,
} from '../../src/text/styles.ts';

const MM_PER_POINT = 25.4 / 72.0;
const EMS: readonly number[] = Object.values(SIZES).map(({ em }) => em);

describe('the table of styles', () => {
  it('has eight sizes at most, rising, each with what it is for, and two leadings', () => {
    expect(EMS.length).toBeLessThanOrEqual(8);
    expect(EMS).toEqual([...new Set(EMS)].sort((a, b) => a - b));
    for (const { uses } of Object.values(SIZES)) expect(uses.length).toBeGreaterThan(10);
    expect(Object.keys(LEADINGS)).toHaveLength(2);
  });

  it('is read in the hand from 7 points on; readings are seen at arm’s length, 28 points and more', () => {
    expect(FINE.size).toBeGreaterThanOrEqual(7 * MM_PER_POINT);
    expect(READING.size).toBeGreaterThanOrEqual(28 * MM_PER_POINT);
  });

  it('makes every style of these alone', () => {
    const all = Object.values(styles).filter((each): each is Style => typeof each === 'object' && 'leading' in each);
    expect(all.length).toBeGreaterThan(10);
    for (const { size, leading } of all) {
      expect(EMS).toContain(size);
      expect(Object.keys(LEADINGS)).toContain(leading);
    }
  });

  it('goes down by these sizes and no further', () => {
    expect(stepsDown(inBold(FINE))).toEqual([inBold(FINE)]);
    expect(stepsDown(READING).map(({ size }) => size)).toEqual(EMS.filter((em) => em <= READING.size).reverse());
    expect(stepsDown(READING).every(({ weight }) => weight === 'bold')).toBe(true);
    expect([smaller(READING).size, smaller(FINE)]).toEqual([stepsDown(READING)[1]!.size, FINE]);
    expect(tight(FINE)).toEqual({ ...FINE, leading: 'tight' });
  });
});

/** A printer's correction makes words on full-scale sheets larger or smaller by that much; two sizes are further apart. */
const CORRECTED = 0.012;

describe('every sheet', () => {
  const golden = new URL('../../golden/', import.meta.url).pathname;
  const files = readdirSync(golden, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.pdf.txt'));

  it('is set in no other size', () => {
    const found = new Map<number, string>();
    for (const file of files) {
      for (const [, size] of readFileSync(join(golden, file), 'utf8').matchAll(/" {2}([\d.]+) pt,/g))
        found.set(Number(size) * MM_PER_POINT, file);
    }
    expect(found.size).toBeGreaterThanOrEqual(EMS.length);
    const strange = [...found].filter(([size]) => EMS.every((em) => Math.abs(size / em - 1) > CORRECTED));
    expect(strange).toEqual([]);
    // Each of the eight is in use.
    for (const em of EMS) expect([...found.keys()].some((size) => Math.abs(size - em) < 0.001)).toBe(true);
  });
});
