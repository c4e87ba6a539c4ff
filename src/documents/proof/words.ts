import { fraction } from '../../fonts/fractions.ts';
import { bottom, right } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { BySide, Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { frameOf, pieceBox } from '../../mat/framed.ts';
import type { Mat, MatOpening } from '../../mat/model.ts';
import { defined } from '../../problems/defined.ts';
import { sentenceCase } from '../../problems/sentence-case.ts';
import { printDecimal, printFraction } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { aloneSize, type Between, roundedAxis, roundedSides, roundedSize, roundedWords } from './rounded.ts';

/** A length as a customer reads it, without its unit: to a 64th of an inch, or a tenth of a millimetre. */
function number(mm: number, units: Units): string {
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
    made.push({ of, size: text, ...defined({ first: first || undefined }) });
  };
  const [across, down] = [axisOf(mat, job, true), axisOf(mat, job, false)];
  const { width, height } = mat.outer;
  if (frameOf(job)?.known === true) add('Frame outside', aloneSize(pieceBox(mat, job), units));
  add('Mat', roundedSize(across(0, width), down(0, height), units));
  if (mat.lip > 0) add('Under the frame', `${roundedWords(mat.lip, units)} all round`);
  const several = mat.openings.length > 1;
  if (!several) {
    const face = mat.openings[0]!.layers[0]!.faceBox;
    const borders = {
      top: down(0, face.y),
      right: across(right(face), width),
      bottom: down(bottom(face), height),
      left: across(0, face.x),
    };
    add('Borders', roundedSides(borders, units));
  }
  for (const { names, own, sizes } of alikeOpenings(mat, job, across, down)) {
    sizes.forEach(([of, text], i) => {
      const first = several && i === 0;
      // Without names of their own they are `opening 1`, which says already what it is.
      add(first ? (own ? `${of} ${names}` : sentenceCase(names)) : of, text, first);
    });
  }
  return made;
}

/** Distances on the face of the top mat, as the proof rounds them. */
export function axisOf({ openings, outer }: Mat, { units }: Job, isAcross: boolean): Between {
  const faces = openings.map(({ layers }) => layers[0]!.faceBox);
  const spans = faces.map((face): readonly [number, number] =>
    isAcross ? [face.x, right(face)] : [face.y, bottom(face)],
  );
  return roundedAxis(spans, isAcross ? outer.width : outer.height, units);
}

/** More openings without a name of their own than this are counted. */
const MOST_NAMES = 3;

function alikeOpenings(mat: Mat, job: Job, across: Between, down: Between) {
  const { units } = job;
  const groups = new Map<string, { names: string[]; own: boolean; sizes: (readonly [string, string])[] }>();
  mat.openings.forEach(({ name, layers, sight, artwork }, i) => {
    const face = layers[0]!.faceBox;
    const opening = roundedSize(across(face.x, right(face)), down(face.y, bottom(face)), units);
    const sizes: (readonly [string, string])[] = [
      ['Opening', opening],
      ['Seen through it', aloneSize(sight, units)],
      ...(artwork === undefined ? [] : [['Artwork', aloneSize(artwork.size, units)] as const]),
    ];
    const key = JSON.stringify(sizes);
    const group = groups.get(key) ?? { names: [], own: false, sizes };
    group.own ||= job.openings[i]?.name !== undefined;
    groups.set(key, group);
    group.names.push(name);
  });
  return [...groups.values()].map(({ names, own, sizes }) => {
    const rest = names.length - MOST_NAMES;
    const all = own || rest <= 0;
    const said = all ? names.join(', ') : `${names.slice(0, MOST_NAMES - 1).join(', ')} and ${rest + 1} more`;
    return { names: said, own, sizes };
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
      ? `${roundedWords(drawn.width, units)} wide`
      : `drawn ${roundedWords(drawn.width, units)} wide as an example`;
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
  return `, ${roundedWords(first, units)} shows`;
}

/** What a placeholder says: the name that the job gives the opening, and the artwork. */
export function placeholderWords({ artwork }: MatOpening, name: string | undefined, units: Units): readonly string[] {
  if (artwork === undefined) return [name ?? 'artwork'];
  return [...(name === undefined ? [] : [name]), `artwork ${aloneSize(artwork.size, units)}`];
}

export const COLOURS =
  'Colours on a screen or a print are near those of the board and the moulding, never the same: please choose by the samples.';
