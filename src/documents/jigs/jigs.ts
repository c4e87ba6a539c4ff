import { ART_CORNER } from './art-corner.ts';
import { BEVEL_JIG } from './bevel.ts';
import { WALL_CHART } from './chart.ts';
import { CORNER_GAUGE } from './corner-gauge.ts';
import { GUIDE_JIG } from './guide.ts';
import { HEAD_JIG, HEAD_PROOF_JIG } from './head.ts';
import { HINGE_TEMPLATE } from './hinge.ts';
import type { JigEntry } from './jig.ts';
import { PRACTICE } from './practice.ts';
import { PRINTER_JIG } from './printer.ts';
import { PROTRACTOR } from './protractor.ts';
import { REVEAL_SPACERS } from './reveal.ts';
import { SIZES_TO_TRY } from './sizes.ts';
import { SQUARE_CHECK } from './square.ts';
import { STOP_SPACERS } from './stops.ts';

/** Every jig, in the order of the command's list: what measures first, then gauges, then sheets for a job or the shop. */
export const JIGS: readonly JigEntry[] = [
  PRINTER_JIG,
  GUIDE_JIG,
  PRACTICE,
  HEAD_JIG,
  HEAD_PROOF_JIG,
  BEVEL_JIG,
  CORNER_GAUGE,
  REVEAL_SPACERS,
  PROTRACTOR,
  STOP_SPACERS,
  HINGE_TEMPLATE,
  ART_CORNER,
  SIZES_TO_TRY,
  SQUARE_CHECK,
  WALL_CHART,
];
