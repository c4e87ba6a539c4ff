import type { Drawing } from '../../drawing/model.ts';
import { constantOffset, hook, overcut, undercut, wanderingBevel } from './figures/corners.ts';
import { guide } from './figures/guide.ts';
import { kerf } from './figures/kerf.ts';
import { marks } from './figures/marks.ts';
import { checkLines, seams, tiling } from './figures/paper.ts';
import { pins } from './figures/pins.ts';
import { setbacks } from './figures/setback.ts';
import { weighting } from './figures/weighting.ts';

/** The drawn figures of the guide, by the names of their files. */
export const FIGURES: Readonly<Record<string, () => Drawing>> = {
  setback: setbacks,
  marks,
  guide,
  weighting,
  tiling,
  kerf,
  pins,
  overcut,
  undercut,
  hook,
  'wandering-bevel': wanderingBevel,
  'constant-offset': constantOffset,
  'check-lines': checkLines,
  seams,
};
