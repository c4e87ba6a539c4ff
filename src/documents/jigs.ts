import type { JigEntry } from './jig.ts';
import { ART_CORNER } from './jig-art-corner.ts';
import { BEVEL_JIG } from './jig-bevel.ts';
import { WALL_CHART } from './jig-chart.ts';
import { CORNER_GAUGE } from './jig-corner-gauge.ts';
import { GUIDE_JIG } from './jig-guide.ts';
import { HEAD_JIG, HEAD_PROOF_JIG } from './jig-head.ts';
import { HINGE_TEMPLATE } from './jig-hinge.ts';
import { PRINTER_JIG } from './jig-printer.ts';
import { PROTRACTOR } from './jig-protractor.ts';
import { REVEAL_SPACERS } from './jig-reveal.ts';
import { SIZES_TO_TRY } from './jig-sizes.ts';
import { SQUARE_CHECK } from './jig-square.ts';
import { STOP_SPACERS } from './jig-stops.ts';

/** Every jig, in the order of the command's list: what measures first, then gauges, then sheets for a job or the shop. */
export const JIGS: readonly JigEntry[] = [
  PRINTER_JIG,
  GUIDE_JIG,
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
