import * as z from 'zod/mini';
import { allSides, type BySide, SIDES, type SomeSides } from '../geometry/sides.ts';
import { findPaper } from '../papers/find.ts';
import { defined } from '../problems/defined.ts';
import { error, type Problem } from '../problems/problem.ts';
import { described, id, line, oneOf, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { lookUp } from '../read/fields/look-up.ts';
import { NO_PRINTER, type Printer } from '../shop/printer.ts';
import type { Shop } from '../shop/shop.ts';
import { either, metric } from '../shop/units.ts';
import { showLength } from '../units/print.ts';
import type { LengthUnit, Units } from '../units/units.ts';

export interface PrintRequest {
  /** A paper's id, `W x H`, `fit` or `roll:W`. */
  readonly paper: string;
  /** Wished; a printer may leave more blank. */
  readonly margin: BySide<number>;
  readonly lap: number;
  readonly join: 'lap' | 'butt';
  readonly transfer: 'prick' | 'cut-through';
  /** Thickness of the pattern's paper, which counts where it is cut through. */
  readonly paperThickness: number;
  /** The shop's only one, where none is named. */
  readonly printer?: Printer | typeof NO_PRINTER;
}

/** The paper of the office printer at hand (common practice, no source). */
export const usualPaper = (units: Units): string => (metric(units) ? 'a4' : 'letter');
export const usualMargin = (units: Units): number => either(units, 1 / 4, 6);
/** Wide enough to glue or tape two sheets (common practice, no source). */
const usualLap = (units: Units): number => either(units, 1 / 2, 12);
/** Paper of 80 g/m² (common practice, no source). */
const PAPER_THICKNESS = 0.1;

export function printSchema(unit: LengthUnit) {
  const { length, sides } = lengthFields(unit);
  const few = { least: 0, most: 100 };
  const papers = ['letter', 'a4', '13 x 19 in', 'roll:24in'];
  const transfer = 'Corners are pricked through and the paper comes off, or it stays and is cut through';
  const printer = 'The printer of the shop that prints it, or none; the only one that the shop has without it';
  const thickness = 'Thickness of the paper, which counts where it is cut through';
  const print = record(
    {
      paper: z.optional(line('A paper by its name, width x height, fit or roll:WIDTH', papers)),
      margin: z.optional(sides('Left blank along the edges of the paper', ['1/4', { top: '1/2', sides: '1/4' }], few)),
      lap: z.optional(length('How far neighbouring sheets lie over one another', ['1/2'], few)),
      join: z.optional(oneOf('Sheets lie over one another, or edge to edge', ['lap', 'butt'])),
      transfer: z.optional(oneOf(transfer, ['prick', 'cut-through'])),
      paperThickness: z.optional(length(thickness, ['0.1 mm'], { least: 0, most: 2 })),
      printer: z.optional(id(printer, ['office', 'none'])),
    },
    'a map: paper, margin, lap, join, transfer, paperThickness, printer',
  );
  return described(print, 'How the pattern is printed');
}

export function printFrom(
  given: z.output<ReturnType<typeof printSchema>>,
  shop: Shop,
  units: Units,
  problems: Problem[],
): PrintRequest {
  const named = given.printer === NO_PRINTER ? undefined : given.printer;
  const printer = lookUp('printer', named, shop.printers, ['print', 'printer'], problems);
  const paper = given.paper ?? usualPaper(units);
  const custom = [...shop.papers].map(([id, size]) => ({ id, name: id, ...size }));
  const found = findPaper(paper, { custom, unit: units, path: ['print', 'paper'] });
  if (!found.ok) problems.push(...found.problems);
  return {
    paper,
    margin: marginFrom(given.margin ?? {}, printer, units, problems),
    lap: given.lap ?? usualLap(units),
    join: given.join ?? 'lap',
    transfer: given.transfer ?? 'prick',
    paperThickness: given.paperThickness ?? PAPER_THICKNESS,
    ...defined({ printer: given.printer === NO_PRINTER ? NO_PRINTER : printer }),
  };
}

/** As it is wished; less than what the named printer leaves blank is an error where it was asked for. */
function marginFrom(given: SomeSides, printer: Printer | undefined, units: Units, problems: Problem[]): BySide<number> {
  const margin = { ...allSides(usualMargin(units)), ...given };
  if (printer === undefined) return margin;
  const blank = printer.margin;
  const short = SIDES.filter((side) => (given[side] ?? blank[side]) < blank[side] - 1e-9);
  if (short.length === 0) return margin;
  const show = (mm: number): string => showLength(mm, units);
  const sides = short.map((side) => `${show(blank[side])} at the ${side}`).join(', ');
  const message = `the margin is smaller than what the printer ${printer.id} leaves blank: ${sides}`;
  problems.push(error('margin-unprintable', ['print', 'margin'], message, 'make the margin as large, or leave it out'));
  return margin;
}
