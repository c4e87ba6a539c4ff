import { expect, it } from 'vitest';
import {
  dotsFromMm,
  inchesFromMm,
  MM_PER_INCH,
  mmFromInches,
  mmFromPoints,
  mmPer,
  pixelsFromMm,
  plotterUnitsFromMm,
  pointsFromMm,
} from '../../src/units/units.ts';

it('takes the inch as 25.4 mm exactly (check value 1: addendum to NBS Circular 572, 1960)', () => {
  expect(MM_PER_INCH).toBe(25.4);
  expect(mmFromInches(1)).toBe(25.4);
  expect(inchesFromMm(25.4)).toBe(1);
});

it('takes the inch as 72 pt and 96 px exactly (check value 2: W3C CSS Values and Units 3)', () => {
  expect(pointsFromMm(25.4)).toBe(72);
  expect(pixelsFromMm(25.4)).toBeCloseTo(96, 9);
  expect(mmFromPoints(72)).toBe(25.4);
});

it('gives A4 and 100 mm in points (check values 3 and 4: PWG 5101.1 and CSS)', () => {
  expect(pointsFromMm(210)).toBeCloseTo(595.2756, 4);
  expect(pointsFromMm(297)).toBeCloseTo(841.8898, 4);
  expect(pointsFromMm(100)).toBeCloseTo(283.4646, 4);
});

it('gives a sheet of 32 x 40 in (check value 5: derived from NBS Circular 572)', () => {
  expect(mmFromInches(32)).toBeCloseTo(812.8, 9);
  expect(mmFromInches(40)).toBeCloseTo(1016, 9);
  expect(pointsFromMm(812.8)).toBeCloseTo(2304, 9);
  expect(pointsFromMm(1016)).toBeCloseTo(2880, 9);
});

it('gives the largest page (check value 6: PDF Reference 1.7, Appendix C)', () => {
  expect(pointsFromMm(5080)).toBeCloseTo(14400, 9);
  expect(inchesFromMm(5080)).toBeCloseTo(200, 9);
});

it('gives plotter units (check values 8 and 9: HP PCL 5 Technical Reference, table 17-7)', () => {
  expect(plotterUnitsFromMm(1)).toBe(40);
  expect(plotterUnitsFromMm(mmFromInches(1))).toBe(1016);
  expect(plotterUnitsFromMm(mmFromInches(11))).toBeCloseTo(11176, 9);
  expect(plotterUnitsFromMm(mmFromInches(14))).toBeCloseTo(14224, 9);
});

it('gives dots and the mm of each unit', () => {
  expect(dotsFromMm(25.4, 300)).toBe(300);
  expect([mmPer('in'), mmPer('mm'), mmPer('cm')]).toEqual([25.4, 1, 10]);
});
