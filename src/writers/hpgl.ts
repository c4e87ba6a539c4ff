import type { Drawing, LineItem, PathItem } from '../drawing/model.ts';
import { flattened } from '../geometry/flatten.ts';
import type { Point } from '../geometry/point.ts';
import { plotterUnitsFromMm } from '../units/units.ts';
import { linePaths } from './item-paths.ts';
import { namedGroups } from './shown.ts';

export interface HpglOptions {
  readonly show?: readonly string[];
  /** What plots the lines of each pen of the drawing; without it all are plotted with pen 1. */
  readonly pens?: Readonly<Record<string, PlotterPen>>;
  /** Length moved over length told, by axis. */
  readonly scale?: { readonly x: number; readonly y: number };
  /** Where the plotter counts from. */
  readonly origin?: 'corner' | 'centre';
  /** How far chords may lie from a curve, mm. */
  readonly tolerance?: number;
  readonly comment?: readonly string[];
  /** Whether the plotter knows comments; without them nothing is said. */
  readonly comments?: boolean;
}

export interface PlotterPen {
  /** 1 to 8; 0 leaves what it draws out of the file. */
  readonly number: number;
  /** mm/s; sent only where it is given. */
  readonly speed?: number;
}

const TOLERANCE = 0.01;
/** A plotter may have a small store: no instruction holds more points. */
const MOST_POINTS = 16;
const FIRST: PlotterPen = { number: 1 };

/**
 * A drawing's lines as HP-GL: 40 plotter units a millimetre, y up, from the lower left corner of the drawing or from its
 * middle. Initialised at its beginning; at its end the pen is up, at home and put away, whatever stands in between. Words
 * and fills are left out: a plotter would cut them. Curves go out as chords. Source: HP PCL 5 Technical Reference Manual,
 * part II (HP-GL/2): IN, PA, PU, PD, SP, VS, CO; table 17-7 for the unit.
 */
export function writeHpgl(drawing: Drawing, options: HpglOptions = {}): string {
  const {
    scale = { x: 1, y: 1 },
    origin = 'corner',
    tolerance = TOLERANCE,
    pens,
    comment = [],
    comments = true,
  } = options;
  const groups =
    options.show === undefined ? drawing.groups.filter((g) => g.shown) : namedGroups(drawing, options.show);
  const from = origin === 'corner' ? { x: 0, y: drawing.height } : { x: drawing.width / 2, y: drawing.height / 2 };
  const units = ({ x, y }: Point): string =>
    `${whole(plotterUnitsFromMm((x - from.x) / scale.x))},${whole(plotterUnitsFromMm((from.y - y) / scale.y))}`;
  const out: string[] = comments ? comment.map((line) => `CO "${plain(line)}";`) : [];
  out.push('IN;', 'PA;');
  let pen: PlotterPen | undefined;
  for (const item of groups.flatMap((group) => group.items)) {
    if (item.kind === 'text') continue;
    if (item.kind === 'picture') throw new TypeError(`no picture is named ${JSON.stringify(item.picture)}`);
    const own = penFor(item, pens);
    if (own === undefined || own.number === 0) continue;
    if (own.number !== pen?.number) out.push(`SP${own.number};`);
    // The instruction counts in centimetres a second.
    if (own.speed !== undefined && own.speed !== pen?.speed) out.push(`VS${Math.max(1, Math.round(own.speed / 10))};`);
    pen = own;
    for (const path of linePaths(item)) {
      const points = flattened(path, tolerance);
      const all = (path.closed ? [...points, points[0]!] : points).map(units);
      const steps = all.filter((at, i) => i > 0 && at !== all[i - 1]);
      if (steps.length === 0) continue;
      out.push(`PU${all[0]};`);
      for (let i = 0; i < steps.length; i += MOST_POINTS) out.push(`PD${steps.slice(i, i + MOST_POINTS).join(',')};`);
      out.push('PU;');
    }
  }
  out.push('PU0,0;', 'SP0;', 'IN;');
  return `${out.join('\n')}\n`;
}

/** Rounded, halves away from zero, never "-0". */
const whole = (units: number): string => {
  const rounded = Math.sign(units) * Math.round(Math.abs(units));
  return String(rounded === 0 ? 0 : rounded);
};

/** What a quoted parameter may hold. A plotter that does not know quotes ends a comment at a semicolon, and what follows would be a command. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replaceAll('×', 'x')
    .replaceAll(/[’‘"]/gu, "'")
    .replaceAll(';', ',')
    .replaceAll(/[^ -~]/gu, '');

function penFor({ pen }: LineItem | PathItem, pens: HpglOptions['pens']): PlotterPen | undefined {
  return pen === undefined ? undefined : pens === undefined ? FIRST : pens[pen];
}
