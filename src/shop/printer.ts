import * as z from 'zod/mini';
import { allSides, type BySide } from '../geometry/sides.ts';
import { error, type Problem } from '../problems/problem.ts';
import { described, line, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { nearOne } from '../read/fields/near-one.ts';
import type { LengthUnit } from '../units/units.ts';

/** How no printer is named, where the shop has one: nothing is corrected, and no printer may be called so. */
export const NO_PRINTER = 'none';

/** Measured length over nominal, in x and y of the page; unprintable margins. */
export interface Printer {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Whether x and y were measured. */
  readonly calibrated: boolean;
  readonly margin: BySide<number>;
}

/** Prints true up to the edge, for all that is known. */
export const truePrinter = (id: string): Printer => ({ id, x: 1, y: 1, calibrated: false, margin: allSides(0) });

export function printerSchema(unit: LengthUnit) {
  const { sides } = lengthFields(unit);
  const printer = record(
    {
      x: z.optional(nearOne('Measured over nominal length, across the page', 0.9965)),
      y: z.optional(nearOne('Measured over nominal length, along the page', 0.998)),
      date: z.optional(line('The day that it was measured', ['2026-03-01'])),
      margin: z.optional(sides('Edge that it cannot print on', ['1/6 in'], { least: 0, most: 100 })),
    },
    'a map: x, y, margin',
  );
  return described(printer, 'A printer');
}

export function printerFrom(
  id: string,
  given: z.output<ReturnType<typeof printerSchema>>,
  problems: Problem[],
): Printer {
  const usual = truePrinter(id);
  if (id === NO_PRINTER) {
    const message = `no printer may be called ${NO_PRINTER}: that name says that no printer is corrected for`;
    problems.push(error('printer-name', ['printers', id], message, 'give it another name'));
  }
  return {
    id,
    x: given.x ?? usual.x,
    y: given.y ?? usual.y,
    calibrated: given.x !== undefined && given.y !== undefined,
    margin: { ...usual.margin, ...given.margin },
  };
}
