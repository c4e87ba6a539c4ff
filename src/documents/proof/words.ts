import { fraction } from '../../fonts/fractions.ts';
import type { Size } from '../../geometry/point.ts';
import type { BySide, Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { frameOf, pieceBox } from '../../mat/framed.ts';
import type { Mat, MatOpening } from '../../mat/model.ts';
import { sentenceCase } from '../../problems/sentence-case.ts';
import { printDecimal, printFraction } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';

/** A length as a customer reads it, without its unit: to a 64th of an inch, or a tenth of a millimetre. */
export function number(mm: number, units: Units): string {
  if (units === 'in') return fraction(printFraction(mm, 64).text);
  return printDecimal(mm, units, units === 'mm' ? 1 : 2).text;
}

export const length = (mm: number, units: Units): string => `${number(mm, units)} ${units}`;

export const size = ({ width, height }: Size, units: Units): string =>
  `${number(width, units)} × ${number(height, units)} ${units}`;

/** `top 3, sides 2¾, bottom 3½ in`; what is the same all round is said once. */
export function sides(by: BySide<number>, units: Units): string {
  const say = (side: Side): string => number(by[side], units);
  const [top, right, bottom, left] = [say('top'), say('right'), say('bottom'), say('left')];
  if (top === bottom && left === right) {
    return top === left ? `${top} ${units} all round` : `top and bottom ${top}, sides ${left} ${units}`;
  }
  const aside = left === right ? `sides ${left}` : `left ${left}, right ${right}`;
  return `top ${top}, ${aside}, bottom ${bottom} ${units}`;
}

/** A size in the line of sizes: what it is of, and the size. */
export interface NamedSize {
  readonly of: string;
  readonly size: string;
  /** Begins a row of its own where there are several rows. */
  readonly first?: true;
}

/** The sizes that a customer decides by. Openings that are alike are told once. */
export function namedSizes(mat: Mat, job: Job): readonly NamedSize[] {
  const { units } = job;
  const made: NamedSize[] = [];
  const add = (of: string, text: string, first = false): void => {
    made.push({ of, size: text, ...(first ? { first } : {}) });
  };
  if (frameOf(job)?.known === true) add('Frame outside', size(pieceBox(mat, job), units));
  add('Mat', size(mat.outer, units));
  if (mat.lip > 0) add('Under the frame', `${length(mat.lip, units)} all round`);
  const several = mat.openings.length > 1;
  if (!several) add('Borders', sides(mat.border, units));
  for (const { names, sizes } of alikeOpenings(mat, units)) {
    sizes.forEach(([of, text], i) => {
      add(several && i === 0 ? `${of} ${names}` : of, text, several && i === 0);
    });
  }
  return made;
}

/** More names than this are counted. */
const MOST_NAMES = 3;

function alikeOpenings(mat: Mat, units: Units) {
  const groups = new Map<string, { names: string[]; sizes: (readonly [string, string])[] }>();
  for (const { name, layers, sight, artwork } of mat.openings) {
    const sizes: (readonly [string, string])[] = [
      ['Opening', size(layers[0]!.faceBox, units)],
      ['Seen through it', size(sight, units)],
      ...(artwork === undefined ? [] : [['Artwork', size(artwork.size, units)] as const]),
    ];
    const key = JSON.stringify(sizes);
    const group = groups.get(key) ?? { names: [], sizes };
    groups.set(key, group);
    group.names.push(name);
  }
  return [...groups.values()].map(({ names, sizes }) => {
    const rest = names.length - MOST_NAMES;
    const said = rest <= 0 ? names.join(', ') : `${names.slice(0, MOST_NAMES - 1).join(', ')} and ${rest + 1} more`;
    return { names: said, sizes };
  });
}

/** A material: its part in the piece, what it is, and the colour that it shows. */
export interface Material {
  readonly part: string;
  readonly what: string;
  readonly colour?: string;
}

export function materials(mat: Mat, job: Job): readonly Material[] {
  const { units } = job;
  const rows: Material[] = mat.layers.map(({ name, board }, k) => {
    const plies = board.plies === undefined || board.name.includes('ply') ? '' : `, ${board.plies}-ply`;
    return {
      part: sentenceCase(name),
      what: `${board.name}${plies}${k === 0 ? '' : shows(mat, k, units)}`,
      colour: board.colour,
    };
  });
  const { frame } = job.mat;
  const drawn = frameOf(job);
  if (frame !== undefined && drawn !== undefined) {
    const wide = drawn.known
      ? `${length(drawn.width, units)} wide`
      : `drawn ${length(drawn.width, units)} wide as an example`;
    rows.push({
      part: 'Frame',
      what: frame.name === undefined ? wide : `${frame.name}, ${wide}`,
      colour: drawn.colour,
    });
    if (frame.glazing !== undefined) rows.push({ part: 'Glazing', what: frame.glazing.name });
    if (frame.backing !== undefined) rows.push({ part: 'Backing', what: frame.backing.name });
  }
  return rows;
}

/** How much of an under mat shows, where it is the same on every side of every opening. */
function shows(mat: Mat, k: number, units: Units): string {
  const strips = mat.openings.flatMap(({ layers }) => {
    return layers[k]!.hidden === true ? [] : Object.values(layers[k]!.strip);
  });
  const first = strips[0];
  if (first === undefined) return '';
  if (strips.some((strip) => Math.abs(strip - first) > 1e-6)) return '';
  return `, ${length(first, units)} shows`;
}

/** What a placeholder says. */
export function placeholderWords({ artwork }: MatOpening, name: string | undefined, units: Units): string {
  // What is no artwork, a name plate or a text, is called by its name.
  return artwork === undefined ? (name ?? 'artwork') : `artwork ${size(artwork.size, units)}`;
}

export const COLOURS =
  'Colours on a screen or a print are near those of the board and the moulding, never the same: please choose by the samples.';
