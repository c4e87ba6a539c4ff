/** The only place where the definitions of units stand. Lengths are mm everywhere else. */

/** The international inch, exact (NBS Circular 572 addendum, 1960). */
export const MM_PER_INCH = 25.4;
/** A PDF point and a CSS pixel, exact (W3C CSS Values and Units 3). */
const POINTS_PER_INCH = 72;
const PIXELS_PER_INCH = 96;
/** HP-GL plotter units a mm, exact (HP PCL 5 Technical Reference, part II, table 17-7). */
const PLOTTER_UNITS_PER_MM = 40;

export const mmFromInches = (inches: number): number => inches * MM_PER_INCH;
export const inchesFromMm = (mm: number): number => mm / MM_PER_INCH;
export const pointsFromMm = (mm: number): number => (mm * POINTS_PER_INCH) / MM_PER_INCH;
export const mmFromPoints = (points: number): number => (points * MM_PER_INCH) / POINTS_PER_INCH;
export const pixelsFromMm = (mm: number): number => (mm * PIXELS_PER_INCH) / MM_PER_INCH;
export const plotterUnitsFromMm = (mm: number): number => mm * PLOTTER_UNITS_PER_MM;
/** Pixels at a resolution in dots per inch. */
export const dotsFromMm = (mm: number, dpi: number): number => (mm * dpi) / MM_PER_INCH;

export type LengthUnit = 'in' | 'mm' | 'cm';
export const LENGTH_UNITS: readonly LengthUnit[] = ['in', 'mm', 'cm'];

export function mmPer(unit: LengthUnit): number {
  switch (unit) {
    case 'in':
      return MM_PER_INCH;
    case 'mm':
      return 1;
    case 'cm':
      return 10;
  }
}

/** The unit of the job's bare numbers, and what documents print. */
export type Units = LengthUnit;
