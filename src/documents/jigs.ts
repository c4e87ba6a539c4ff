import type { JigEntry } from './jig.ts';
import { GUIDE_JIG } from './jig-guide.ts';
import { PRINTER_JIG } from './jig-printer.ts';

/** Every jig; the table also feeds the command's list. */
export const JIGS: readonly JigEntry[] = [PRINTER_JIG, GUIDE_JIG];
