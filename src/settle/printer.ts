import type { Job } from '../job/job.ts';
import type { Problem } from '../problems/problem.ts';
import { lookUp } from '../read/fields/look-up.ts';
import { NO_PRINTER, type Printer, truePrinter } from '../shop/printer.ts';
import type { Shop } from '../shop/shop.ts';
import { printDecimal } from '../units/print.ts';

export interface PrinterQuestion {
  readonly job?: Job;
  readonly shop: Shop;
  /** On the command; goes before the job's. */
  readonly name?: string;
  /** One that the shop does not know yet is taken for one that prints true: it is about to be measured. */
  readonly mayBeNew?: boolean;
}

/**
 * The one rule: the printer that is named, on the command or else in the job; else the shop's only one; else none.
 * `none` can be named too. Errors: `printer-unknown`.
 */
export function printerFor(question: PrinterQuestion, problems: Problem[]): Printer | undefined {
  const { job, shop, name, mayBeNew = false } = question;
  if (name !== undefined) {
    if (name === NO_PRINTER) return undefined;
    if (mayBeNew && !shop.printers.has(name)) return truePrinter(name);
    return lookUp('printer', name, shop.printers, ['options', 'printer'], problems);
  }
  const named = job?.print.printer;
  if (named !== undefined) return named === NO_PRINTER ? undefined : named;
  return shop.printers.size === 1 ? [...shop.printers.values()][0] : undefined;
}

/** `corrected for printer office: it prints 0.9965 in x, 0.998 in y`, or nothing where nothing is corrected. */
export function printerWords(printer: Printer | undefined): string | undefined {
  if (printer === undefined || (printer.x === 1 && printer.y === 1)) return undefined;
  const factor = (value: number) => printDecimal(value, 'mm', 5).text;
  return `corrected for printer ${printer.id}: it prints ${factor(printer.x)} in x, ${factor(printer.y)} in y`;
}

export const UNCORRECTED = 'not corrected for any printer';

/** What a full-scale sheet says of its printer. */
export function stampOf(printer: Printer | undefined, named: boolean): string {
  if (printer === undefined) return named ? UNCORRECTED : 'not corrected: no printer is named';
  const why = printer.calibrated ? 'prints true' : 'is not yet calibrated';
  return printerWords(printer) ?? `not corrected: printer ${printer.id} ${why}`;
}
