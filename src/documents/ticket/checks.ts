import { settingOf } from '../../bench/guide.ts';
import { END_TOLERANCE, tolerance } from '../../bench/tolerances.ts';
import { fraction } from '../../fonts/fractions.ts';
import { type Box, bottom, box, overlaps, right } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { BySide, Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import type { Mat, MatOpening } from '../../mat/model.ts';
import type { Entry } from '../../text/entries.ts';
import type { Units } from '../../units/units.ts';
import { length, sides, size } from '../proof/words.ts';
import { fine } from '../words/fine.ts';
import { tapeGraduation } from './blanks.ts';

/** What is measured when the cutting is done. */
export interface Check {
  readonly what: string;
  readonly expected: string;
  /** Without its sign. */
  readonly tolerance: string;
  /** mm, in the order in which `expected` says them. */
  readonly lengths: readonly number[];
}

/** The two diagonals of a rectangle (Mainwaring, MATTING.TXT: square where they agree). */
export const diagonal = ({ width, height }: Size): number => Math.hypot(width, height);

export function checks(mat: Mat, job: Job): readonly Check[] {
  const { units } = job;
  const off = (what: Parameters<typeof tolerance>[0]): string => length(tolerance(what, units), units);
  const rows: Check[] = [];
  const add = (what: string, expected: string, tolerance: string, ...lengths: number[]): void => {
    rows.push({ what, expected, tolerance, lengths });
  };
  blanks(mat).forEach(({ names, blank }) => {
    const { text, sense } = settingOf(diagonal(blank), tapeGraduation(job), units);
    const said = `both ${fraction(text)}${sense === 'exact' ? '' : ` ${sense}`}`;
    add(`Diagonals, ${shortened(names)}`, said, off('diagonal'), diagonal(blank));
  });
  const sized = (what: string, of: (opening: MatOpening) => Size): void => {
    for (const { names, size: each } of alike(mat.openings, of, units)) {
      const which = names.length === 1 ? names[0]! : `${names.length} alike`;
      const label = mat.openings.length === 1 ? what : `${what}, ${which}`;
      add(label, size(each, units), off('size'), each.width, each.height);
    }
  };
  sized('Opening, top mat', ({ layers }) => layers[0]!.faceBox);
  const border = outermost(mat);
  add('Borders', sides(border, units), off('size'), ...bySide(border));
  for (const { names, gap } of gaps(mat, units)) add(`Gap, ${names}`, length(gap, units), off('size'), gap);
  for (const { names, name, reveals } of revealRows(mat, units)) {
    const what = `Reveal, ${shortened(names)}${name === undefined ? '' : `, ${name}`}`;
    add(what, sides(reveals, units), off('reveal'), ...bySide(reveals));
  }
  sized('Seen through all', ({ sight }) => sight);
  const { overrun } = job.bench.head;
  add('Test corner', `${fine(overrun, units)} past it`, fine(END_TOLERANCE, units), overrun);
  return rows;
}

/** From each edge to the nearest opening. */
const outermost = ({ openings }: Mat): BySide<number> => {
  const least = (side: Side): number => Math.min(...openings.map(({ layers }) => layers[0]!.border[side]));
  return { top: least('top'), right: least('right'), bottom: least('bottom'), left: least('left') };
};

/** More pairs of neighbours than this with one gap are counted. */
const MOST_PAIRS = 2;

/** Between neighbours that nothing parts, face edge to face edge; gaps of one printed width are one row. */
function gaps({ openings }: Mat, units: Units): readonly { readonly names: string; readonly gap: number }[] {
  const boxes = openings.map(({ name, layers }) => ({ name, face: layers[0]!.faceBox }));
  const between = (a: Box, b: Box): Box | undefined => {
    const [left, top] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
    const [end, foot] = [Math.min(right(a), right(b)), Math.min(bottom(a), bottom(b))];
    if (foot - top > 0 && b.x >= right(a)) return box(right(a), top, b.x - right(a), foot - top);
    if (end - left > 0 && b.y >= bottom(a)) return box(left, bottom(a), end - left, b.y - bottom(a));
    return undefined;
  };
  const found = new Map<string, { pairs: string[]; gap: number }>();
  for (const a of boxes) {
    for (const b of boxes) {
      const strip = a === b ? undefined : between(a.face, b.face);
      if (strip === undefined || boxes.some(({ face }) => overlaps(face, strip, -1e-6))) continue;
      const gap = b.face.x >= right(a.face) ? strip.width : strip.height;
      const row = found.get(length(gap, units)) ?? { pairs: [], gap };
      row.pairs.push(`${a.name} to ${b.name}`);
      found.set(length(gap, units), row);
    }
  }
  return [...found.values()].map(({ pairs, gap }) => ({
    names: pairs.length > MOST_PAIRS ? `${pairs.length} alike` : pairs.join('; '),
    gap,
  }));
}

const bySide = (by: BySide<number>): number[] => [by.top, by.right, by.bottom, by.left];

/** Openings of one printed size are one row. */
function alike(
  openings: readonly MatOpening[],
  of: (opening: MatOpening) => Size,
  units: Units,
): readonly { readonly names: readonly string[]; readonly size: Size }[] {
  const found: { said: string; names: string[]; size: Size }[] = [];
  for (const opening of openings) {
    const said = size(of(opening), units);
    const same = found.find((each) => each.said === said);
    if (same === undefined) found.push({ said, names: [opening.name], size: of(opening) });
    else same.names.push(opening.name);
  }
  return found;
}

/** `under mat 1 and 2`. */
function shortened(names: readonly string[]): string {
  const [first, ...rest] = names;
  const short = first?.startsWith('under mat ') === true;
  return [first, ...rest.map((name) => (short ? name.replace(/^under mat /u, '') : name))].join(' and ');
}

/** Blanks of one size are checked alike. */
function blanks(mat: Mat): readonly { readonly names: readonly string[]; readonly blank: Size }[] {
  const found: { names: string[]; blank: Size }[] = [];
  for (const { name, blank } of mat.layers) {
    const same = found.find(({ blank: b }) => b.width === blank.width && b.height === blank.height);
    if (same === undefined) found.push({ names: [name], blank });
    else same.names.push(name);
  }
  return found;
}

interface RevealRow {
  readonly names: readonly string[];
  readonly name?: string;
  readonly reveals: BySide<number>;
}

/** Under mats that are alike in all openings make one row; an opening that differs has its own. */
function revealRows(mat: Mat, units: Units): readonly RevealRow[] {
  const rows: RevealRow[] = [];
  mat.layers.forEach((layer, index) => {
    if (index === 0) return;
    for (const row of revealsOf(mat, index, units)) {
      const said = (each: RevealRow): string => `${each.name ?? ''} ${sides(each.reveals, units)}`;
      const own: RevealRow = { names: [layer.name], ...row };
      const same = rows.findIndex((each) => said(each) === said(own));
      if (same < 0) rows.push(own);
      else rows[same] = { ...rows[same]!, names: [...rows[same]!.names, layer.name] };
    }
  });
  return rows;
}

/** The reveals of a layer: once where all openings agree, else by opening; nothing of an opening that hides it. */
function revealsOf(mat: Mat, index: number, units: Units): readonly Omit<RevealRow, 'names'>[] {
  const shown = mat.openings.filter(({ layers }) => layers[index]!.hidden !== true);
  const said = new Set(shown.map(({ layers }) => sides(layers[index]!.reveal, units)));
  if (said.size === 0) return [];
  if (said.size === 1) return [{ reveals: shown[0]!.layers[index]!.reveal }];
  return shown.map(({ name, layers }) => ({ name, reveals: layers[index]!.reveal }));
}

/** A table of them, a box behind each to write in. */
export const checkTable = (list: readonly Check[]): Entry => ({
  kind: 'table',
  head: ['what', 'should be', '±', 'measured'],
  rows: list.map(({ what, expected, tolerance }) => [what, expected, tolerance, '']),
  widths: [0.33, 0.36, 0.14, 0.17],
  rowHeight: 5,
});
