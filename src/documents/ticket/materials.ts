import type { BySide } from '../../geometry/sides.ts';
import { rebateParts } from '../../job/frame.ts';
import type { Job } from '../../job/job.ts';
import { pieceBox, rebateSize } from '../../mat/framed.ts';
import type { Mat } from '../../mat/model.ts';
import { length, sides, size } from '../proof/words.ts';
import { fine } from '../words/fine.ts';

export interface Row {
  readonly name: string;
  readonly value: string;
}

/** What the mat is joined with, in the order of fitting up. */
export function materialRows(mat: Mat, job: Job): readonly Row[] {
  const { units } = job;
  const { frame } = job.mat;
  const rows: Row[] = [];
  const add = (name: string, value: string): void => {
    rows.push({ name, value });
  };
  const works = new Map<string, string[]>();
  for (const { artwork, name } of mat.openings) {
    if (artwork === undefined) continue;
    const how = artwork.floated
      ? `floated, ${sides(negated(artwork.overlap), units)} of backing shows`
      : `covered ${sides(artwork.overlap, units)}`;
    const said = `${size(artwork.size, units)}, ${how}`;
    works.set(said, [...(works.get(said) ?? []), name]);
  }
  for (const [said, names] of works) {
    add('Artwork', mat.openings.length === 1 ? said : `${names.join(', ')}: ${said}`);
  }
  add('Hinges', hinges(mat, job));
  const glazing = `${known(frame?.glazing?.name)}${size(mat.glazing, units)}`;
  const backing = `${known(frame?.backing?.name)}${size(mat.backing, units)}`;
  if (glazing === backing) add('Glazing', `${glazing}, backing the same`);
  else {
    add('Glazing', glazing);
    add('Backing', backing);
  }
  const thin = mat.layers.find(({ board }) => board.plies !== undefined && board.plies < 4);
  // Library of Congress, Guide to Preservation Matting and Framing: a window of 4-ply at least.
  if (thin !== undefined) add('Note', `${thin.board.name} has ${thin.board.plies} plies; 4 keep glass off the art.`);
  add('Board', BOARD_WORDS);
  if (frame !== undefined) {
    const parts = rebateParts(frame, job.mat.layers).filter(([, thickness]) => thickness > 0);
    const needed = parts.reduce((sum, [, thickness]) => sum + thickness, 0);
    const has = frame.depth === undefined ? 'measure the frame’s' : `the frame has ${fine(frame.depth, units)}`;
    add('Rebate', `needs ${fine(needed, units)} (${parts.map(([what]) => what).join(', ')}); ${has}`);
  }
  const chop = chopSizes(mat, job);
  if (chop !== undefined) {
    const [wide, high] = [length(chop.long[0], units), length(chop.long[1], units)];
    const rebate = `${size(chop.rebate, units)} in the rebate`;
    add(
      'Moulding',
      `${known(frame?.name)}2 × ${wide} and 2 × ${high} over the long points, ${rebate}; ${length(chop.running, units)} running, saw cuts extra`,
    );
  }
  return rows;
}

/**
 * pH 7 for photographs and 8 to 8.5 for other paper, lignin-negative: Library of Congress, guide to matting and hinging
 * art on paper; US National Park Service, Conserve O Gram 13/4.
 */
const BOARD_WORDS = 'by its maker’s statement: no lignin; pH 7 for photographs, 8–8.5 for other paper';

/**
 * Window and backing hinge along the long edge; T-hinges under the mat, V-hinges for floats, two or more: Library of
 * Congress; M. T. Jackson, The Museum (1917); NEDCC Preservation Leaflet 7.4.
 */
function hinges(mat: Mat, job: Job): string {
  const edge = job.bench.hinge ?? (mat.outer.height >= mat.outer.width ? 'left' : 'top');
  const art = mat.openings.flatMap(({ artwork }) => (artwork === undefined ? [] : [artwork]));
  const window = `window to backing along the ${edge} edge, seen from the face`;
  if (art.length === 0) return window;
  const kinds = [
    ...(art.some(({ floated }) => !floated) ? ['2 or more T-hinges at its top, under the mat'] : []),
    ...(art.some(({ floated }) => floated) ? ['2 or more V-hinges behind a floated work'] : []),
  ];
  return `${window}; art: ${kinds.join('; ')}`;
}

/** Lengths of the moulding where its width is known; undefined otherwise. */
export function chopSizes(mat: Mat, job: Job) {
  const { frame } = job.mat;
  if (frame?.width === undefined) return undefined;
  const { width, height } = pieceBox(mat, job);
  return { rebate: rebateSize(mat, frame), long: [width, height] as const, running: 2 * (width + height) };
}

const known = (name: string | undefined): string => (name === undefined ? '' : `${name}, `);

const negated = ({ top, right, bottom, left }: BySide<number>): BySide<number> => ({
  top: -top,
  right: -right,
  bottom: -bottom,
  left: -left,
});

export const BLADE_CAUTION =
  'Sharp blade, stable surface, hand out of its path; spent blades in a puncture-proof box. The cutter’s own manual comes first.';

/** Short and usual; what applies to the job. */
export function cautions(mat: Mat, job: Job): string {
  const glass = job.mat.frame?.glazing !== undefined || mat.glazing.width > 0;
  return [
    BLADE_CAUTION,
    ...(glass ? ['Glass: gloves and eye protection.'] : []),
    'Pencil lightly, it comes off on the art. A valuable or old work: ask a conservator before hinging or trimming.',
  ].join(' ');
}
