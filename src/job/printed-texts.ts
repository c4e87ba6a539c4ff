import { missing } from '../fonts/coverage.ts';
import type { Fonts } from '../fonts/model.ts';
import { unshapable } from '../fonts/shaping.ts';
import { type Problem, warning } from '../problems/problem.ts';
import type { Shop } from '../shop/shop.ts';
import type { Job } from './job.ts';

export interface PrintedText {
  readonly text: string;
  readonly path: Problem['path'];
}

/** The words of a job that documents print as they were written, with their places. */
export function userTexts(job: Job): readonly PrintedText[] {
  const { head } = job.bench;
  return [
    { text: job.title, path: ['title'] },
    { text: job.number ?? '', path: ['number'] },
    { text: job.customer ?? '', path: ['customer'] },
    ...job.mat.layers.map((layer, i) => ({
      text: `${layer.board.name} ${layer.board.code ?? ''}`,
      path: ['mat', 'layers', i, 'board'],
    })),
    { text: `${head.id} ${head.scribe ?? ''}`, path: ['bench', 'head'] },
    ...[job.mat.frame?.name, job.mat.frame?.glazing?.name, job.mat.frame?.backing?.name].map((name) => ({
      text: name ?? '',
      path: ['mat', 'frame'],
    })),
    ...(job.lettering ?? []).map(({ text }, i) => ({ text, path: ['lettering', i, 'text'] })),
    ...job.openings.map(({ name }, i) => ({ text: name ?? '', path: ['openings', i, 'name'] })),
  ];
}

/** The words of a shop that documents print as they were written, with their places. */
export function shopTexts({ letterhead }: Shop): readonly PrintedText[] {
  if (letterhead === undefined) return [];
  const { name, address } = letterhead;
  return [
    { text: name, path: ['shop', 'name'] },
    ...address.map((text, i) => ({ text, path: ['shop', 'address', i] })),
  ];
}

/** Characters that no font has, or that a line of single glyphs would show wrongly: named, never dropped in silence. */
export function notShown(texts: readonly PrintedText[], fonts: Fonts): readonly Problem[] {
  return texts.flatMap(({ text, path }) => [
    ...missing([text], fonts).map(({ character, name }) =>
      warning(
        'glyph-missing',
        path,
        `no font has the character ${character} (${name}); a box is drawn in its place`,
        'write it in other characters',
      ),
    ),
    ...unshapable([text]).map(({ script, characters }) =>
      warning(
        'script-unshaped',
        path,
        `${script} cannot be set properly (${characters.map((c) => c.character).join(' ')})`,
        'write it in Latin, Greek or Cyrillic letters',
      ),
    ),
  ]);
}
